"""How an answer about the middle is said, short enough for a lock screen."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import CALL_LIMIT
from knowledge.tactics.aim_words import short
from knowledge.tactics.dink_words import fit
from knowledge.tactics.middle_answer import FAST, SLOW, MiddleAnswer, Owner, Taken
from knowledge.tactics.middle_effects import Seat
from knowledge.vocabulary import BallKind, Side, Wing

KIND = {
    BallKind.DINK: "dink",
    BallKind.FLOATING: "floater",
    BallKind.DRIVE: "drive",
    BallKind.SPEED_UP: "speed-up",
    BallKind.LOB: "lob",
}

IF_WIDE = "One of you pulled wide? The other takes all inside."


IN_WIND = "Wind: call it late and loud; let high ones bounce."
"""A high ball drifts on its way down, and whose it is changes with it. Common practice."""


def call(answer: MiddleAnswer, asked: BallKind | None) -> str:
    """The call: one ball if one was asked about, else slow and fast."""
    if answer.pulled_wide is not None:
        return _while_wide(answer, answer.pulled_wide)
    if asked is not None:
        return _one_ball(answer, answer.of(asked))
    groups = _groups(answer)
    if len(groups) == 1:
        return _every_ball(answer, groups[0][1].owner)
    return fit(
        (
            " ".join(f"{label}: {long_name(answer, taken)}." for label, taken in groups),
            " ".join(f"{label}: {who(answer, taken)}." for label, taken in groups),
            " ".join(f"{label}: {short_name(answer, taken)}." for label, taken in groups),
            " ".join(f"{label}: {_court(answer, taken.owner)}." for label, taken in groups),
        )
    )


_LABELS: dict[tuple[BallKind, ...], str] = {
    (BallKind.DINK,): "Slow",
    (BallKind.FLOATING,): "High",
    (BallKind.DRIVE,): "Drives",
    (BallKind.SPEED_UP,): "Speed-ups",
    SLOW: "Slow",
    FAST: "Fast",
    (BallKind.FLOATING, *FAST): "High or fast",
    (*SLOW, BallKind.DRIVE): "Slow or drives",
}


def _groups(answer: MiddleAnswer) -> list[tuple[str, Taken]]:
    """The balls by owner, in order of pace, each group under one word where there is one."""
    by_owner: dict[Owner, list[Taken]] = {}
    for kind in (*SLOW, *FAST):
        taken = answer.of(kind)
        by_owner.setdefault(taken.owner, []).append(taken)
    return [(_label(tuple(one.kind for one in group)), group[0]) for group in by_owner.values()]


def _label(kinds: tuple[BallKind, ...]) -> str:
    if kinds in _LABELS:
        return _LABELS[kinds]
    words = [_LABELS[(kind,)] for kind in kinds]
    return ", ".join([words[0], *(word.lower() for word in words[1:])])


def long_name(answer: MiddleAnswer, taken: Taken) -> str:
    """The owner with the reason in it: a name and a wing, or where the ball comes from."""
    seat = answer.player(taken.owner)
    if seat is not None and answer.hitter_side is seat.side and taken.kind is BallKind.DINK:
        return f"{seat.who.name}, {rule_name(Owner.CROSS)}"
    return who(answer, taken)


def who(answer: MiddleAnswer, taken: Taken) -> str:
    """The owner by name and wing."""
    seat = answer.player(taken.owner)
    return rule_name(taken.owner) if seat is None else _with_wing(seat)


def short_name(answer: MiddleAnswer, taken: Taken) -> str:
    seat = answer.player(taken.owner)
    return rule_name(taken.owner, is_short=True) if seat is None else seat.who.name


def _court(answer: MiddleAnswer, owner: Owner) -> str:
    """The owner without a name, for names that don't fit."""
    seat = answer.player(owner)
    return rule_name(owner, is_short=True) if seat is None else str(seat.side)


