"""How a return is said: whom at, how it is hit, and the sign for the change-up."""

from __future__ import annotations

from knowledge.advice import CALL_LIMIT
from knowledge.effects import OptionId
from knowledge.planning.names import first_that_fits
from knowledge.situation import OnCourt
from knowledge.tactics.return_answer import ReturnAnswer
from knowledge.tactics.return_question import CROSSER, MIDDLE, SERVER, player_at
from knowledge.tactics.return_time import Style
from knowledge.vocabulary import BallQuality

_MIDDLE_CALLS = {
    Style.HIGH: "Return high, deep and middle; then run in.",
    Style.HARD: "Return hard, deep and middle; then run in.",
    Style.SLICE: "Slice it low, deep and middle; then run in.",
}
MID_COURT_CALL = "Return high to mid-court: a big target; run in."
JAMMED = "Lift it high, deep and middle; then run in."
JAMMED_MID_COURT = "Lift it high to mid-court; then run in."
SHORT_SERVE = "Step in: drive it deep middle, then go in."

_HOW = {
    Style.HIGH: ": high, then run in.",
    Style.HARD: ": hard, then run in.",
    Style.SLICE: ": a low slice, then in.",
}


def call_for(answer: ReturnAnswer, *, only: OnCourt | None) -> str:
    """The call; `only` is the one of us whose return is not marked weak."""
    if answer.option == MIDDLE:
        return _at_middle(answer)
    where = whom(answer)
    if only is not None:
        return first_that_fits(
            (f"{how_deep(answer)} at {where}: only {only.name}.", f"Return at {where}.")
        )
    if _is_chance(answer):
        return first_that_fits((f"Step in: drive it at {where}, then go in.", f"Drive at {where}."))
    start = f"{how_deep(answer)} at {where}"
    return first_that_fits((start + _HOW[answer.style], f"{start}."), limit=CALL_LIMIT)


def _at_middle(answer: ReturnAnswer) -> str:
    if answer.question.ball is BallQuality.STRETCHED:
        return JAMMED if answer.is_deep else JAMMED_MID_COURT
    if _is_chance(answer):
        return SHORT_SERVE
    is_mid_court = answer.style is Style.HIGH and not answer.is_deep
    return MID_COURT_CALL if is_mid_court else _MIDDLE_CALLS[answer.style]


def _is_chance(answer: ReturnAnswer) -> bool:
    """Whether a short serve is there to be driven."""
    return answer.question.ball is BallQuality.EASY and answer.style is Style.HARD


def how_deep(answer: ReturnAnswer) -> str:
    """ "Return deep", or mid-court where depth costs more than it wins."""
    return "Return deep" if answer.is_deep else "Return mid-court"


def whom(answer: ReturnAnswer) -> str:
    """ "Lindqvist", "Okafor's feet", "whoever crosses"."""
    target = answer.target
    if target is None:
        return {CROSSER: "whoever crosses", SERVER: "the server's feet"}.get(
            answer.option, "the middle"
        )
    question = answer.question
    is_inside = question.server_inside and question.server is not None
    at_feet = is_inside and question.server is not None and question.server.player == target.player
    return f"{target.name}'s feet" if at_feet else target.name


def mix_call(option: OptionId, theirs: tuple[OnCourt, ...]) -> str:
    """An option as a line of its own, for the mix."""
    target = player_at(option, theirs)
    if target is not None:
        return first_that_fits((f"Return deep at {target.name}.",))
    return {
        CROSSER: "Return deep at whoever crosses.",
        SERVER: "Return deep at the server's feet.",
    }.get(option, "Return deep and middle.")


def sign(option: OptionId, answer: ReturnAnswer) -> str:
    """What to look for before this change-up: completes "when"."""
    target = player_at(option, answer.question.theirs)
    if target is None:
        signs = {MIDDLE: "they guard their sides", SERVER: "the server steps in"}
        return signs.get(option, "one leaves early")
    if target == answer.question.crosser:
        return f"{target.name} leaves early"
    return f"{target.name} drifts to the middle"
