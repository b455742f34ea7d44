"""What the engine is told: two pairs, the ball, the score, the day. None means not known."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from enum import StrEnum
from types import MappingProxyType

from knowledge.ball_facts import NOTHING_SAID, BallFacts
from knowledge.chances import RallyTally, RingTally
from knowledge.dataclass import dataclass
from knowledge.evidence import Profile
from knowledge.game import GameFormat, GameState, MatchState, PlayedRally
from knowledge.given_plan import GivenLine, LastMeeting
from knowledge.trait_asked import TraitAsked
from knowledge.vocabulary import (
    AgreementKey,
    BallKind,
    BallQuality,
    Hand,
    Level,
    PlayerId,
    Side,
    Topic,
    Trait,
    Value,
    Wing,
)


class Familiarity(StrEnum):
    NEW = "new"
    REGULAR = "regular"


class Wind(StrEnum):
    BEHIND_US = "behind_us"
    AGAINST_US = "against_us"
    ACROSS = "across"
    SOME = "some"
    NONE = "none"


class TossChoice(StrEnum):
    """What the side that chose first took; the other side chooses among what is left."""

    SERVE = "serve"
    RECEIVE = "receive"
    END = "end"


class Formation(StrEnum):
    """How a pair lines up: by the score, stacked (always, or in one half), or by a signal.

    With a side swap each plays the other court than the score says, and nobody waits outside.
    """

    STRAIGHT = "straight"
    STACK_ALWAYS = "stack_always"
    STACK_ON_SERVE = "stack_on_serve"
    ON_SIGNAL = "on_signal"
    STACK_ON_RETURN = "stack_on_return"
    SIDE_SWAP = "side_swap"


@dataclass(frozen=True, slots=True, kw_only=True)
class OnCourt:
    """A player of one pair with the side they really play in this match, if known."""

    profile: Profile
    side: Side | None = None

    @property
    def player(self) -> PlayerId:
        return self.profile.player

    @property
    def name(self) -> str:
        return self.profile.name

    @property
    def hand(self) -> Hand | None:
        """Playing hand if known; an ambidextrous player counts as not known for wings."""
        value = self.profile.fact(Trait.HAND)
        return None if value is None else Hand(value.value)

    def middle_wing(self) -> Wing | None:
        """The wing on the middle-of-court side, from hand and side; None unless both are known."""
        if self.side is None or self.hand not in (Hand.LEFT, Hand.RIGHT):
            return None
        forehand_is_right = self.hand is Hand.RIGHT
        middle_is_right = self.side is Side.LEFT
        return Wing.FOREHAND if forehand_is_right == middle_is_right else Wing.BACKHAND


@dataclass(frozen=True, slots=True, kw_only=True)
class Agreement:
    """What our pair settled: the words, and a value where it was understood."""

    key: AgreementKey
    value: str
    words: str
    day: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptWords:
    """A note on a player in words that no trait covers, and the ordinal of its day.

    `trait`: what was read from it, where that is asked after and its words say more: how often,
    or when.
    """

    player: PlayerId
    words: str
    day: int
    trait: Trait | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class JammedHip:
    """The hip, as its owner has it, at which a note says that somebody jams; or the shoulder."""

    player: PlayerId
    side: Side
    is_shoulder: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the question itself settles, beyond its topic.

    `hitter_side` is the opponents' court the ball comes from, `striker_side` ours that it is
    played from, each as that pair sees it. `rates` are the user's own (chance we win a rally we
    serve, chance we win one they serve), said now or earlier in this match; either may be None.
    `score_said` tells that `Situation.game` comes from the question itself. `lost_in_a_row`
    counts rallies, `timeouts_left` our time-outs as said; `games` are won so far, ours first.
    `tally` counts rallies of this match as said ("3 of 10 on serve"). `sun` is said of any;
    `background` is anything else behind an end that hides the ball. `officiated`: there is a
    referee; `rule` names the rule of the rulebook that is meant, where a button said so; `before`
    are the words of the question that these go on from ("and if it bounced first?"). `facts`
    are what is said of the one ball, `trait` what a question about somebody asks after.
    """

    about: tuple[PlayerId, ...] = ()
    wing: Wing | None = None
    ball: BallQuality | None = None
    ball_kind: BallKind | None = None
    hitter_side: Side | None = None
    striker_side: Side | None = None
    pulled_wide: PlayerId | None = None
    we_serve: bool | None = None
    words: str = ""
    rates: tuple[float | None, float | None] | None = None
    score_said: bool = False
    lost_in_a_row: int | None = None
    timeouts_left: int | None = None
    tired: bool | None = None
    hot: bool | None = None
    has_change: bool | None = None
    toss_won: bool | None = None
    they_chose: TossChoice | None = None
    background: bool | None = None
    sun: bool | None = None
    games: tuple[int, int] | None = None
    tally: RallyTally | None = None
    officiated: bool | None = None
    rule: str | None = None
    before: str = ""
    facts: BallFacts = NOTHING_SAID
    trait: TraitAsked | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """Everything one answer may use.

    `ours` and `theirs` hold nobody, one or two players. `asker` is whichever of ours is
    writing, if known; `striker` is whoever of ours plays the ball. `format` is the question's own
    or the running match's; `match` stands at `game`, with the games and time-outs that are known;
    `played` is what this match's log holds, oldest first; `rallies_today` counts it,
    `earlier_rallies` other meetings, serving and receiving, `other_rallies` those of our pair
    against other pairs. `base_rates` are the book's own
    (serving, receiving), for a pair that nothing is known of. `today` is the ordinal of the day,
    so that a report can say how old a note is. `recent_aims` are the ids of the options that we
    chose against this pair, oldest first, where a topic mixes; `aims_won` tells of each whether
    that rally was ours, None where it is not known. `given_plan` is the plan last given against
    these two, `last_meeting` the finished match before, where a plan or a cue is asked for.
    `kept_words` are notes kept as words on those a report is about, newest first of each;
    `jammed_hips` the hip that a note on one of them names.
    """

    topic: Topic
    asked: Asked = Asked()
    ours: tuple[OnCourt, ...] = ()
    theirs: tuple[OnCourt, ...] = ()
    asker: PlayerId | None = None
    striker: PlayerId | None = None
    game: GameState | None = None
    format: GameFormat | None = None
    match: MatchState | None = None
    played: tuple[PlayedRally, ...] = ()
    rallies_today: RallyTally | None = None
    earlier_rallies: tuple[RallyTally, ...] = ()
    other_rallies: tuple[RingTally, ...] = ()
    base_rates: tuple[float | None, float | None] | None = None
    formation: Formation | None = None
    their_formation: Formation | None = None
    familiarity: Familiarity | None = None
    agreements: Mapping[AgreementKey, Agreement] = field(
        default_factory=lambda: MappingProxyType({})
    )
    level: Level | None = None
    mixed: bool | None = None
    wind: Wind | None = None
    today: int | None = None
    preferences: Mapping[str, Value] = field(default_factory=lambda: MappingProxyType({}))
    recent_aims: Mapping[Topic, tuple[str, ...]] = field(
        default_factory=lambda: MappingProxyType({})
    )
    aims_won: Mapping[Topic, tuple[bool | None, ...]] = field(
        default_factory=lambda: MappingProxyType({})
    )
    given_plan: tuple[GivenLine, ...] = ()
    last_meeting: LastMeeting | None = None
    kept_words: tuple[KeptWords, ...] = ()
    jammed_hips: tuple[JammedHip, ...] = ()

    @property
    def tallies(self) -> tuple[RallyTally, ...]:
        """Rallies behind our rally chances: earlier meetings, and this match as said or logged."""
        today = self.asked.tally or self.rallies_today
        return self.earlier_rallies if today is None else (*self.earlier_rallies, today)

    def find(self, player: PlayerId) -> OnCourt | None:
        """The player on court by id, ours or theirs; None when not in this match."""
        for one in self.ours + self.theirs:
            if one.player == player:
                return one
        return None
