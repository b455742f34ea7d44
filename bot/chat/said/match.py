"""Matches told of: announced, moved, finished, how they are played, and pools of them."""

from __future__ import annotations

from datetime import time
from enum import StrEnum

from bot.chat.format_said import SaidFormat
from bot.chat.said.mention import Mention
from bot.chat.said.score import SaidScore
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat
from knowledge.vocabulary import Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultSaid:
    """Finished games: "won 11-8 9-11 11-6"; our points first.

    `won` is None where the games are shared. `tally` is a match told in games alone ("lost 2-1"),
    ours first; without it and without games somebody did not play on ("no-show"). `running` is
    the score of the game after them, where that is told as well. `may_ask` as of a score;
    `mentions` are the names beside it. `corrects`: it is said instead of a result told before.
    `whose_open`: told as one game each, though by their points one side won both. `whole`: its one
    game is told as the whole match. `turned`: the one told before was the other side's.
    """

    text: str
    games: tuple[tuple[int, int], ...] = ()
    won: bool | None = None
    tally: tuple[int, int] | None = None
    running: SaidScore | None = None
    may_ask: tuple[Topic, ...] = ()
    mentions: tuple[Mention, ...] = ()
    corrects: bool = False
    whose_open: bool = False
    whole: bool = False
    turned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchSaid:
    """An announcement of the next match; `we_serve` is who serves first in it, where told.

    `then` is a note on the pair told behind it, read once it is known who they are.
    """

    text: str
    mentions: tuple[Mention, ...]
    at: time | None = None
    court: str | None = None
    format: GameFormat | None = None
    format_fault: str | None = None
    we_serve: bool | None = None
    then: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchMoved:
    """An announced match that begins later, earlier or elsewhere: "moved to 11:20", "court 5".

    `by_minutes` is negative where it was brought forward.
    """

    text: str
    mentions: tuple[Mention, ...] = ()
    at: time | None = None
    by_minutes: int | None = None
    court: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class FormatTold:
    """How the announced match is played, told alone: "rally scoring to 21".

    `of_game`: told of one game of it, "third to 15, they serve"; `we_serve` who serves that first.
    `of_pool`: told of a pool and its matches, before whom they are against. `asks`: nothing is
    told, but asked: "third to 11?".
    """

    text: str
    format: SaidFormat
    of_game: bool = False
    asks: bool = False
    of_pool: bool = False
    we_serve: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PoolTeam:
    """A pair of a pool as listed: its names, and when and where we meet it."""

    mentions: tuple[Mention, ...]
    at: time | None = None
    court: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PoolSaid:
    """A pool in one message: the pairs in order, how it is played, and what was not read of it."""

    text: str
    teams: tuple[PoolTeam, ...]
    format: SaidFormat | None = None
    unread: tuple[str, ...] = ()


class PoolVerb(StrEnum):
    """What can be asked of a pool."""

    NEXT = "next"
    STANDING = "standing"
    THROUGH = "through"


@dataclass(frozen=True, slots=True, kw_only=True)
class PoolAsked:
    """ "Next" and "pool", while a pool is on."""

    text: str
    verb: PoolVerb
