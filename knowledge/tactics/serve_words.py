"""How a serve is said: the place, and the change-up with its sign."""

from __future__ import annotations

from knowledge.planning.names import first_that_fits
from knowledge.tactics.serve_answer import ServeAnswer
from knowledge.tactics.serve_lanes import Lane, wing_at
from knowledge.vocabulary import Side, Wing

_WAYS = {Lane.T: "down the T", Lane.WIDE: "out wide"}
_LANES = {Lane.T: "T", Lane.WIDE: "wide", Lane.BODY: "body"}
_SIGNS = {
    Lane.BODY: "edges over",
    Lane.WIDE: "cheats to the middle",
    Lane.T: "leaves the T open",
}


def wing_of(answer: ServeAnswer) -> Wing | None:
    question = answer.question
    return wing_at(answer.lane, question.receiver, question.court)


def place(answer: ServeAnswer) -> str:
    """ "deep backhand, down the T", or the same with a bigger target."""
    lane, wing = answer.lane, wing_of(answer)
    if lane is Lane.BODY:
        return "deep into the body" if answer.is_deep else "mid-box, at the body"
    depth = "deep" if answer.is_deep else "mid-box"
    if wing is Wing.BACKHAND:
        return f"{depth} backhand, {_WAYS[lane]}"
    return f"{depth} and wide" if lane is Lane.WIDE else f"{depth}, {_WAYS[lane]}"


def spot(answers: tuple[ServeAnswer, ...]) -> str:
    """One receiver's spot in a word; the wing where both courts aim at it."""
    lanes = {answer.lane for answer in answers}
    if len(lanes) == 1:
        return _LANES[answers[0].lane]
    if answers[0].question.receiver.hand is None and _as_for_a_right_hander(answers):
        return Wing.BACKHAND.value
    wings = {wing_of(answer) for answer in answers}
    wing = wings.pop() if len(wings) == 1 else None
    if wing is not None:
        return wing.value
    return " or ".join(_LANES[lane] for lane in sorted(lanes))


def _as_for_a_right_hander(answers: tuple[ServeAnswer, ...]) -> bool:
    """Whether the lanes are a right-hander's backhand: the wing is meant, whatever the hand."""
    backhand = {Side.RIGHT: Lane.T, Side.LEFT: Lane.WIDE}
    return all(answer.lane is backhand[answer.question.court] for answer in answers)


def call_for(answers: tuple[ServeAnswer, ...]) -> str:
    """The call for one receiver, in one court or, where that isn't known, in either."""
    first = answers[0]
    name = first.question.receiver.name
    if len({answer.lane for answer in answers}) == 1:
        where = place(first)
        return first_that_fits(
            (f"Serve {name} {where}.", f"Serve {where}.") if name else (f"Serve {where}.",)
        )
    depth = "deep" if first.is_deep else "mid-box"
    if first.question.receiver.hand is None and spot(answers) == Wing.BACKHAND:
        backhand = f"{depth} to the backhand."
        return first_that_fits((f"Serve {name} {backhand}".replace("  ", " "), f"Serve {backhand}"))
    by_court = ", ".join(
        f"{_LANES[answer.lane]} from {answer.question.court}" for answer in answers
    )
    wing = spot(answers)
    what = f"{depth} {wing}" if wing in set(Wing) else depth
    return first_that_fits(
        (
            *((f"Serve {name} {what}: {by_court}.",) if name else ()),
            f"Serve {what}: {by_court}.",
        )
    )


def call_for_both(each: tuple[tuple[ServeAnswer, ...], ...]) -> str:
    """The call where either of them may receive."""
    spots = [spot(answers) for answers in each]
    depth = "deep" if each[0][0].is_deep else "mid-box"
    if len(set(spots)) == 1:
        return first_that_fits((f"Serve {depth}: {spots[0]}, whoever receives.",))
    names = [answers[0].question.receiver.name for answers in each]
    return first_that_fits(
        (
            f"Serve {depth}: " + ", ".join(
                f"{name} {where}" for name, where in zip(names, spots, strict=True)
            ) + ".",
            f"Serve {depth}: {names[0]} {spots[0]}.",
            f"Serve {depth}.",
        )
    )  # fmt: skip


BIG_TARGET = "Serve the middle of the box: a big target."
"""The call for a server whose serve is the weak shot."""


def sign(lane: Lane, name: str) -> str:
    """What to look for before the change-up: completes "when"."""
    return f"{name or 'the receiver'} {_SIGNS[lane]}"


def lane_call(lane: Lane) -> str:
    """A lane as a line of its own, for the mix."""
    return f"Serve {LANE_CALLS[lane]}."


LANE_CALLS = {Lane.T: "down the T", Lane.WIDE: "wide", Lane.BODY: "into the body"}
