"""How a speed-up is said: the call, where the counter comes back, and why not to."""

from __future__ import annotations

import re
from collections.abc import Iterator

from knowledge.advice import Reason
from knowledge.effects import Truth
from knowledge.engine import Part
from knowledge.planning.hands import call_at
from knowledge.planning.names import first_that_fits
from knowledge.planning.weighing import is_open, said_of
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics.aim_words import rallies, short
from knowledge.tactics.attack_answer import Aimed
from knowledge.tactics.attack_question import AttackQuestion, Contact, cross_to
from knowledge.tactics.attack_spots import Spot
from knowledge.tactics.attack_whether import Whether
from knowledge.tactics.standing_words import capital

GENERAL_CALL = "Speed up at the paddle hip, ball above the net."
GENERAL_ROLL = "Roll it at the paddle hip, with topspin."
GENERAL_REASONS = (
    Reason(text="The paddle hip jams who waits on the backhand", source=COMMON_PRACTICE),
    Reason(text="Straight ahead: the counter comes to you", source=COMMON_PRACTICE),
    Reason(text="First one jams, the next goes to the open side", source=COMMON_PRACTICE),
)

LET_THEM_START = "Keep dinking: let them speed up first."
"""Where our own notes mark the speed-up as weak."""

TAKEN_AS_HIGH = "If it is above the net; low or stretched: dink it."
TOO_LOW = "Below the knee or stretched: dink it back."
HIGHER = "Above the net and balanced: then speed it up."
NOT_SET = "They are late or lean in: then speed it up."
ROLL_IT = "Off the bounce at 4.5 and up: roll it."

CAUTION = "Body, never the head; eye protection on."
"""Eyes: the ball does 43% of the injuries (JAMA Ophthalmology 2025); eyewear to ASTM F3164."""

TO_PARTNER = "Your partner can: leave it there."
HIGHER_SOFT = "They pop one up: put it away, no faster."

_WHY_NOT = {
    Contact.BELOW_KNEE: "below the knee it sits up",
    Contact.LOW: "too low to speed up",
    Contact.AT_NET: "too low to speed up",
}


def attack_call(found: Aimed, situation: Situation) -> str:
    """The call; with the lane where the question says from where it is played."""
    call = call_at(found.spot, situation)
    if found.question.contact is Contact.AT_NET:
        call = call.replace("Speed up", "Roll it").replace("speed up", "roll it")
    lane = None if found.spot is None else cross_to(found.spot.target, found.question)
    with_lane = {True: f"{call}, cross.", False: f"{call}, straight."}
    asked = () if lane is not None else tuple(_as_asked(call, found, situation))
    candidates = (*asked, *(() if lane is None else (with_lane[lane],)), f"{call}.")
    fallback = "Speed up at the seam." if found.spot is None else f"At {found.spot.at}."
    return first_that_fits((*candidates, fallback))


def _as_asked(call: str, found: Aimed, situation: Situation) -> Iterator[str]:
    """The ball where it is asked when to, the lane where two are weighed."""
    words = situation.asked.words
    if _WHEN.search(words) and not found.question.is_ball_said:
        yield f"{call.replace('peed up at', 'peed up the ball above the net:')}."
    if _WHICH_LANE.search(words):
        yield f"{call}, straight."


_WHEN = regex(r"^\W*(?:(?:so|and|ok|okay) )?when\b(?! (?:they|he|she)\b)", re.IGNORECASE)
_WHICH_LANE = regex(
    r"\b(?:cross|diagonal)\w*\b.*\bor\b.*\b(?:straight|line)\b|"
    r"\b(?:straight|line)\b.*\bor\b.*\b(?:cross|diagonal)",
    re.IGNORECASE,
)


def general_call(question: AttackQuestion) -> str:
    return GENERAL_ROLL if question.contact is Contact.AT_NET else GENERAL_CALL


def dink_call(question: AttackQuestion, one: Whether) -> str:
    """The call where one more dink is better."""
    if not one.owned:
        return LET_THEM_START
    if question.contact in (Contact.BELOW_KNEE, Contact.LOW):
        return f"Dink it back: {_WHY_NOT[question.contact]}."
    if question.is_stretched:
        return "Dink it back: stretched, it sits up."
    if question.is_from_mid_court:
        return "Play it soft: from back there they see it coming."
    if question.contact in _WHY_NOT:
        return f"Dink it back: {_WHY_NOT[question.contact]}."
    return "Keep dinking: they are set for the speed-up."


def why(found: Aimed) -> Iterator[Reason]:
    """Notes first, then what geometry says; never a condition that is only likely."""
    driver = found.weighed.driver
    if driver is not None:
        yield Reason(text=capital(driver.effect.because), source=driver.source)
    elif found.spared is not None:
        other, against = found.spared
        said = said_of(against.effect)
        yield Reason(
            text=short((f"Not {other.name}: {said}", capital(said))), source=against.source
        )
    for part in found.weighed.ranking.best.parts:
        if part is not driver and _may_say(part):
            yield Reason(text=capital(part.effect.because), source=part.source)


def _may_say(part: Part) -> bool:
    if part.points <= 0 or part.truth is not Truth.YES or is_open(part):
        return False
    return bool(part.evidence) or part.effect.scale is None


def rather_the_other(found: Aimed) -> Reason | None:
    """What notes say against whom is asked about, and at whom of the two it is better."""
    if found.spared is None or found.spot is None:
        return None
    said, name = capital(said_of(found.spared[1].effect)), found.spot.target.name
    text = short((f"{said}: rather at {name}", f"{said}: rather the other"))
    return Reason(text=text, source=found.spared[1].source)


def comes_back(found: Aimed) -> Reason:
    """Where the counter goes: straight ahead of whoever hits it."""
    question = found.question
    lane = None if found.spot is None else cross_to(found.spot.target, question)
    partner = question.partner.name if question.partner else ""
    match lane, question.facts.partner_set:
        case True, _:
            said = (f"Cross: the counter goes at {partner or 'your partner'}",)
        case False, _:
            said = ("Straight: the counter comes back at you",)
        case _, False:
            said = ("Straight only: your partner isn't ready",)
        case _:
            said = ("Straight ahead: the counter comes to you",)
    return Reason(text=short((*said, "The counter goes straight ahead")), source=COMMON_PRACTICE)


def second_ball(found: Aimed) -> Reason:
    """The first speed-up jams; the ball after it finds the open side."""
    if found.spot is not None and found.spot.spot is Spot.FEET:
        return Reason(text="Then step in: the next one sits up", source=COMMON_PRACTICE)
    return Reason(text="First one jams, the next goes to the open side", source=COMMON_PRACTICE)


def time_number(question: AttackQuestion) -> str:
    """How long they have, in plain words."""
    return f"They have about {question.they_have_s:.2f} s at 35 mph from there."


def worth(points: float) -> str:
    """What speeding it up gains over one more dink, in plain words."""
    if round(points) < 1:
        return "Little between that and one more dink."
    return rallies(points, over="one more dink")
