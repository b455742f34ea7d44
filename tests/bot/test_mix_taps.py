"""The exact mix behind a button, and one drawn from it; neither writes anything."""

from __future__ import annotations

import random
from collections import Counter
from dataclasses import replace

import pytest
from databases import watched
from talk import Talk, demo_talk

from bot.chat.render import render
from bot.chat.render_mix import change_line, mix_text
from bot.chat.said import RetellSaid
from bot.chat.wording import wording
from bot.contract import to_json
from knowledge.advice import Advice, AdvisedMix, MixShare
from knowledge.effects import OptionId
from knowledge.mixing import of_ten
from knowledge.vocabulary import BallQuality, Topic
from scouting_db.values import ChoiceRow, EntryKind, MatchId, Winner

STATEMENTS_OF_A_TURN = 8
"""The design's section 7: a warm text turn, inbox to outbox."""

ATTACK = "where do I speed up against okafor and lindqvist"
NOTES = "okafor waits on his backhand, jams at the body"


@pytest.fixture
def asked() -> Talk:
    """A speed-up asked about, with notes that decide it."""
    talk = demo_talk()
    talk.say(NOTES)
    talk.say(ATTACK)
    return talk


def mix_numbers(talk: Talk) -> dict[str, float]:
    assert talk.heard is not None
    numbers: dict[str, float] = to_json("", talk.heard, {})["numbers"]
    return {name: one for name, one in numbers.items() if name.startswith("mix_")}


def log_choices(talk: Talk, *options: str, topic: Topic = Topic.AIM_ATTACK) -> MatchId:
    """A match against Okafor and Lindqvist with one choice a rally; ours and theirs in turn."""
    talk.say("next: okafor and lindqvist, to 11")
    match = talk.context.match
    assert match is not None
    with talk.book() as book:
        for place, option in enumerate(options):
            winner = Winner.US if place % 3 else Winner.THEM
            entry = book.append(match, EntryKind.RALLY, won_by=winner)
            assert not hasattr(entry, "expected")
            row = ChoiceRow(match=match, n=place + 1, topic=topic, option=option)
            book.choose(row)
    return match


def test_the_answer_says_how_to_vary(asked: Talk) -> None:
    lines = asked.sent[-1].splitlines()
    assert lines[0].startswith("Speed up at Okafor's")
    change = [line for line in lines if line.startswith("Change: ")]
    assert len(change) == 1
    assert " when they sit on it, " in change[0]
    assert len(lines) <= 8
    asked.button("exact mix")


def test_a_call_that_is_the_change_up_itself_is_not_said_twice() -> None:
    """The default of a lob is the dink: "Change: lob ..." under "Lob ..." read as a mistake."""
    lob = MixShare(option="lob", label="lob over Hale", call="Lob Hale.", share=0.1, guess=0.1)
    dink = MixShare(option="dink", label="dink", call="Keep dinking.", share=0.9, guess=0.9)
    mix = AdvisedMix(
        shares=(dink, lob),
        trigger="he leans in",
        how_often="once a game",
        value=0.5,
        worth_points=1.0,
        cost_points=9.0,
        of_ten_loss_points=0.0,
    )
    assert change_line(mix, call="Lob Hale.") == "Only when he leans in, once a game."
    assert change_line(mix, call="Dink.").startswith("Change: lob over Hale when")


def test_the_exact_mix_is_behind_its_button(asked: Talk) -> None:
    numbers = mix_numbers(asked)
    shares = [one for name, one in numbers.items() if name.startswith("mix_share_")]
    assert sum(shares) == pytest.approx(1)
    assert 0 < numbers["mix_value"] < 1
    said = asked.tap("exact mix")
    counts = [int(line.split()[1]) for line in said.splitlines() if line.startswith("· ")]
    assert sum(counts) == 10
    assert f"worth {numbers['mix_worth_points']:.1f} in 100" in said
    assert "costs 10 (common practice)" in said
    assert "last 20" not in said
    assert "too few" not in said
    assert mix_numbers(asked) == numbers


def test_picks_follow_the_mix_with_a_seeded_source(asked: Talk) -> None:
    """400 draws of Python's generator, seed 11: within four standard deviations of each share."""
    numbers = mix_numbers(asked)
    asked.uniform = random.Random(11).random
    asked.tap("exact mix")
    n = 400
    counts: Counter[str] = Counter()
    for _ in range(n):
        said = asked.tap("pick one for me")
        assert said.startswith("Speed up at ")
        assert len(said) <= 60
        assert "\n" not in said
        assert asked.heard is not None
        counts[asked.heard.trace["picked"]] += 1
    for name, share in numbers.items():
        if name.startswith("mix_share_"):
            spread = 4 * (n * share * (1 - share)) ** 0.5
            assert abs(counts[name.removeprefix("mix_share_")] - n * share) <= spread, name


