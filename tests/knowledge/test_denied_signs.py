"""An emergency that is plainly denied is none; doubted, asked, graded or over, it stays one.

Signs from general first-aid teaching (from memory); the sentences are our own.
"""

from __future__ import annotations

import pytest

from knowledge.cautions import DEFERS, is_emergency
from knowledge.emergencies import without_denied
from knowledge.situation import Asked, Situation
from knowledge.tactics import advise
from knowledge.tactics.beside_complaint import NO_ALARM
from knowledge.vocabulary import Topic

DENIED = [
    "im not dizzy",
    "no not dizzy just tired legs",
    "no im not collapsing, just the calf",
    "not dizzy or confused, just thirsty",
    "no dizziness but my calf hurts",
    "he didnt faint",
    "nobody fainted",
    "he didn't hit his head",
    "im not having a heart attack",
    "no chest pain",
    "tom isn't dizzy",
    "i fell but im not hurt",
    "no i didnt fall, my knee hurts",
]

STAYS = [
    "not too dizzy",
    "not just dizzy",
    "not dizzy any more",
    "im not dizzy now",
    "hope its not a concussion",
    "is it not a concussion",
    "isnt that a concussion",
    "not a concussion?",
    "no, dizzy",
    "no dizzy just tired",
    "not sure im not dizzy",
    "i dont think im concussed",
    "not dizzy but my chest is tight",
    "not dizzy, chest is tight",
    "im not having a heart attack, my chest just hurts",
    "not bleeding much",
    "it hasnt stopped bleeding",
    "bleeding, not dizzy",
    "not fainting, dizzy",
    "i never get dizzy but now i am",
    "i didnt get dizzy, but now i am",
    "not breathing",
    "he isnt breathing",
    "not sweating",
    "no pulse",
    "shes not moving",
    "hes not conscious",
    "i fell, not dizzy, but cant get up",
    "not dizzy but my sugar is low and im shaking",
    "varnell is still down but not dizzy",
    "not good, dizzy",
    "not ok, she fainted",
]

STAIRS = [
    "my calf is worse, going down stairs hurts",
    "going down stairs hurts my knee",
    "going down hurts my knee",
    "my knee hurts going down the stairs",
    "my knee hurts going down for low balls",
    "walking down the hill hurts",
    "the swelling is going down but it still hurts",
]

STILL_DOWN = [
    "he fell down the stairs and hurt his knee",
    "hes going down!! hurt",
    "tom went down hurt",
    "he hurt his leg going down hard",
    "coming down the stairs i fell and cant get up",
]


def told(words: str, *, before: str = "") -> tuple[str, str]:
    asked = Asked(words=words, before=before)
    advice = advise(Situation(topic=Topic.WEATHER_OR_BODY, asked=asked))
    lines = (advice.unless, advice.assumed, advice.caution)
    return advice.call, "\n".join(line for line in lines if line)


@pytest.mark.parametrize("said", DENIED)
def test_a_plain_denial_is_taken_and_help_stays_open(said: str) -> None:
    assert not is_emergency(said)
    assert without_denied(said) is not None or "fall" in said
    call, below = told(said)
    assert "emergency" not in call
    assert "staff" in f"{call}\n{below}"


@pytest.mark.parametrize("said", STAYS)
def test_what_is_not_plainly_denied_stays_an_emergency(said: str) -> None:
    assert is_emergency(said)
    assert without_denied(said) is None


def test_a_denial_alone_keeps_the_way_to_help() -> None:
    assert NO_ALARM in told("im not dizzy")[1]
    assert DEFERS in told("im not dizzy")[1]


def test_the_complaint_told_before_goes_on() -> None:
    call, below = told("no im not collapsing, just the calf", before="my calf is worse")
    assert call == "Off it till medical staff look: no running on it."
    assert NO_ALARM in below


def test_an_emergency_told_before_is_not_talked_away() -> None:
    assert told("no im not dizzy", before="i feel dizzy")[0].startswith("Sit out.")
    assert told("no heart attack", before="my chest is tight")[0].startswith("Sit out.")


@pytest.mark.parametrize("said", STAIRS)
def test_going_down_stairs_is_no_collapse(said: str) -> None:
    assert not is_emergency(said)


@pytest.mark.parametrize("said", STILL_DOWN)
def test_who_goes_down_is_down(said: str) -> None:
    assert is_emergency(said)
