"""What the engine says back: the call first, then why, with numbers and their sources."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from enum import StrEnum
from itertools import chain
from types import MappingProxyType

from knowledge.court_picture import CourtPicture
from knowledge.dataclass import dataclass
from knowledge.side_view import SideView
from knowledge.sources import Source
from knowledge.trait_bars import TraitBars
from knowledge.vocabulary import EvidenceId, PlayerId, Topic

CHANGE_UP = "Change:"
"""How a line with the change-up begins: half of a call that may be guessed."""

MAX_REASONS = 3
"""Reasons under a call: more would not be read."""

CALL_LIMIT = 60
"""Characters of a call line, so that a phone's lock screen shows it whole."""


class Confidence(StrEnum):
    """How sure the ranking is that the first option is best (engine.CONFIDENCE_BANDS)."""

    CLEAR = "clear"
    LEAN = "lean"
    TOSS_UP = "toss-up"
    GENERAL_RULE = "general rule"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """One short line and where it comes from."""

    text: str
    source: Source


class MatchFact(StrEnum):
    """What a button may settle about the rally or the match, and the values it takes.

    A button may also settle a trait of a player: then the fact is the trait's own name
    (vocabulary.Trait), the value a vocabulary.Value, and `about` names the player.
    """

    BALL = "ball"  # a BallQuality
    BALL_KIND = "ball_kind"  # a BallKind
    WING = "wing"  # a Wing
    WE_SERVE = "we_serve"  # yes or no
    SIDE = "side"  # a Side; `about` says whose
    STRIKER = "striker"  # a Side: from which of our courts the ball is played
    PULLED_WIDE = "pulled_wide"  # yes; `about` says who
    FAMILIARITY = "familiarity"  # a Familiarity
    FORMATION = "formation"  # a Formation
    ABOUT = "about"  # `about` says whom the question is about
    HAS_CHANGE = "has_change"  # yes or no: we know what to change
    TIRED = "tired"  # yes or no
    WIND = "wind"  # a Wind
    SUN = "sun"  # yes or no
    FORMAT = "format"  # a short code of formats: "11", "15", "s11", "r21"
    TIMEOUTS_LEFT = "timeouts_left"  # a count
    LOST_IN_A_ROW = "lost_in_a_row"  # a count of rallies
    OFFICIATED = "officiated"  # yes or no: there is a referee
    RULE = "rule"  # the name of a rule of knowledge.rulebook
    SYMPTOM = "symptom"  # the id of a symptom (tactics.symptoms)
    WEATHER = "weather"  # the id of an entry on weather or bodies (tactics.weather_entries)
    HEIGHT = "met_at"  # a HeightName: how high we meet the ball (knowledge.ball_places)
    PLACE = "place"  # a PlaceName: how far from the net that is
    BOUNCED = "bounced"  # yes or no: it bounced first
    FOOTING = "footing"  # a Footing (knowledge.ball_facts)
    THEIRS = "theirs"  # a Depth: where they stand
    OURS = "ours"  # a Depth: where we stand
    SPIN = "spin"  # a Spin
    PACE = "pace"  # how fast it comes, in whole miles an hour
    WIND_SPEED = "wind_speed"  # in whole miles an hour
    PAST_SIDELINE = "past_sideline"  # yes or no: it is wide of the court
    PARTNER_SET = "partner_set"  # yes or no: our other player is ready


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """A follow-up the reply offers as a button: its label and what it settles.

    `fact` is a MatchFact or a trait's name and `value` what pressing it says of it; without
    a fact the button asks the question of `topic` (about `about`, if set).
    """

    label: str
    topic: Topic
    fact: str | None = None
    value: str | None = None
    about: PlayerId | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveMark:
    """A heavy rally: the place in `points` that it led to, its label, and who won it.

    `otherwise` is our win chance, 0 to 1, had it gone the other way.
    """

    point: int
    label: str
    won_by_us: bool
    otherwise: float


@dataclass(frozen=True, slots=True, kw_only=True)
class GameBreak:
    """A game's end: the place in `points` of its last rally, its label, and who won it."""

    point: int
    label: str
    won_by_us: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ChanceCurve:
    """Our win chance, 0 to 1, at the start and after each rally; `alt` is the same in words.

    `now` says the last of it in words. Where the score was told instead of played, a point
    stands for that too. ValueError for a chance outside 0 to 1, or a mark or a game's end
    that stands at no point.
    """

    title: str
    alt: str
    points: tuple[float, ...] = ()
    marks: tuple[CurveMark, ...] = ()
    games: tuple[GameBreak, ...] = ()
    now: str = ""

    def __post_init__(self) -> None:
        for chance in (*self.points, *(mark.otherwise for mark in self.marks)):
            if not 0 <= chance <= 1:
                raise ValueError(f"a chance lies between 0 and 1, not at {chance}")
        stands = [*(mark.point for mark in self.marks), *(game.point for game in self.games)]
        for place in stands:
            if not 0 <= place < len(self.points):
                raise ValueError(f"no point {place} among {len(self.points)}")


