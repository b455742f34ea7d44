"""The thirds there are to choose from: each shot that is ours, at each place it may go."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.effects import Option
from knowledge.planning.weighing import is_weak, option
from knowledge.situation import OnCourt
from knowledge.tactics.third_said import ThirdSaid
from knowledge.vocabulary import Trait, Wing

DROP = "drop"
DRIVE = "drive"
LOB = "lob"
MIDDLE = "middle"
LATE = "late"
LINE = "line"

SHOT_TRAITS = {DROP: Trait.THIRD_SHOT_DROP, DRIVE: Trait.FOREHAND_DRIVE}
"""The shots before the rally, and what our own profile calls them."""


def trait_of_shot(shot: str, said: ThirdSaid) -> Trait:
    """What our own profile calls this shot off this wing."""
    if shot == LOB:
        return Trait.LOB
    if shot == DRIVE and said.wing is Wing.BACKHAND:
        return Trait.BACKHAND_DRIVE
    return SHOT_TRAITS[shot]


def owns(hitter: OnCourt | None, shot: str, said: ThirdSaid) -> bool:
    """Whether the hitter's own profile does not mark the shot as a weakness."""
    return hitter is None or not is_weak(hitter, trait_of_shot(shot, said))


def shots_of(hitter: OnCourt | None, said: ThirdSaid) -> list[str]:
    """The shots that this hitter owns; a lob is a ball's choice, not a plan's."""
    shots = (DROP, DRIVE, LOB) if said.is_told else (DROP, DRIVE)
    return [shot for shot in shots if owns(hitter, shot, said)]


def at(shot: str, one: OnCourt) -> str:
    return f"{shot}:{one.player}"


def options_of(shots: Sequence[str], theirs: Sequence[OnCourt], said: ThirdSaid) -> list[Option]:
    """Each shot at each place: the middle, either of them, the late one, the line."""
    found: list[Option] = []
    for shot in shots:
        if shot == LOB:
            found.append(option(f"{LOB}:{MIDDLE}", "lob it deep"))
            found += [option(at(LOB, one), f"lob over {one.name}") for one in theirs]
            continue
        found.append(option(f"{shot}:{MIDDLE}", f"{shot} to the middle"))
        found += [option(at(shot, one), f"{shot} at {one.name}") for one in theirs]
        if said.moving and said.late is None:
            found.append(option(f"{shot}:{LATE}", f"{shot} at the late one"))
        if said.line_open or said.asks_line:
            found.append(option(f"{shot}:{LINE}", f"{shot} down the line"))
    return found