def rule_name(owner: Owner, *, is_short: bool = False) -> str:
    if owner is Owner.CROSS:
        return "cross" if is_short else "cross from the ball"
    return "straight" if is_short else "in front of the ball"


def _with_wing(seat: Seat) -> str:
    return f"{seat.who.name}'s forehand" if seat.wing is Wing.FOREHAND else seat.who.name


def _while_wide(answer: MiddleAnswer, wide: Seat) -> str:
    inside = answer.seat(wide.side.other)
    by_name = (
        f"Give {inside.who.name} all inside while {wide.who.name} is wide.",
        f"Give {inside.who.name} everything inside.",
    )
    return _fit_names(by_name, inside, f"Give the {inside.side} player everything inside.")


def moved(wide: Seat, right_ft: float) -> str:
    """How far being pulled wide moves the line between us, as a reason."""
    side = Side.RIGHT if right_ft > 0 else Side.LEFT
    line = f"your middle moves {feet(right_ft)} {side}"
    return short((f"{wide.who.name} wide: {line}", f"{line[:1].upper()}{line[1:]}"))


def rather(answer: MiddleAnswer, taken: Taken) -> str:
    """Whom we would name instead of whom they agreed on, as a reason: not in the middle of play."""
    ours = replace(taken, agreed=None)
    owners = who(answer, ours), short_name(answer, ours), _court(answer, ours.owner)
    return short(f"In a break: rather {owner} for {KIND[taken.kind]}s" for owner in owners)


def feet(distance_ft: float) -> str:
    """A distance to the half foot: nobody sees less on a court."""
    return f"{round(2 * abs(distance_ft)) / 2:g} ft"


def _one_ball(answer: MiddleAnswer, taken: Taken) -> str:
    kind = KIND[taken.kind]
    seat = answer.player(taken.owner)
    if seat is None:
        return f"Take the {kind} if you're {rule_name(taken.owner)}."
    by_name = (
        f"Let {_with_wing(seat)} take the {kind}.",
        f"Let {seat.who.name} take the {kind}.",
    )
    return _fit_names(by_name, seat, f"Let the {seat.side} player take the {kind}.")


def _fit_names(by_name: tuple[str, ...], seat: Seat, by_court: str) -> str:
    return fit((*by_name, by_court)) if seat.named else by_court


def _every_ball(answer: MiddleAnswer, owner: Owner) -> str:
    seat = answer.player(owner)
    if seat is None:
        return _by_hitter(answer, owner)
    by_name = (
        f"Give {_with_wing(seat)} the middle, slow and fast.",
        f"Give {seat.who.name} the middle.",
    )
    return _fit_names(by_name, seat, f"Give the {seat.side} player the middle, slow and fast.")


def _by_hitter(answer: MiddleAnswer, owner: Owner) -> str:
    """A rule for every ball: by whom the hitter stands opposite, where both of ours are known."""
    rule = f"Take it if you're {rule_name(owner)}, slow or fast."
    if not all(seat.named for seat in answer.seats):
        return rule
    one, other = (seat.who.name for seat in answer.seats)
    takes = (other, one) if owner is Owner.CROSS else (one, other)
    return fit(
        (
            f"From opposite {one}: {takes[0]}. From opposite {other}: {takes[1]}.",
            f"Opposite {one}: {takes[0]}. Opposite {other}: {takes[1]}.",
            rule,
        )
    )


def zone_label(answer: MiddleAnswer, kind: BallKind, word: str) -> str:
    """Who takes these balls, so that it makes sense without the call."""
    return f"{word}: {zone_name(answer, answer.of(kind))}"


def zone_name(answer: MiddleAnswer, taken: Taken) -> str:
    """The owner on a picture: a name, or the player a rule means."""
    seat = answer.player(taken.owner)
    if seat is not None:
        return seat.who.name
    return "diagonal one" if taken.owner is Owner.CROSS else "one in front"


assert max(len(IF_WIDE), len(IN_WIND)) <= CALL_LIMIT
