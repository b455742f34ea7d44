"""A plan as it was given, and the last meeting with the same two: what a rematch starts from."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.vocabulary import EvidenceId, PlayerId


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenLine:
    """One line as it was said: `do`, why, and the notes and rallies that it stood on.

    `phase` is the part of the rally, `source` as the reply named it, `per_100` its worth then;
    `who` is the one of ours it spoke to, `we_serve` the rallies it is for, None for both; `option`
    is what it chose, as choices are logged.
    """

    do: str
    because: str = ""
    cue: str = ""
    phase: str = ""
    source: str = ""
    evidence: tuple[EvidenceId, ...] = ()
    per_100: float = 0.0
    we_serve: bool | None = None
    who: PlayerId | None = None
    option: str = ""

    @property
    def text(self) -> str:
        """What to do, and why."""
        return f"{self.do}: {self.because}" if self.because else self.do


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """How often a line of the plan was played in the meeting, and how many of those rallies won."""

    do: str
    won: int
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LastMeeting:
    """The last finished match against these two: its day, how it ended, and the plan for it.

    `won` is None where nobody told how it ended; `games` are as written, ours first. `tried` is
    what the log tells of the plan's lines.
    """

    day: int
    won: bool | None = None
    games: str = ""
    plan: tuple[GivenLine, ...] = ()
    tried: tuple[Tried, ...] = ()