def test_without_a_source_of_its_own_a_pick_is_not_foreseen(asked: Talk) -> None:
    """The system's source: forty picks of a mix of three are not all one."""
    asked.tap("exact mix")
    assert len({asked.tap("pick one for me") for _ in range(40)}) > 1


def test_neither_writes_anything(asked: Talk) -> None:
    stored, context = asked.stored(), asked.context
    asked.tap("exact mix")
    asked.tap("pick one for me")
    assert asked.stored() == stored
    assert asked.context == context


@pytest.mark.parametrize("typed", ["exact mix", "Exact mix please", "what's the mix?", "the mix"])
def test_the_mix_asked_for_in_words_is_what_its_button_shows(asked: Talk, typed: str) -> None:
    shown = asked.tap("exact mix")
    assert asked.say(typed) == shown


@pytest.mark.parametrize("typed", ["pick one for me", "Pick one", "ok you pick", "choose for me"])
def test_a_pick_asked_for_in_words_is_drawn_as_by_its_button(asked: Talk, typed: str) -> None:
    asked.uniform = random.Random(11).random
    asked.tap("exact mix")
    pressed = [asked.tap("pick one for me") for _ in range(20)]
    asked.uniform = random.Random(11).random
    assert [asked.say(typed) for _ in range(20)] == pressed
    assert len({*pressed}) > 1


def test_a_mix_in_words_where_there_is_none_says_so(asked: Talk) -> None:
    asked.say("where do I dink okafor")
    for typed in ("exact mix", "pick one"):
        assert asked.say(typed).splitlines()[-1] == wording("mix.none")


@pytest.mark.parametrize("said", ["who should we pick on", "mix it up more?", "pick end or serve"])
def test_what_only_sounds_like_the_mix_is_answered_as_itself(asked: Talk, said: str) -> None:
    asked.say(said)
    assert asked.heard is not None
    assert not isinstance(asked.heard.understood, RetellSaid)


def test_a_reader_of_the_book_may_press_both(fresh_anywhere: Talk) -> None:
    host = replace(fresh_anywhere, chat="group", is_group=True)
    host.bind_new_book()
    host.say("/add Okafor")
    host.say("/add Lindqvist")
    host.say(NOTES)
    host.say(ATTACK)
    payload = host.button("exact mix").payload
    reader = host.of("reader")
    assert reader.press(payload).startswith(wording("mix.of_ten"))
    assert reader.tap("pick one for me").startswith("Speed up at ")


@pytest.mark.parametrize("verb", ["mix", "pick"])
@pytest.mark.parametrize("args", ["", ":", ":nowhere", ":aim_attack:7", ":AIM_ATTACK", ":1"])
def test_a_forged_payload_changes_nothing_and_says_so(verb: str, args: str, asked: Talk) -> None:
    stored, context = asked.stored(), asked.context
    assert asked.press(f"1:{verb}{args}") == wording("unclear.too_old")
    assert (asked.stored(), asked.context) == (stored, context)


@pytest.mark.parametrize("verb", ["mix", "pick"])
def test_an_old_button_speaks_of_that_topic_as_it_stands_now(verb: str, asked: Talk) -> None:
    """After another question the pair is still the one on; without a mix that is said."""
    asked.say("who covers the middle")
    assert wording("mix.none") not in asked.press(f"1:{verb}:aim_attack")
    for topic in ("cover_middle", "aim_dink"):
        said = asked.press(f"1:{verb}:{topic}")
        assert said.splitlines()[-1] == wording("mix.none")
    bare = Talk(store=asked.store, chat="another", user="somebody", name="Somebody")
    assert bare.press(f"1:{verb}:aim_attack").splitlines()[-1] == wording("mix.none")


