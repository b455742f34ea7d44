"""Plans over two meetings, as its users would talk: kept, recalled, compared, sent, bad input."""

from __future__ import annotations

import pytest
from talk import Talk, demo_talk

from bot.chat.payload import Verb, tap
from knowledge.advice import Advice
from knowledge.phone_screen import MOST_LIST_LINES, wrapped
from knowledge.vocabulary import Topic
from scouting_db.book import Book

NOTES = (
    "hale has a weak third shot, pops up backhand dinks, is right handed",
    "ruis jams at the body",
    "ruis plays left and is right handed",
)


def _met(talk: Talk) -> Talk:
    """A match won against Ruis and Hale with a plan, then a week with two notes."""
    talk.say("next: ruis and hale")
    for note in NOTES:
        talk.say(note)
    talk.say("plan")
    talk.say("won 11-8 11-6")
    talk.later(days=7)
    talk.say("ruis poaches a lot")
    talk.say("hale returns short")
    return talk


@pytest.fixture
def rematch() -> Talk:
    return _met(demo_talk())


def _plans(talk: Talk) -> int:
    return len(talk.stored()["plan"])


def _advice(talk: Talk) -> Advice:
    assert talk.heard is not None
    found: Advice = talk.heard.trace["advice"]
    return found


def test_a_plan_is_kept_when_it_is_asked_for_and_once(rematch: Talk) -> None:
    assert _plans(rematch) == 1
    rematch.say("plan vs ruis and hale")
    assert _plans(rematch) == 2
    rematch.say("plan vs ruis and hale")
    assert _plans(rematch) == 2


def test_the_plan_of_the_last_meeting_comes_back_by_their_names(rematch: Talk) -> None:
    given = rematch.say("what was our plan last time vs ruis and hale")
    assert given.startswith("Plan vs Ruis/Hale, Sat 21 Jun:")
    assert "poaches" not in given
    rematch.say("plan vs ruis and hale")
    again = rematch.say("the plan for ruis and hale again")
    assert again.startswith("Plan vs Ruis/Hale, earlier today:")
    assert "poaches a lot" in again
    assert rematch.say("our old plan").startswith("Plan vs Ruis/Hale, Sat 21 Jun:")


def test_recalling_writes_nothing(rematch: Talk) -> None:
    before = rematch.stored()
    for line in ("the plan for ruis and hale again", "plan b", "what changed since last time"):
        rematch.say(line)
    assert rematch.stored() == before


def test_the_rematch_says_what_they_will_probably_change(rematch: Talk) -> None:
    said = rematch.say("plan vs ruis and hale")
    assert "You won leading with" in said
    assert "(a guess)" in said


def test_what_is_new_since_the_last_meeting(rematch: Talk) -> None:
    said = rematch.say("what changed since we played ruis and hale")
    assert "Sat 21 Jun you won 11-8 11-6" in said
    assert "1 new note on Ruis, 1 new note on Hale" in said
    advice = _advice(rematch)
    assert advice.numbers["new_notes"] == 2
    texts = [line.text for line in advice.lines]
    assert "Ruis: new, poaches a lot" in texts


def test_each_line_of_a_plan_leads_to_its_notes(rematch: Talk) -> None:
    rematch.say("plan vs ruis and hale")
    advice = _advice(rematch)
    with rematch.book() as book:
        for line in advice.lines:
            told = book.told_notes(line.source.evidence)
            assert len(told) == len(line.source.evidence)
            assert all(one.player in book_players(book) for one in told)
    why = rematch.say("why")
    assert "“weak third shot" in why or "“jams at the body" in why


def book_players(book: Book) -> set[int]:
    return {row.player for row in book.players()}


def test_a_plan_to_send_stands_for_itself(rematch: Talk) -> None:
    sent = rematch.say("send the plan for ruis and hale to tom")
    title, *lines = sent.splitlines()
    assert title.startswith("For Tom: plan vs Ruis/Hale")
    assert lines[0].startswith("1 ")
    assert wrapped(sent.splitlines()) <= MOST_LIST_LINES
    assert "plan b when" in sent.lower()


def test_a_student_gets_no_note_on_anybody(rematch: Talk) -> None:
    """Word for word what it says of a pair on whom nothing is noted, and that fits a screen."""
    rematch.say("plan vs ruis and hale")
    sent = rematch.say("plan for a student").splitlines()
    assert wrapped(sent) <= MOST_LIST_LINES
    other = demo_talk()
    other.say("next: nowak and petrov")
    assert other.say("plan for a student").splitlines()[1:] == sent[1:]
    assert not any(name in line for name in ("Ruis", "Hale") for line in sent[1:])


def test_our_own_plan_that_comes_back_forwarded_is_no_note(rematch: Talk) -> None:
    sent = rematch.say("send the plan for ruis and hale to tom")
    before = rematch.stored()
    rematch.say(sent, forwarded=True)
    assert rematch.stored() == before


def test_the_buttons_do_what_the_words_do(rematch: Talk) -> None:
    rematch.say("plan vs ruis and hale")
    labels = [one.label for one in rematch.buttons]
    assert {"plan B", "send it", "since Sat 21 Jun"} <= set(labels)
    by_words = rematch.say("plan b")
    rematch.say("plan vs ruis and hale")
    assert rematch.tap("plan B") == by_words


def test_a_forged_button_changes_nothing(rematch: Talk) -> None:
    before = rematch.stored()
    for payload in ("1:plan:b", "1:plan:steal:1:2", "1:plan:b:x:y", "1:plan:b:999999:1"):
        rematch.press(payload)
    assert rematch.stored() == before


