"""A name in a message, and how sure it is who is meant."""

from __future__ import annotations

from enum import StrEnum

from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId


class Certainty(StrEnum):
    """How sure a name is: one player; several that must be asked about; nobody on the roster."""

    SURE = "sure"
    AMBIGUOUS = "ambiguous"
    NOBODY = "nobody"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mention:
    """A name in a message: the words typed, where they stand, and who is meant.

    `players` holds exactly one id when SURE, the candidates when AMBIGUOUS, and the nearest
    few (perhaps none) when NOBODY. `pronoun` marks "they", "him", "my partner". `rather` holds
    whom the name fits too where the likeliest was taken, `supposed` who is likely meant although
    it is nobody's name: one, or several to ask about.
    """

    typed: str
    span: tuple[int, int]
    certainty: Certainty
    players: tuple[PlayerId, ...] = ()
    pronoun: bool = False
    rather: tuple[PlayerId, ...] = ()
    supposed: tuple[PlayerId, ...] = ()
