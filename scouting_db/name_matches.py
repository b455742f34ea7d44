"""What a look-up of a name finds: one player, several alike, or nobody."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from scouting_db.values import PlayerRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Exactly one player, for sure."""

    player: PlayerRow


@dataclass(frozen=True, slots=True, kw_only=True)
class Alike:
    """Several players; it must be asked which.

    `likeliest` goes by exactly what was typed, while the others only sound so (Lindqvist beside
    Lindquist) or bear it as the later part of a double surname (Brandt beside Nguyen-Brandt); or
    comes by far the nearest. A reply that names them in full may go ahead.
    """

    players: tuple[PlayerRow, ...]
    likeliest: PlayerRow | None = None
    is_clear: bool = False
    """Whether the likeliest is so whoever else was spoken of: by the full name, or by far."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Nobody:
    """Nobody on the roster; the nearest few, best first, perhaps none.

    `supposed` is who is likely meant all the same: one to go ahead with, saying so, or several to
    ask about. Not where something is made for good, such as a new player or a pair on court.
    """

    nearest: tuple[PlayerRow, ...] = ()
    supposed: tuple[PlayerRow, ...] = ()


Match = Found | Alike | Nobody


def likeliest_of(match: Match) -> PlayerRow | None:
    """Whoever a reply may go ahead with: the one found, or the likeliest of those alike."""
    match match:
        case Found(player=row):
            return row
        case Alike(likeliest=row):
            return row
        case Nobody():
            return None


def players_of(match: Match) -> tuple[PlayerRow, ...]:
    """Everybody who may be meant."""
    match match:
        case Found(player=row):
            return (row,)
        case Alike(players=rows):
            return rows
        case Nobody():
            return ()
