"""Whether somebody who is hurt plays on stays a question of the body, however it is put.

That staff decide and that one in doubt sits out: common practice, no source.
"""

from __future__ import annotations

import pytest
from talk import Talk

from knowledge.cautions import DEFERS
from knowledge.tactics.hurt_opponent import CALL as PLAY_THE_BALL
from knowledge.tactics.knocked import advise as knocked
from knowledge.vocabulary import Topic

SIT_OUT = "Sit out. Play only if medical staff clear it."
LOOKED_AT = "Sit out till medical staff have looked at it."
KNOCKED = knocked().call


def call(said: str) -> str:
    return said.splitlines()[0]


@pytest.fixture
def coach(fresh: Talk) -> Talk:
    for said in ("im coaching ilka and noor", "new opponent petra", "new opponent joost"):
        fresh.say(said)
    fresh.say("next petra and joost")
    return fresh


@pytest.mark.parametrize(
    "said",
    [
        "you mean I should sit out",
        "you mean no",
        "so should I stop playing",
        "can i keep going then",
        "are you sure",
        "its ok if i finish the game?",
        "i feel fine now",
        "one more game?? i can finish",
    ],
)
def test_a_dizzy_person_is_told_again_to_sit_out(fresh: Talk, said: str) -> None:
    fresh.say("I feel a bit dizzy anders says drink water is that enough")
    assert call(fresh.say(said)) == SIT_OUT


@pytest.mark.parametrize(
    "said",
    [
        "should i pull her out",
        "can she play",
        "she wants to play on",
        "she wants to go on, should i let her",
        "noor says shes fine",
        "should noor finish",
        "take noor off?",
    ],
)
def test_who_was_told_of_as_hurt_stays_off(coach: Talk, said: str) -> None:
    coach.say("noor hurt her knee")
    before = len(coach.notes())
    assert call(coach.say(said)) == LOOKED_AT
    assert DEFERS in coach.say("can she play")
    assert len(coach.notes()) == before


def test_how_to_retire_is_told(coach: Talk) -> None:
    coach.say("noor twisted her ankle")
    assert call(coach.say("retire the match how")) == (
        "Tell the referee, or the desk, that you retire."
    )


def test_a_score_between_changes_nothing(coach: Talk) -> None:
    coach.say("noor hurt her knee")
    coach.say("we serve")
    coach.say("4-2")
    assert call(coach.say("can she play on")) == LOOKED_AT


def test_a_cramp_may_pass_where_a_knee_may_not(coach: Talk) -> None:
    coach.say("ilka's calf is cramping")
    assert call(coach.say("can she play on")) == "Only when it is loose. It comes back: sit out."


@pytest.mark.parametrize(
    "said",
    [
        "I ran into the fence and my wrist is sore can I keep going",
        "I fell on my wrist can I keep going",
        "i banged my knee on the post, ok to continue?",
        "i banged my elbow on the fence and it hurts, should we retire?",
        "i took a fall and now my hip aches",
    ],
)
def test_what_hurts_after_a_knock_is_looked_at_first(fresh: Talk, said: str) -> None:
    reply = fresh.say(said)
    assert call(reply) == KNOCKED
    assert DEFERS in reply


@pytest.mark.parametrize(
    "said",
    [
        "hurt my elbow when i fell, should we retire?",
        "collided with my partner and my shoulder hurts",
    ],
)
def test_a_fall_that_may_be_graver_stops_play_too(fresh: Talk, said: str) -> None:
    first = call(fresh.say(said))
    assert first.startswith("Stop")
    assert "medical staff" in first


@pytest.mark.parametrize(
    "said", ["joost has a bad shoulder hit that side?", "petra is limping, lob?"]
)
def test_an_opponent_who_hurts_is_played_like_any_other(coach: Talk, said: str) -> None:
    assert call(coach.say(said)) == PLAY_THE_BALL


def test_a_note_of_play_after_the_sun_hurts_nobody(coach: Talk) -> None:
    coach.say("sun is in noors eyes")
    reply = coach.say("ilka keeps popping up her dinks")
    assert reply.startswith("Noted.")
    assert DEFERS not in reply


@pytest.mark.parametrize(
    "said",
    [
        "should we keep going at her",
        "should i play on her backhand",
        "should i stop dinking",
        "should we call time out",
        "how do we stop them",
        "where do i serve",
    ],
)
def test_what_is_about_play_is_no_question_of_a_body(fresh: Talk, said: str) -> None:
    fresh.say("my elbow is sore")
    assert not fresh.say(said).startswith(("Sit out", "Sharp, new or worse"))
    asked = fresh.context.asked
    assert asked is not None
    assert asked.text != said or asked.topic is not Topic.WEATHER_OR_BODY


def test_whether_the_storm_lets_one_play_on_is_no_complaint(fresh: Talk) -> None:
    fresh.say("theres lightning, do we stop")
    assert "unwell" not in fresh.say("can i play on")


