"""How the corner and the post are said: calls, what the number is, and what would change it."""

from __future__ import annotations

import math

from knowledge.court import METRES_PER_FOOT
from knowledge.planning.names import first_that_fits
from knowledge.tactics import ernie_sizes as sizes
from knowledge.tactics.ernie_answer import ErnieAnswer
from knowledge.tactics.ernie_effects import BEHIND, MIDDLE, ROUND, Corner
from knowledge.tactics.ernie_said import Kind
from knowledge.vocabulary import PlayerId

JUMP_CAUTION = "Land clear of net, post and people; dry floor."
POST_CAUTION = "Mind post, fence and benches; don't dive."
AIR_CAUTION = "Never at the head: low, behind the jumper."

COVER_CALL = "Slide to the middle the moment partner jumps."
AIM_CALL = "Hit it down at the nearer one's feet."
BODY_CAUTION = "You are close: at the feet, never at the head."


def jump_call(corner: Corner, answer: ErnieAnswer, *, asker: PlayerId | None, named: bool) -> str:
    """The call to jump: now, or once off a wide dink; with names where they decide."""
    if answer.said.set_up:
        return "Jump the corner now; partner takes the middle."
    jumper = corner.jumper
    who = f": {jumper.name}, " if jumper is not None and jumper.player != asker else ", "
    to = f"a dink wide to {corner.hitter.name}" if named and corner.hitter else ""
    if to:
        return first_that_fits(
            (
                f"Show the Ernie once{who}off {to}.",
                f"Show the Ernie once, off {to}.",
                "Show the Ernie once, off your wide dink.",
            )
        )
    plain = "Show the Ernie once, off your wide dink."
    is_asker = who == ", "
    return (
        plain if is_asker else first_that_fits((f"Show the Ernie once{who}off a wide dink.", plain))
    )


def stay_call(answer: ErnieAnswer) -> str:
    if answer.left_out and not answer.corners:
        return "Stay at the line: leave the Ernie out."
    if answer.said.overused:
        return "Stay home: they wait for the Ernie by now."
    if answer.said.set_up is False:
        return "Stay home: no Ernie off this ball."
    return "Stay home: the gap behind costs more."


def post_call(answer: ErnieAnswer, *, past: bool | None) -> str:
    if answer.best == ROUND:
        if past is None:
            return "Go round only past the sideline: low, deep corner."
        return "Go round the post: low, to the deep corner."
    if past is False:
        return "Play it soft to the middle: the post is in the way."
    return "Play it soft over the net, to the middle."


def keep_off_call(answer: ErnieAnswer) -> str:
    if answer.best == BEHIND:
        return "Hit behind the jumper: low, into the middle."
    if answer.best != MIDDLE:
        return f"Keep it away: {answer.ranking.best.option.label}."
    is_post = answer.said.kind is Kind.THEIR_POST
    return "Dink middle for three balls; " + ("nothing wide." if is_post else "stay off the line.")


def jump_number() -> str:
    """How often they must go line for a jump to pay, in tens, never rounded down."""
    covered, open_gap = (
        math.ceil(10 * sizes.line_share_that_pays(covered=covered)) for covered in (True, False)
    )
    return f"Pays if {covered} in 10 go line; {open_gap} if partner stays."


def post_number(least_past_m: float, *, from_net_m: float, is_said: bool) -> str:
    """How wide it must be met from there: feet, up to the next half."""
    feet = math.ceil(2 * least_past_m / METRES_PER_FOOT) / 2
    where = f"{from_net_m / METRES_PER_FOOT:.0f} ft back" if is_said else "the kitchen line"
    return f"From {where}: {feet:g} ft past the sideline opens it."


def jump_unless(answer: ErnieAnswer) -> str | None:
    if answer.corner is None:
        can_jump = answer.corners and answer.said.set_up is False
        return "Your wide dink, his head down: then go." if can_jump else None
    if answer.said.set_up:
        return "Partner not across? Stay: the gap costs more."
    return "Head up or shoulder open: stay home."


def post_unless(answer: ErnieAnswer, *, past: bool | None) -> str | None:
    if answer.best == ROUND:
        return "Still inside the sideline: soft to the middle."
    return "Wider, past the sideline? Go round it." if past is False else None


def keep_off_unless(answer: ErnieAnswer) -> str:
    if answer.best == BEHIND:
        return "Not gone yet? Middle, and off the line."
    if answer.said.kind is Kind.THEIR_POST:
        return "A short dead dink keeps them off it too."
    return "Already in the air: hit behind, low and middle."
