"""Rallies by tap and in words: mixed in any order, corrected, taken back; nothing typed is lost."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from itertools import permutations

import pytest
from talk import Talk, demo_talk

from bot.chat.match_log import counted_rallies, unvoided
from bot.chat.payload import LIMIT_BYTES, Tap, Verb
from bot.chat.rally_kept import KeptRally
from bot.post import IncomingKind
from knowledge.vocabulary import Ending, PlayerId, Rate, Stroke, Topic, Wing
from scouting_db.book import Book
from scouting_db.values import MatchId, Micros, RallyRow

NEXT = "next: okafor and lindqvist, to 11"


@pytest.fixture
def match(demo: Talk) -> Talk:
    """Mira and Tom against Okafor and Lindqvist; Mira serves to Lindqvist at 0-0-2."""
    return begin(demo)


def begin(talk: Talk) -> Talk:
    talk.say(NEXT)
    talk.tap("we serve")
    talk.tap("Lindqvist started right")
    return talk


def number(talk: Talk) -> MatchId:
    found = talk.context.match
    assert found is not None
    return found


@contextmanager
def opened(talk: Talk) -> Iterator[tuple[Book, MatchId]]:
    """The book, and the number of the match that is on."""
    current = number(talk)
    with talk.book() as book:
        yield book, current


def last_n(talk: Talk) -> int:
    with opened(talk) as (book, current):
        return max(counted_rallies(book.entries(current)))


def row(talk: Talk, n: int | None = None) -> RallyRow:
    wanted = last_n(talk) if n is None else n
    with opened(talk) as (book, current):
        return next(
            (one for one in book.rallies(current) if one.n == wanted),
            RallyRow(match=current, n=wanted),
        )


def rates(talk: Talk, n: int) -> set[tuple[str, Rate, bool]]:
    with opened(talk) as (book, current):
        names = {one.player: one.name.split()[-1] for one in book.players()}
        found = [one for one in book.rates(current) if one.n == n]
    return {(names[one.player], one.rate, one.made) for one in found}


def choices(talk: Talk, n: int) -> dict[Topic, tuple[str, bool]]:
    with opened(talk) as (book, current):
        found = [one for one in book.choices_in(current) if one.n == n]
    return {one.topic: (one.option, one.tagged_before) for one in found}


def rallies(talk: Talk) -> int:
    with opened(talk) as (book, current):
        return len(counted_rallies(book.entries(current)))


# Taps.


def test_two_taps_tell_how_it_ended_and_whose_it_was(match: Talk) -> None:
    match.tap("our rally")
    assert match.tap("their miss").splitlines()[-1] == "Noted: their error."
    assert match.tap("Lindqvist").splitlines()[-1] == "Noted: Lindqvist's error."
    told = row(match)
    assert (told.ending, told.by_player) == (
        Ending.UNFORCED_ERROR,
        match.player("Sven Lindqvist"),
    )
    assert rallies(match) == 1


def test_every_reply_goes_on_to_the_next_rally(match: Talk) -> None:
    for label in ("our rally", "their miss", "Okafor"):
        match.tap(label)
        assert [one.label for one in match.buttons][:2] == ["our rally", "their rally"]
        assert match.last[0].text.startswith("1-0-2."), "the score comes first"
    assert match.tap("their rally").startswith("0-1-1.")


def test_a_lost_rally_asks_for_our_miss(match: Talk) -> None:
    match.tap("their rally")
    match.tap("our miss")
    assert {"Mira", "Tom"} <= {one.label for one in match.buttons}


def test_buttons_fit_a_phone_and_name_their_rally(match: Talk) -> None:
    match.tap("our rally")
    taps = [Tap.parse(one.payload) for one in match.buttons]
    told = [one for one in taps if one.verb is Verb.ENDED]
    assert [one.args[1:] for one in told] == [(str(number(match)), str(last_n(match)))] * 3
    assert all(len(line) <= 3 for reply in match.last for line in reply.buttons)
    assert all(len(one.payload.encode()) <= LIMIT_BYTES for one in match.buttons)


def test_a_second_tap_corrects_the_first(match: Talk) -> None:
    match.tap("our rally")
    winner, forced = match.button("winner").payload, match.button("forced").payload
    match.press(winner)
    match.tap("Tom")
    match.press(forced)
    told = row(match)
    assert (told.ending, told.by_player) == (Ending.FORCED_ERROR, None), "Tom erred not"
    assert match.press(forced).splitlines()[-1] == "That's how I have it."


def test_a_tap_of_an_older_rally_still_tells_of_that_one(match: Talk) -> None:
    match.tap("our rally")
    n, old = last_n(match), match.button("winner").payload
    match.tap("their rally")
    assert match.press(old).startswith("0-1-1.")
    assert row(match, n).ending is Ending.WINNER
    assert row(match).ending is None


def test_a_tap_of_a_rally_taken_back_is_too_old(match: Talk) -> None:
    match.tap("our rally")
    old = match.button("winner").payload
    match.tap("undo")
    before = match.stored()
    assert "earlier time" in match.press(old)
    assert match.stored() == before


@pytest.mark.parametrize(
    "args",
    ["end:draw:{m}:{n}", "end:winner:{m}:999", "end:winner:999:{n}", "by:9999:{m}:{n}",
     "meant:9999:{m}:{n}", "by:x:{m}:{n}", "end:winner:{m}", "tag:serve:moon:{m}:{n}",
     "tag:lob:wide:{m}:{n}", "tag:return:9999:{m}:{n}", "by:{m}:{n}"],
)  # fmt: skip
def test_a_forged_tap_changes_nothing(match: Talk, args: str) -> None:
    match.tap("our rally")
    before, context = match.stored(), match.context
    reply = match.press(f"1:{args.format(m=number(match), n=last_n(match))}")
    assert "earlier time" in reply
    assert (match.stored(), match.context) == (before, context)


def test_a_player_of_another_pair_ended_nothing(match: Talk) -> None:
    match.tap("our rally")
    hale = match.player("Ben Hale")
    reply = match.press(f"1:by:{hale}:{number(match)}:{last_n(match)}")
    assert "earlier time" in reply
    assert row(match).by_player is None


# Words.


def test_a_rally_in_words_is_noted_under_the_score(match: Talk) -> None:
    reply = match.say("our point, lindqvist dumped a backhand dink")
    assert reply.splitlines()[0].startswith("1-0-2.")
    assert reply.splitlines()[1:] == ["Noted: Lindqvist's backhand dink error."]
    told = row(match)
    assert (told.stroke, told.wing) == (Stroke.DINK, Wing.BACKHAND)
    assert told.words == "our point, lindqvist dumped a backhand dink"


def test_what_is_not_understood_is_kept(match: Talk) -> None:
    match.say("ours, flibber on the wobbly thing")
    assert row(match).words == "ours, flibber on the wobbly thing"
    assert row(match).ending is None


def test_words_after_a_tap_add_to_that_rally(match: Talk) -> None:
    match.tap("their rally")
    match.say("it was my dink")
    told = row(match)
    assert (told.ending, told.by_player, told.stroke) == (
        Ending.UNFORCED_ERROR,
        match.player("Mira Dahl") if match.context.asker else None,
        Stroke.DINK,
    )
    assert rallies(match) == 1


@pytest.mark.parametrize(
    "said", ["lindqvist's error", "lindqvist missed it", "lindqvist into the net"]
)
def test_how_it_ended_right_after_a_tap_is_no_rally_of_its_own(match: Talk, said: str) -> None:
    match.tap("our rally")
    match.say(said)
    assert rallies(match) == 1
    assert row(match).by_player == match.player("Sven Lindqvist")


def test_a_rally_later_it_is_one_of_its_own(match: Talk) -> None:
    """Half a minute: a serve within ten seconds and a mean rally of eleven (facts' sources)."""
    match.tap("our rally")
    match.now = Micros(match.now + 30_000_000)
    match.say("lindqvist's error")
    assert rallies(match) == 2


def test_what_does_not_fit_the_tap_is_a_rally_of_its_own(match: Talk) -> None:
    match.tap("their rally")
    match.say("lindqvist's error")
    assert rallies(match) == 2


def test_a_correction_in_words_replaces(match: Talk) -> None:
    match.say("ours, okafor netted a dink")
    match.say("that was forced")
    assert row(match).ending is Ending.FORCED_ERROR
    match.say("no, lindqvist hit it")
    told = row(match)
    assert (told.ending, told.by_player, told.stroke) == (
        Ending.FORCED_ERROR,
        match.player("Sven Lindqvist"),
        Stroke.DINK,
    )
    assert told.words is not None
    assert told.words.splitlines() == [
        "ours, okafor netted a dink", "that was forced", "no, lindqvist hit it",
    ]  # fmt: skip


def test_after_a_note_such_words_are_about_the_note(match: Talk) -> None:
    match.tap("our rally")
    match.say("okafor pops up backhand dinks")
    match.say("no, it was lindqvist")
    assert row(match).by_player is None
    assert ("backhand_dink", "weakness", False) in match.claims("Sven Lindqvist")


def test_an_ace_is_the_servers(match: Talk) -> None:
    assert match.say("ace").splitlines()[-1] == "Noted: Mira's ace."
    assert rallies(match) == 1
    assert rates(match, last_n(match)) == {("Dahl", Rate.SERVE_IN, True)}


def test_nobody_knows_whose_ace_while_nobody_said_who_serves(demo: Talk) -> None:
    demo.say(NEXT)
    assert demo.say("ace") == "Whose point?"


# Rates and choices.


def test_rates_follow_from_the_score_and_the_end(match: Talk) -> None:
    """Mira serves at 0-0-2 to Lindqvist, who must return: his miss (rulebook, from memory)."""
    match.say("ours, return error")
    assert rates(match, last_n(match)) == {
        ("Dahl", Rate.SERVE_IN, True),
        ("Lindqvist", Rate.RETURN_IN, False),
        ("Lindqvist", Rate.STEADY, False),
        ("Okafor", Rate.STEADY, True),
    }


def test_a_rally_only_counted_says_nothing_of_rates(match: Talk) -> None:
    match.tap("our rally")
    match.say("their rally")
    with opened(match) as (book, current):
        assert book.rates(current) == ()


def test_a_choice_told_after_the_end_is_the_weaker_evidence(match: Talk) -> None:
    match.say("served wide, okafor missed, ours")
    assert choices(match, last_n(match)) == {Topic.AIM_SERVE: ("wide", False)}


def test_a_serve_is_no_choice_of_ours_while_they_serve(match: Talk) -> None:
    match.tap("their rally")
    match.say("served wide, tom missed, theirs")
    assert choices(match, last_n(match)) == {}


def test_a_choice_tapped_before_the_end_counts_whatever_the_end_was(match: Talk) -> None:
    match.say("tag rallies")
    match.say("score")
    match.tap("serve wide")
    match.tap("serve T")
    match.tap("their rally")
    assert choices(match, last_n(match)) == {Topic.AIM_SERVE: ("t", True)}
    match.tap("to Okafor")
    match.tap("our rally")
    okafor = match.player("Chidi Okafor")
    assert choices(match, last_n(match)) == {Topic.AIM_RETURN: (f"at:{okafor}", True)}
    match.tap("our rally")
    assert choices(match, last_n(match)) == {}, "what was tapped was for one rally"


def test_who_tags_every_rally_leaves_none_out_in_words_either(match: Talk) -> None:
    match.say("tag rallies")
    match.say("served wide, dinked okafor in the middle, he missed, ours")
    okafor = match.player("Chidi Okafor")
    assert choices(match, last_n(match)) == {
        Topic.AIM_SERVE: ("wide", True),
        Topic.AIM_DINK: (f"{okafor}:middle", False),
    }


def test_tagging_stops(match: Talk) -> None:
    match.say("tag rallies")
    match.say("stop tagging")
    match.say("score")
    assert not any(Tap.parse(one.payload).verb is Verb.TAG for one in match.buttons)


@pytest.mark.parametrize(("hip", "option"), [("right", "paddle"), ("left", "other")])
def test_which_hip_is_the_paddles_follows_from_the_hand(match: Talk, hip: str, option: str) -> None:
    """Lindqvist is noted as right-handed, and holds the paddle on the right."""
    match.say(f"ours, sped up at lindqvist's {hip} hip")
    lindqvist = match.player("Sven Lindqvist")
    assert choices(match, last_n(match)) == {Topic.AIM_ATTACK: (f"{option}:{lindqvist}", False)}


def test_a_hip_of_a_hand_in_doubt_is_only_an_attack(match: Talk) -> None:
    match.say("lindqvist is lefty")
    match.say("ours, sped up at lindqvist's right hip")
    lindqvist = match.player("Sven Lindqvist")
    assert choices(match, last_n(match)) == {Topic.AIM_ATTACK: (f"{lindqvist}:attack", False)}


# Undo.


def test_a_detail_is_undone_and_put_back_in_one_step(match: Talk) -> None:
    match.tap("our rally")
    n = last_n(match)
    match.tap("their miss")
    match.tap("Okafor")
    match.say("it was a forehand dink")
    told = [kept(match, n)]
    for _ in range(3):
        match.say("undo")
        told.append(kept(match, n))
    assert [one.row.ending for one in told] == [Ending.UNFORCED_ERROR] * 3 + [None]
    assert rallies(match) == 1, "the rally itself stands"
    for back in told[-2::-1]:
        match.say("redo")
        assert kept(match, n) == back
    match.say("undo")
    assert "Taken back: how that rally went" in match.sent[-1]


def kept(talk: Talk, n: int) -> KeptRally:
    told = row(talk, n)
    with opened(talk) as (book, current):
        return KeptRally(
            row=told,
            choices=tuple(one for one in book.choices_in(current) if one.n == n),
            rates=tuple(one for one in book.rates(current) if one.n == n),
        )


def test_an_old_undo_does_not_throw_later_words_away(match: Talk) -> None:
    match.tap("our rally")
    match.tap("their miss")
    old = match.button("undo").payload
    match.say("it was a forehand dink")
    before = kept(match, last_n(match))
    assert "earlier time" in match.press(old)
    assert kept(match, last_n(match)) == before


def test_a_rally_taken_back_takes_its_details_out_of_every_count(match: Talk) -> None:
    match.say("ours, okafor netted a dink")
    n = last_n(match)
    before = kept(match, n)
    match.say("undo")
    with opened(match) as (book, current):
        assert counted_rallies(book.entries(current)) == frozenset()
    match.say("redo")
    assert last_n(match) == n
    assert kept(match, n) == before


# In any order.


def pieces(talk: Talk) -> dict[str, str | None]:
    """Taps by payload, words by themselves."""
    match, n, okafor = number(talk), last_n(talk), talk.player("Chidi Okafor")
    return {
        f"1:end:forced:{match}:{n}": None,
        f"1:by:{okafor}:{match}:{n}": None,
        "it was a backhand dink": None,
        "it was a deep return": None,
    }


def test_any_order_of_taps_and_words_gives_the_same_rally() -> None:
    """Every order of two taps and two lines: one rally is stored, and every word is kept."""
    found = set()
    for order in permutations(range(4)):
        talk = begin(demo_talk())
        talk.tap("our rally")
        said = [*pieces(talk)]
        for at in order:
            talk.press(said[at]) if said[at].startswith("1:") else talk.say(said[at])
        told = kept(talk, last_n(talk))
        assert set(told.lines) == {one for one in said if not one.startswith("1:")}
        found.add((told.row.ending, told.row.by_player, told.row.stroke, told.row.wing, told.rates))
        assert rallies(talk) == 1
        talk.store.close()
    [(ending, _by, stroke, wing, told_rates)] = found
    assert (ending, stroke, wing) == (Ending.FORCED_ERROR, Stroke.DINK, Wing.BACKHAND)
    assert Rate.RETURN_DEEP in {one.rate for one in told_rates}


# Somebody who does not play, and edits.


def test_who_is_not_in_the_match_is_said_and_put_right_by_a_tap(match: Talk) -> None:
    match.say("/add Gina Castellan")
    reply = match.say("ours, hale missed a backhand dink")
    assert reply.splitlines()[0].startswith("1-0-2.")
    assert "Hale isn't in this match: your words are kept." in reply
    assert row(match).words == "ours, hale missed a backhand dink"
    assert row(match).by_player is None
    assert {"Okafor", "Lindqvist", "undo"} <= {one.label for one in match.buttons}
    match.tap("Okafor")
    assert row(match).by_player == match.player("Chidi Okafor")
    assert row(match).words == "ours, hale missed a backhand dink"
    assert rallies(match) == 1


def test_whose_rally_cannot_be_told_is_kept_as_a_note(match: Talk) -> None:
    reply = match.say("hale missed a dink")
    assert "Hale isn't in this match, so I counted no rally." in reply
    assert match.notes(1)[0].text == "hale missed a dink"
    assert rallies(match) == 0
    match.tap("it was Okafor")
    assert (rallies(match), row(match).by_player) == (1, match.player("Chidi Okafor"))


def test_a_name_nobody_bears(match: Talk) -> None:
    reply = match.say("ours, zorblatt missed")
    assert "Zorblatt isn't in this match" in reply
    assert row(match).words == "ours, zorblatt missed"
    reply = match.say("zorblatt missed the return")
    assert "I counted no rally" in reply
    assert match.notes(1)[0].text == "zorblatt missed the return"
    assert rallies(match) == 1


def test_an_edited_message_is_read_again(match: Talk) -> None:
    match.say("ours, okafor netted a dink", external_message_id=70)
    match.send(IncomingKind.EDIT, text="ours, lindqvist netted a volley", external_message_id=70)
    told = row(match)
    assert (told.by_player, told.stroke) == (match.player("Sven Lindqvist"), Stroke.VOLLEY)
    assert told.words == "ours, lindqvist netted a volley"
    assert rallies(match) == 1
    match.say("undo")
    assert row(match).words == "ours, okafor netted a dink"


def test_an_edit_that_turns_the_newest_rally_turns_the_score(match: Talk) -> None:
    match.say("ours, okafor netted a dink", external_message_id=70)
    reply = match.send(IncomingKind.EDIT, text="theirs, tom netted a dink", external_message_id=70)
    assert reply.startswith("0-0-1.")
    assert rallies(match) == 1


def test_an_edit_of_an_older_rally_keeps_the_score(match: Talk) -> None:
    match.say("ours, okafor netted a dink", external_message_id=70)
    match.tap("our rally")
    reply = match.send(IncomingKind.EDIT, text="theirs, tom netted a dink", external_message_id=70)
    assert reply.startswith("2-0-2.")
    assert "The score stays" in reply


def test_who_is_no_member_tells_nothing(fresh_anywhere: Talk) -> None:
    fresh_anywhere.chat, fresh_anywhere.is_group = "group", True
    fresh_anywhere.bind_new_book()
    fresh_anywhere.say("we are Mira and Tom")
    fresh_anywhere.say("/add Okafor")
    fresh_anywhere.say("/add Lindqvist")
    fresh_anywhere.say("next: okafor and lindqvist, to 11")
    fresh_anywhere.say("we serve")
    fresh_anywhere.tap("our rally")
    stranger = fresh_anywhere.of("sam")
    before = fresh_anywhere.stored()
    pressed = fresh_anywhere.button("winner").payload
    for said in ("ours, okafor missed", "it was his dink", "okafor's error", "tag rallies"):
        stranger.say(said)
    stranger.press(pressed)
    assert fresh_anywhere.stored() == before


def test_every_line_is_kept_whatever_is_said(match: Talk) -> None:
    """Lines of every kind, one after the other: the words of each rally are found in the book."""
    said = [
        "ours, okafor missed", "theirs winner", "ours what a mess zzz", "tom netted it",
        "ours, brandt hit the tape", "lost it, my dink popped up",
    ]  # fmt: skip
    for line in said:
        match.now = Micros(match.now + 60_000_000)
        match.say(line)
    with opened(match) as (book, current):
        kept_words = [one.words for one in book.rallies(current)]
        lines = unvoided(book.entries(current))
    assert kept_words == said
    assert sum(one.kind == "rally" for one in lines) == len(said)
    assert {PlayerId(match.player("Chidi Okafor"))} <= {
        one.by_player for one in [row(match, entry.n) for entry in lines]
    }
