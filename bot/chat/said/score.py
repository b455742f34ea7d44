"""What is said of the running score: scores, rates, who serves and starts, remarks, time-outs."""

from __future__ import annotations

from enum import StrEnum

from bot.chat.said.mention import Mention
from bot.chat.said.rally import RallySaid
from knowledge.dataclass import dataclass
from knowledge.game import ScoreCall
from knowledge.vocabulary import Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidScore:
    """A score as said. `call` is as called by the serving side: theirs-first when they serve.

    `ours` and `theirs` are set where the text says whose number is whose.
    """

    call: ScoreCall | None = None
    ours: int | None = None
    theirs: int | None = None
    server: int | None = None
    we_serve: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidRates:
    """Our chances of a rally as the user puts them, 0 to 1; None is not said.

    `serving`: that we win one we serve; `receiving`: one they serve. What was counted so far
    ("3 of 10 on serve") is no chance but (won, played), in the counts. `fault` says what cannot
    be in what was said; the half that can be is kept. `holds`: told of this match, and not
    only supposed in a question.
    """

    serving: float | None = None
    receiving: float | None = None
    serving_count: tuple[int, int] | None = None
    receiving_count: tuple[int, int] | None = None
    fault: str | None = None
    holds: bool = True

    @property
    def says_nothing(self) -> bool:
        """Whether nothing of it can be counted with."""
        halves = (self.serving, self.receiving, self.serving_count, self.receiving_count)
        return halves == (None,) * len(halves)


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidNeeds:
    """Points that we and they still need, and the server's number if said."""

    ours: int
    theirs: int
    server: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreSaid:
    """A score message: an absolute score, or one rally's outcome in words.

    Exactly one of `score`, `won_by_us`, `side_out` and `all_at` is set, but beside a side-out
    `score` may say whose serve it now is, or the call it came at. `rally_ours` is whose a rally
    was that is told with a call, "7-8-2 they won that one", or with a side-out; `rally` is that
    rally where more is told of it than whose it was; `scored`: the score was reached by their
    points, "they got 1. 1-1-1". `served_by` is who serves it, by name.
    `leads`: told as a lead, so the game goes on. `may_ask` are topics to offer, as of a note.
    """

    text: str
    score: SaidScore | None = None
    leads: bool = False
    won_by_us: bool | None = None
    side_out: bool = False
    all_at: int | None = None
    rally_ours: bool | None = None
    rally: RallySaid | None = None
    scored: bool = False
    served_by: Mention | None = None
    may_ask: tuple[Topic, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class StarterSaid:
    """Who of a pair started this game on the right (or the left): "okafor started right"."""

    text: str
    mention: Mention
    is_right: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ServerSaid:
    """Who serves now, by name: "tom is serving"; `first`: who serves the game's first."""

    text: str
    mention: Mention
    first: bool = False


class ScoreRemark(StrEnum):
    """What is said of the running score without being one."""

    WHOSE_POINT = "whose_point"
    TURNED_ROUND = "turned_round"
    ONE_NUMBER = "one_number"
    NO_SCORE = "no_score"
    GAME_WITHOUT_POINTS = "game_without_points"
    SEVERAL_RALLIES = "several_rallies"
    RALLY_OR_MATCH = "rally_or_match"
    MATCH_OVER = "match_over"
    LET = "let"
    COUNTED_AS = "counted_as"
    SERVE_AFTER = "serve_after"


@dataclass(frozen=True, slots=True, kw_only=True)
class RemarkSaid:
    """ "Point" (whose?), "other way round", "make it 5" (`number`), "-3-4-1" (no score at all), "we
    won game one" (by what score? `number` where several are told), "2 more for us" (`number`, None
    where it is not said, and whether `ours`), "lost it then won one" (whose each was, `in_order`),
    "they won so easily" (a rally or the match?), "won it, no, it was a let" (nobody's), "is that
    our point" (as it was counted), "do they serve if we miss" (after a rally that is `ours`).
    "Other way round, we lost it" also says `ours`.
    """

    text: str
    remark: ScoreRemark
    number: int | None = None
    ours: bool | None = None
    in_order: tuple[bool, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeoutSaid:
    """A time-out that was taken: "they called a timeout"; `is_last`: they have none left now."""

    text: str
    ours: bool
    is_last: bool = False