@pytest.mark.parametrize(
    "said",
    [
        "she has drunk, she says it is good now. can she play the next",
        "she had some water and sat in the shade, can she play the next game",
        "noor drank and cooled down, shall i let her play on",
    ],
)
def test_what_was_done_about_it_changes_no_topic(coach: Talk, said: str) -> None:
    coach.say("noor is a little dizzy and has stopped to sweat")
    assert call(coach.say(said)) == SIT_OUT
    assert "done today" in coach.sent[-1]


@pytest.mark.parametrize(
    "said",
    ["she will go on. I let her play, or?", "shall i let her play on", "i let her play, ok?"],
)
def test_letting_her_play_is_told_of_nobody_noted_before(coach: Talk, said: str) -> None:
    coach.say("petra's return floats up")
    before = coach.claims("Petra")
    coach.say("it is a dead leg for noor, she limps")
    assert call(coach.say(said)) == LOOKED_AT
    assert coach.claims("Petra") == before


@pytest.mark.parametrize("said", ["she will go on. I let her play, or?", "shall i let her play on"])
def test_letting_her_play_is_of_a_body_though_none_was_told_of(coach: Talk, said: str) -> None:
    coach.say("petra is slow in coming forward")
    before = coach.claims("Petra")
    assert call(coach.say(said)).startswith("Hurt or unwell?")
    assert coach.claims("Petra") == before


def test_she_behind_words_handed_back_is_whom_they_named(coach: Talk) -> None:
    coach.say("petra's return floats up")
    coach.say("noor has a sore knee")
    coach.say("she is slow today")
    assert ("foot_speed", "weakness", False) in coach.claims("Noor")
    assert ("foot_speed", "weakness", False) not in coach.claims("Petra")


@pytest.mark.parametrize(
    "said",
    [
        "petra hit noor in the chest with a hard one. she says it is ok",
        "joost got ilka in the ribs, can she go on?",
        "noor took one in the throat, she says she is fine",
    ],
)
def test_a_blow_is_looked_after_and_stored_nowhere(coach: Talk, said: str) -> None:
    coach.say("0-0-1 we serve")
    before = coach.stored()
    reply = coach.say(said)
    assert "medical staff" in call(reply)
    assert coach.stored() == before


def test_who_is_not_known_as_ours_stays_off_too_and_his_ankle_unstored(fresh: Talk) -> None:
    fresh.say("marco rolled his ankle")
    assert fresh.context.asked is not None
    assert "ankle" not in fresh.context.asked.text
    assert call(fresh.say("he says hes fine can we keep goin")) == LOOKED_AT


@pytest.mark.parametrize("said", ["where do i stretch petra", "who takes the cold side"])
def test_what_else_is_asked_behind_a_complaint_is_answered(coach: Talk, said: str) -> None:
    coach.say("noor has cramp in her calf")
    assert "sit out" not in call(coach.say(said)).lower()


@pytest.mark.parametrize(
    ("said", "score"),
    [
        ("ok hes fine, water break. our ball 4-5-1", "4-5-1. We serve."),
        ("noor says shes ok, our point", "3-1-1. We serve"),
        ("shes good to go, they won it", "2-1-2. We serve"),
    ],
)
def test_fine_again_beside_a_score_stays_a_body(coach: Talk, said: str, score: str) -> None:
    coach.say("2-1-1 us")
    coach.say("noor feels dizzy in this heat")
    told = coach.say(said)
    assert call(told) == SIT_OUT
    assert score in told


def test_fine_again_takes_no_note_and_no_question(coach: Talk) -> None:
    coach.say("noor hurt her knee")
    assert "poaching often" in coach.say("shes fine, petra poaches a lot")
    assert LOOKED_AT not in coach.say("shes fine, who do we target")


PILLS = "Ask medical staff or a pharmacist, not a chat."


@pytest.mark.parametrize(
    "said",
    [
        "ive got tablets for blood pressure should i carry on",
        "i take blood thinners is it ok to play on",
    ],
)
def test_pills_make_playing_on_no_likelier(fresh: Talk, said: str) -> None:
    assert call(fresh.say(said)) == PILLS
    fresh.say("its boiling, feel a bit dizzy")
    told = fresh.say(said)
    assert call(told) == SIT_OUT
    assert "What you take can hide it" in told
    assert not fresh.notes()


@pytest.mark.parametrize("said", ["noor asks can she wear a knee brace", "am i allowed a brace"])
def test_a_brace_is_asked_for_at_the_desk_and_heals_nothing(coach: Talk, said: str) -> None:
    told = coach.say(said)
    assert "ask the desk" in call(told)
    assert "It hurts? A brace hides it" in told
    assert "Partner takes middle and lobs" in coach.say("her knee is sore she cant run back")
