"""Where our pair agreed to stand: sides and formation that hold until somebody says else."""

from __future__ import annotations

from dataclasses import replace

from knowledge.situation import Formation, Situation
from knowledge.tactics.stack_said import agreed_left, formation_agreed
from knowledge.vocabulary import AgreementKey, Side


def with_agreed_places(situation: Situation, *, sides_said: bool = False) -> Situation:
    """The same with our sides and formation as agreed; what was said of this match stands.

    `sides_said`: our sides are those really played now, and not only noted somewhere.
    """
    seated = situation if sides_said else _seated(situation)
    if seated.formation is not None:
        return seated
    return replace(seated, formation=agreed_formation(seated))


def agreed_formation(situation: Situation) -> Formation | None:
    """The formation that our pair agreed; None without an agreement that names one."""
    agreed = situation.agreements.get(AgreementKey.STACK)
    return None if agreed is None else formation_agreed(agreed)


def is_as_agreed(situation: Situation) -> bool:
    """Whether we line up as agreed, and not as somebody said of this match."""
    agreed = agreed_formation(situation)
    return agreed is not None and agreed is situation.formation


def _seated(situation: Situation) -> Situation:
    left = agreed_left(situation)
    if left is None:
        return situation
    ours = tuple(
        replace(one, side=Side.LEFT if one.player == left else Side.RIGHT) for one in situation.ours
    )
    return replace(situation, ours=ours)