def test_below_thirty_nothing_on_our_pattern_from_thirty_on_what_it_gives_away(
    asked: Talk,
) -> None:
    okafor = asked.player("Okafor")
    log_choices(asked, *[f"paddle:{okafor}"] * 29)
    asked.say(ATTACK)
    assert mix_numbers(asked)["mix_logged_aims"] == 29
    few = asked.tap("exact mix")
    assert few.splitlines()[-1] == "Your pattern: 29 of 30 logged, too few to tell."
    assert "give away" not in few
    log_choices(asked, f"paddle:{okafor}")
    asked.say(ATTACK)
    numbers = mix_numbers(asked)
    assert numbers["mix_logged_aims"] == 30
    enough = asked.tap("exact mix")
    ours, advised = numbers["mix_pattern_loss_points"], numbers["mix_of_ten_loss_points"]
    assert ours > advised + 1
    assert (
        f"To the best guesser your last 20 give away {ours:.1f} in 100, these shares {advised:.1f}."
        in enough
    )
    assert "All of your last 30 were the same choice." in enough


def test_a_pattern_near_the_shares_is_told_that_it_gives_no_more_away(asked: Talk) -> None:
    """Whoever plays what we advise is not told off for it."""
    asked.say(ATTACK)
    numbers = mix_numbers(asked)
    shares = {
        OptionId(name.removeprefix("mix_share_")): share
        for name, share in numbers.items()
        if name.startswith("mix_share_")
    }
    advised = [one for one, count in of_ten(shares).items() for _ in range(count)]
    log_choices(asked, *advised * 3)
    asked.say(ATTACK)
    said = asked.tap("exact mix")
    assert "Your last 20 give no more away than these shares." in said
    assert "To the best guesser" not in said


def test_only_what_was_chosen_against_this_pair_counts(asked: Talk) -> None:
    okafor = asked.player("Okafor")
    match = log_choices(asked, *[f"paddle:{okafor}"] * 5)
    with asked.book() as book:
        book.void(match, 5)
        stretched = ChoiceRow(
            match=match,
            n=4,
            topic=Topic.AIM_ATTACK,
            option=f"paddle:{okafor}",
            ball=BallQuality.STRETCHED,
        )
        book.choose(stretched)
    asked.say("next: ruiz and hale, to 11")
    other = asked.context.match
    assert other is not None
    with asked.book() as book:
        book.append(other, EntryKind.RALLY, won_by=Winner.US)
        book.choose(ChoiceRow(match=other, n=1, topic=Topic.AIM_ATTACK, option=f"paddle:{okafor}"))
    asked.say(ATTACK)
    assert mix_numbers(asked)["mix_logged_aims"] == 3


def test_what_is_told_after_a_rally_is_no_pattern_of_ours(asked: Talk) -> None:
    """design 2, mixes: a choice counts that was recorded before, or regardless of, the end."""
    okafor = asked.player("Okafor")
    match = log_choices(asked, *[f"paddle:{okafor}"] * 5)
    with asked.book() as book:
        for row in book.choices_in(match)[:2]:
            book.choose(replace(row, tagged_before=False))
    asked.say(ATTACK)
    assert mix_numbers(asked)["mix_logged_aims"] == 3


def test_a_warm_question_reads_no_choices_and_another_topic_never(asked: Talk) -> None:
    log_choices(asked, "chest")
    asked.say(ATTACK)
    with watched(asked.store) as seen:
        asked.say(ATTACK)
    assert not any("FROM choice" in statement for statement, _ in seen)
    for text in (
        "where do I dink okafor",
        "who covers the middle",
        "plan for okafor and lindqvist",
    ):
        with watched(asked.store) as seen:
            asked.say(text)
        assert not any("FROM choice" in statement for statement, _ in seen), text


def test_one_ball_that_is_always_right_is_said_as_that() -> None:
    """engineering 1.6: if a1 - c1 >= a2 the answer is every ball, until they move."""
    shares = (
        MixShare(option="a", label="wide", call="Serve wide.", share=1.0, guess=1.0),
        MixShare(option="b", label="body", call="Serve at the body.", share=0.0),
    )
    mix = AdvisedMix(
        shares=shares, trigger="", how_often="", value=0.5, worth_points=0.0, cost_points=2
    )
    advice = Advice(topic=Topic.AIM_SERVE, call="Serve wide.", mix=mix)
    reply = render(advice)
    assert reply.text.splitlines() == ["Serve wide.", wording("mix.every_ball")]
    assert reply.buttons == ()
    assert mix_text(mix).splitlines() == ["Serve wide.", wording("mix.every_ball")]


def test_in_a_match_the_call_stands_alone_with_its_buttons(asked: Talk) -> None:
    """Match mode is short: how to vary stays a tap away."""
    asked.say("/mode match")
    asked.say(ATTACK)
    assert "Change:" not in asked.sent[-1]
    asked.button("exact mix")