@dataclass(frozen=True, slots=True, kw_only=True)
class MixShare:
    """One option of a mix: its id, its name in a sentence, the line that calls for it, its share.

    `call` is imperative, of at most CALL_LIMIT characters ("Serve wide."). `guess` is how often
    they expect it at best.
    """

    option: str
    label: str
    call: str
    share: float
    guess: float = 0.0

    def __post_init__(self) -> None:
        if len(self.call) > CALL_LIMIT:
            raise ValueError(f"call is {len(self.call)} characters, over {CALL_LIMIT}: {self.call}")


@dataclass(frozen=True, slots=True, kw_only=True)
class AdvisedMix:
    """How to vary a choice that they may guess; knowledge.mixing.advised makes one.

    `shares` holds every option: the default first, then the others by their shares, of which the
    first is the change-up, if it has one. `trigger` completes "when" ("he leans in"); `how_often`
    says how often the change-up is right. All figures are against the best reply (mixing.solution):
    `value` is the chance that we can be sure of, `worth_points` what varying gains over always
    playing the best one, if a guessed one costs about `cost_points`, `of_ten_loss_points` what
    these shares, rounded to counts of ten, give away of the value, and `pattern_loss_points` what
    our recent choices do. `regularity` says how those look: nothing of either below
    mixing.MIN_LOGGED_AIMS.
    """

    shares: tuple[MixShare, ...]
    trigger: str
    how_often: str
    value: float
    worth_points: float
    cost_points: float
    of_ten_loss_points: float = 0.0
    logged_aims: int = 0
    pattern_loss_points: float | None = None
    regularity: tuple[str, ...] = ()

    @property
    def default(self) -> MixShare:
        return self.shares[0]

    @property
    def change_up(self) -> MixShare | None:
        """None where the default is right on every ball."""
        others = [one for one in self.shares[1:] if one.share > 0]
        return others[0] if others else None


Picture = CourtPicture | ChanceCurve | SideView | TraitBars
"""Whatever can be drawn and sent beside the words."""


SEVERAL_BELOW = 0.4
"""Chance that a call is the best below which it is said that others come close. Our choice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Advice:
    """An answer, before it is put into a channel's form.

    `call` is one imperative line of at most CALL_LIMIT characters. `reasons` are at most
    three. `now` is the one thing to do at once, said in a match too. `lines` replaces reasons where
    the answer is a list by nature (a report, a plan). `numbers` holds every computed figure by
    name at full precision; `grounds` are the notes and rallies behind them, one tuple per estimate,
    beside those that the reasons' sources name; `others` says what others' rallies add to them.
    `mix` is how to vary, where they may guess.
    """

    topic: Topic
    call: str
    reasons: tuple[Reason, ...] = ()
    lines: tuple[Reason, ...] = ()
    now: str | None = None
    number: str | None = None
    unless: str | None = None
    assumed: str | None = None
    caution: str | None = None
    confidence: Confidence = Confidence.GENERAL_RULE
    numbers: Mapping[str, float] = field(default_factory=lambda: MappingProxyType({}))
    choices: tuple[Choice, ...] = ()
    picture: Picture | None = None
    more: tuple[str, ...] = ()
    mix: AdvisedMix | None = None
    grounds: tuple[tuple[EvidenceId, ...], ...] = field(default=(), repr=False)
    others: tuple[str, ...] = ()

    @property
    def is_one_of_several(self) -> bool:
        """Whether notes lean to the call, and yet others together are likelier the best.

        Pages that are sure of a shot and not of its place lean so.
        """
        best = self.numbers.get("p_best")
        leans = self.confidence in (Confidence.CLEAR, Confidence.LEAN)
        return leans and best is not None and best < SEVERAL_BELOW

    @property
    def named_evidence(self) -> tuple[EvidenceId, ...]:
        """The notes and rallies that the reasons and lines name as their source."""
        return tuple(chain(*(each.source.evidence for each in (*self.reasons, *self.lines))))

    @property
    def evidence(self) -> tuple[EvidenceId, ...]:
        """All notes and rallies behind the answer, each once: first what the reasons name."""
        return tuple(dict.fromkeys(chain(self.named_evidence, *self.grounds)))

    def __post_init__(self) -> None:
        if len(self.call) > CALL_LIMIT:
            raise ValueError(f"call is {len(self.call)} characters, over {CALL_LIMIT}: {self.call}")
        if len(self.reasons) > MAX_REASONS:
            raise ValueError(f"{len(self.reasons)} reasons, at most {MAX_REASONS}")
