"""Questions: what is asked, what it settles beside its topic, and the last answer retold."""

from __future__ import annotations

from enum import StrEnum

from bot.chat.format_said import SaidFormat
from bot.chat.said.mention import Mention
from bot.chat.said.score import SaidNeeds, SaidRates, SaidScore
from knowledge.ball_facts import NOTHING_SAID, BallFacts
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat
from knowledge.situation import TossChoice, Wind
from knowledge.trait_asked import TraitAsked
from knowledge.vocabulary import BallKind, BallQuality, Hand, PlayerId, Side, Topic, Wing


class OneOfUs(StrEnum):
    """One of our pair as who writes calls them: "me", "my partner"."""

    ASKER = "asker"
    PARTNER = "partner"


@dataclass(frozen=True, slots=True, kw_only=True)
class OurPlace:
    """One of us and the side that they play, as said or supposed: "marguerite left"."""

    who: PlayerId | OneOfUs
    side: Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Slots:
    """What a message settles beside its topic; None is not said.

    `asker` is who says of themselves to be writing ("I'm Tom, ...").
    `games` are won, ours first. `lost_in_a_row` is 0 where the run is ours. `toss_won` tells
    that the first choice is ours. `background`: something behind an end hides the ball.
    `pulled_wide` is who of ours is off to the side. `facts` are of the one ball.
    """

    mentions: tuple[Mention, ...] = ()
    asker: PlayerId | None = None
    score: SaidScore | None = None
    serving: bool | None = None
    hand: Hand | None = None
    wing: Wing | None = None
    ball: BallQuality | None = None
    ball_kind: BallKind | None = None
    side: Side | None = None
    format_said: SaidFormat | None = None
    wind: Wind | None = None
    sun: bool | None = None
    background: bool | None = None
    rates: SaidRates | None = None
    needs: SaidNeeds | None = None
    games: tuple[int, int] | None = None
    lost_in_a_row: int | None = None
    timeouts_left: int | None = None
    tired: bool | None = None
    hot: bool | None = None
    has_change: bool | None = None
    toss_won: bool | None = None
    they_chose: TossChoice | None = None
    pulled_wide: PlayerId | OneOfUs | None = None
    our_place: OurPlace | None = None
    facts: BallFacts = NOTHING_SAID

    @property
    def format(self) -> GameFormat | None:
        """The common format with what is said of it; None if nothing of it is."""
        return None if self.format_said is None else self.format_said.playable


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """A question: its topic, how sure, and the next topics to offer beside the answer.

    `changes`: it leans on the question before ("and on the backhand?"), and what it leaves
    open stays as that one had it. `may_note`: it states something of somebody, and may be a note.
    `trait` is what a question about somebody asks after.
    `may_count`: it tells before it asks who won a rally, or it may be a game (won by us).
    """

    text: str
    topic: Topic
    confidence: float
    offers: tuple[Topic, ...] = ()
    slots: Slots = Slots()
    changes: bool = False
    may_note: bool = False
    may_count: bool | None = None
    trait: TraitAsked | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeoutsAsked:
    """How many time-outs either side has left: "timeouts left?"."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WhySaid:
    """The reasons of the last answer, in full."""

    text: str


class Retelling(StrEnum):
    """How the last answer is to be told again."""

    MORE = "more"
    SHORTER = "shorter"
    CALL = "call"
    AGAIN = "again"
    MIX = "mix"
    PICK = "pick"
    TO_PARTNER = "to_partner"
    SURE = "sure"
    FIGURE = "figure"
    WITHOUT = "without"
    FLIPS = "flips"
    FROM = "from"


@dataclass(frozen=True, slots=True, kw_only=True)
class RetellSaid:
    """The last answer, otherwise told: "tell me more", "shorter", "exact mix", "how sure".

    `TO_PARTNER`: as a line to say to one's partner. `WITHOUT`: as it would be without a note.
    `FLIPS`: what would change it. `FROM`: whether it is of their notes or a default.
    """

    text: str
    how: Retelling


class ListedVerb(StrEnum):
    """What is asked of a list that was shown, or of the review."""

    MORE = "more"
    LEAKS = "leaks"
    FOR_STUDENT = "for_student"
    DRILL = "drill"


@dataclass(frozen=True, slots=True, kw_only=True)
class ListAsked:
    """ "More" after a list, "leaks", "review for a student", and a drill `about` a leak."""

    text: str
    verb: ListedVerb
    about: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """We cannot tell what is asked: the two or three likeliest topics, to ask with buttons.

    `may_note`: nothing may be asked at all, and it may be a note.
    """

    text: str
    offers: tuple[Topic, ...]
    slots: Slots = Slots()
    may_note: bool = False