def test_a_button_speaks_of_its_pair_however_late(rematch: Talk) -> None:
    players = [rematch.player(name) for name in ("Okafor", "Lindqvist")]
    rematch.say("plan vs ruis and hale")
    said = rematch.press(tap(Verb.PLAN, "b", *players))
    assert "Ruis" not in said


THEMSELVES = "can't face themselves. Who is across the net?"


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("plan vs tom", "Tom: that's your side. Whom do you play?"),
        ("plan against mira and tom", f"Mira and Tom {THEMSELVES}"),
        ("plan vs okafor and tom", "Tom plays with you: who plays with Okafor?"),
        (
            "plan for okafor and lindqvist against okafor and lindqvist",
            "Okafor/Lindqvist can't play themselves. Who is across?",
        ),
        ("plan for mira and tom vs tom and mira", f"Mira and Tom {THEMSELVES}"),
        (
            "plan for okafor and lindqvist against ruis and hale",
            "I plan for your pair. First say: we are Okafor and Lindqvist",
        ),
    ],
)
def test_who_cannot_play_whom_is_said_kindly(asked: str, said: str) -> None:
    talk = demo_talk()
    before = talk.stored()
    assert talk.say(asked).splitlines()[0] == said
    assert talk.stored() == before


def test_a_plan_for_us_by_name_is_a_plan() -> None:
    talk = demo_talk()
    by_name = talk.say("plan for mira and tom against okafor and lindqvist")
    assert by_name == talk.say("plan vs okafor and lindqvist")


def test_nobody_noted_gives_what_to_look_for_and_the_rules_for_anybody() -> None:
    talk = demo_talk()
    said = talk.say("plan vs lena brandt and castellano")
    assert "no book" in said
    assert "Till then: deep returns, middle thirds." in said
    assert "Against anybody: Return high, deep, middle; then run in" in talk.say("why")
    assert _plans(talk) == 0
    assert "No plan to send yet" in talk.say("send the plan to tom")


def test_one_opponent_named_is_half_a_plan_and_said_so() -> None:
    talk = demo_talk()
    talk.say("add zed")
    said = talk.say("plan vs zed")
    assert "Only Zed named: say the partner too." in said


def test_a_pair_never_met_has_nothing_since() -> None:
    talk = demo_talk()
    said = talk.say("anything new on castellano and szymanski")
    assert said.startswith("No earlier meeting with Castellano/Szymanski here")


def test_in_a_match_a_plan_again_is_short() -> None:
    talk = demo_talk()
    talk.say("plan vs okafor and lindqvist")
    talk.say("next: okafor and lindqvist")
    talk.say("we serve")
    talk.say("our rally")
    said = talk.say("remind me of the plan")
    assert len(said.splitlines()) <= 4


def test_the_cue_of_a_match_names_who_serves_and_keeps_to_the_plan() -> None:
    talk = demo_talk()
    for line in ("next: okafor and lindqvist", "plan", "they serve", "mira started right"):
        talk.say(line)
    said = talk.say("remind me of the plan before they serve")
    assert said.startswith("Mira: return deep at Lindqvist.")
    assert "Tom: " in said
    advice = _advice(talk)
    assert advice.topic is Topic.CUE
    assert advice.numbers["from_given_plan"] == 1.0


def test_the_cue_asked_for_a_rally_is_of_that_rally_whoever_serves_now() -> None:
    talk = demo_talk()
    talk.say("next: okafor and lindqvist, to 11")
    talk.say("we serve")
    assert talk.say("cue when receiving") != talk.say("cue")


def test_another_pairs_meeting_is_not_ours(rematch: Talk) -> None:
    """A coach's other pair won nothing when these two did."""
    with rematch.book() as book:
        for name in ("Jo Marsh", "Priya Nair"):
            book.add_player(name, ours=True)
    told = rematch.say("plan for Jo and Priya against ruis and hale")
    assert "You won" not in told
    assert "For Jo/Priya." in told


@pytest.mark.parametrize(
    "text", ["send it to tom", "say it so i can text it to tom", "put it so we can send it to tom"]
)
def test_what_is_to_be_sent_on_is_the_plan_and_no_note(demo: Talk, text: str) -> None:
    notes = len(demo.notes())
    demo.say("plan vs okafor and lindqvist")
    assert demo.say(text).startswith("For Tom: plan vs Okafor/Lindqvist (today)\n1 ")
    demo.say("who covers the middle")
    assert demo.say(text).startswith("Only a plan is put as a message to send on.")
    assert [one.label for one in demo.buttons] == ["game plan"]
    assert len(demo.notes()) == notes


def test_to_send_the_ball_to_one_of_them_is_no_message(demo: Talk) -> None:
    demo.say("who covers the middle")
    assert "message to send on" not in demo.say("send it to lindqvist")


@pytest.mark.parametrize(
    "asked", ["plan for tom only", "can i make a plan for mira", "plan for mira and tom"]
)
def test_a_plan_for_ours_alone_is_against_whom_they_play(asked: str) -> None:
    talk = demo_talk()
    talk.say("next: okafor and lindqvist")
    reply = talk.say(asked)
    assert "your side" not in reply
    assert "at Lindqvist" in reply


@pytest.mark.parametrize(
    "asked",
    [
        "can you make it shorter so I can send it to Tom, he reads not so much",
        "say it so i can text it to tom because he is on court",
        "put it so that i can forward it to tom",
    ],
)
def test_what_is_to_be_sent_on_is_a_copy_whatever_is_said_of_whom_it_is_for(asked: str) -> None:
    talk = demo_talk()
    talk.say("plan vs okafor and lindqvist")
    assert talk.say(asked).startswith("For Tom: plan vs Okafor/Lindqvist")
