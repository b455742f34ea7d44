"""What a message turns out to be: one typed value per kind, for texts and taps alike."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import time
from enum import StrEnum

from bot.chat.format_said import SaidFormat
from knowledge.ball_facts import NOTHING_SAID, BallFacts
from knowledge.game import GameFormat, ScoreCall
from knowledge.situation import TossChoice, Wind
from knowledge.vocabulary import (
    AgreementKey,
    BallKind,
    BallQuality,
    Ending,
    Hand,
    PlayerId,
    Seen,
    Side,
    Stroke,
    Tag,
    Topic,
    Trait,
    Value,
    Wing,
)


class Kind(StrEnum):
    """The `kind` of the `--json` contract."""

    QUESTION = "question"
    NOTE = "note"
    SCORE = "score"
    MATCH = "match"
    RALLY = "rally"
    AGREEMENT = "agreement"
    UNDO = "undo"
    CORRECTION = "correction"
    BOOK = "book"
    UNCLEAR = "unclear"


class Certainty(StrEnum):
    """How sure a name is: one player; several that must be asked about; nobody on the roster."""

    SURE = "sure"
    AMBIGUOUS = "ambiguous"
    NOBODY = "nobody"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mention:
    """A name in a message: the words typed, where they stand, and who is meant.

    `players` holds exactly one id when SURE, the candidates when AMBIGUOUS, and the nearest
    few (perhaps none) when NOBODY. `pronoun` marks "they", "him", "my partner".
    """

    typed: str
    span: tuple[int, int]
    certainty: Certainty
    players: tuple[PlayerId, ...] = ()
    pronoun: bool = False


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


class OneOfUs(StrEnum):
    """One of our pair as who writes calls them: "me", "my partner"."""

    ASKER = "asker"
    PARTNER = "partner"


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
    """

    text: str
    topic: Topic
    confidence: float
    offers: tuple[Topic, ...] = ()
    slots: Slots = Slots()
    changes: bool = False
    may_note: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """One claim of a note about one player's trait, with the words that carry it."""

    player: PlayerId
    trait: Trait
    value: Value
    weight: float
    span: tuple[int, int]
    denied: bool = False
    tag: Tag | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteSaid:
    """A note: the whole text, the claims found, and the words that no claim covers.

    `offered` are claims only half understood: nothing is made of them unless they are asked for.
    `may_ask` are topics to offer where the words may ask for advice as well.
    """

    text: str
    mentions: tuple[Mention, ...]
    claims: tuple[Claim, ...] = ()
    kept: tuple[str, ...] = ()
    seen: Seen = Seen.LIVE
    about_body: bool = False
    offered: tuple[Claim, ...] = ()
    may_ask: tuple[Topic, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreSaid:
    """A score message: an absolute score, or one rally's outcome in words.

    Exactly one of `score`, `won_by_us`, `side_out` and `all_at` is set, but beside a side-out
    `score` may say whose serve it now is. `may_ask` are topics to offer, as of a note.
    """

    text: str
    score: SaidScore | None = None
    won_by_us: bool | None = None
    side_out: bool = False
    all_at: int | None = None
    may_ask: tuple[Topic, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultSaid:
    """Finished games: "won 11-8 9-11 11-6"; our points first.

    `won` is None where the games are shared. `tally` is a match told in games alone ("lost 2-1"),
    ours first; without it and without games somebody did not play on ("no-show"). `running` is
    the score of the game after them, where that is told as well. `may_ask` as of a score;
    `mentions` are the names beside it.
    """

    text: str
    games: tuple[tuple[int, int], ...] = ()
    won: bool | None = None
    tally: tuple[int, int] | None = None
    running: SaidScore | None = None
    may_ask: tuple[Topic, ...] = ()
    mentions: tuple[Mention, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchSaid:
    """An announcement of the next match; `we_serve` is who serves first in it, where told."""

    text: str
    mentions: tuple[Mention, ...]
    at: time | None = None
    court: str | None = None
    format: GameFormat | None = None
    format_fault: str | None = None
    we_serve: bool | None = None


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


class ReminderVerb(StrEnum):
    """What is to be done about reminders."""

    SET = "set"
    OFF = "off"
    LIST = "list"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReminderSaid:
    """Reminders spoken of: how long before (or at what time), off, or which there are.

    `always`: of every match from now on; `every`: of all those that wait.
    """

    text: str
    verb: ReminderVerb
    minutes: int | None = None
    at: time | None = None
    always: bool = False
    every: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ZoneSaid:
    """Where the book's clocks are; without a `place` it is asked which zone counts.

    `zone` is None for a place that nobody knows; `near` are zones like it.
    """

    text: str
    place: str = ""
    zone: str | None = None
    near: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FormatTold:
    """How the announced match is played, told alone: "rally scoring to 21"."""

    text: str
    format: SaidFormat


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeoutsAsked:
    """How many time-outs either side has left: "timeouts left?"."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldChoice:
    """What we chose in a rally: the topic, the option as advice weighs it, and at whom."""

    topic: Topic
    option: str
    against: PlayerId | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RallyDetails:
    """What is said of a rally beyond who won it; None is not said.

    `by` is who hit the winner or made the error, `by_us` only the side. `is_called`: forced or
    unforced was said in so many words. `is_deep` tells of the return, `forward` whether the
    third, hit by `third_by`, got its side to the line.
    """

    ending: Ending | None = None
    is_called: bool = False
    by: PlayerId | None = None
    by_us: bool | None = None
    stroke: Stroke | None = None
    wing: Wing | None = None
    choices: tuple[ToldChoice, ...] = ()
    is_deep: bool | None = None
    forward: bool | None = None
    third_by: PlayerId | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RallySaid:
    """One rally with what happened in it: who won, and the words.

    `corrects`: it stands in for the last one counted ("no, their rally"). `scored`: a point is
    told and not only a rally ("they scored"), and only the serving side's count in side-out.
    `says_whose`: whose it was is said in so many words, and does not only follow from how it
    ended. `strangers` are names of nobody in this match. `understood` counts the words read.
    """

    text: str
    won_by_us: bool
    mentions: tuple[Mention, ...] = ()
    corrects: bool = False
    scored: bool = False
    says_whose: bool = True
    details: RallyDetails = RallyDetails()
    strangers: tuple[Mention, ...] = ()
    understood: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class DetailSaid:
    """What is said of the last rally after it was counted: "it was my dink", "that was forced"."""

    text: str
    details: RallyDetails
    mentions: tuple[Mention, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class StarterSaid:
    """Who of a pair started this game on the right (or the left): "okafor started right"."""

    text: str
    mention: Mention
    is_right: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ServerSaid:
    """Who serves now, by name: "tom is serving"."""

    text: str
    mention: Mention


class ScoreRemark(StrEnum):
    """What is said of the running score without being one."""

    WHOSE_POINT = "whose_point"
    TURNED_ROUND = "turned_round"
    ONE_NUMBER = "one_number"
    NO_SCORE = "no_score"


@dataclass(frozen=True, slots=True, kw_only=True)
class RemarkSaid:
    """ "Point" (whose?), "other way round", "make it 5" (`number`), "-3-4-1" (no score at all)."""

    text: str
    remark: ScoreRemark
    number: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeoutSaid:
    """A time-out that was taken: "they called a timeout"."""

    text: str
    ours: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreementSaid:
    """Something our pair settles: "we agreed forehand takes the middle"."""

    text: str
    key: AgreementKey
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class UndoSaid:
    """Take back the last change, or put back what was taken back.

    `of_score`: a slip in the running match is meant ("oops"). `everything` was asked for.
    """

    text: str
    redo: bool = False
    of_score: bool = False
    everything: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class WhySaid:
    """The reasons of the last answer, in full."""

    text: str


class PlanAsk(StrEnum):
    """What of a plan is wanted: as given before, its second half, what is new, or a message."""

    AGAIN = "again"
    PLAN_B = "b"
    SINCE = "since"
    SHARE = "share"
    STUDENT = "student"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanSaid:
    """Something about a plan beyond asking for one; `mentions` are whom it is against, or for.

    `earlier`: the plan of the last meeting is meant. `change`: the change of theirs that plan B is
    for, as planning.shifts names it; empty for whichever is likeliest.
    """

    text: str
    what: PlanAsk
    mentions: tuple[Mention, ...] = ()
    earlier: bool = False
    change: str = ""


class Retelling(StrEnum):
    """How the last answer is to be told again."""

    MORE = "more"
    SHORTER = "shorter"
    AGAIN = "again"
    MIX = "mix"
    PICK = "pick"


@dataclass(frozen=True, slots=True, kw_only=True)
class RetellSaid:
    """The last answer, otherwise told: "tell me more", "shorter", "repeat that", "exact mix"."""

    text: str
    how: Retelling


@dataclass(frozen=True, slots=True, kw_only=True)
class CorrectionSaid:
    """A correction of what was last understood: "no, the other one", "scratch that, Hale".

    `denied` is who was not meant ("not Tom, Mira"); `mentions` who was.
    """

    text: str
    mentions: tuple[Mention, ...] = ()
    denied: tuple[Mention, ...] = ()


class BookVerb(StrEnum):
    """Book and chat management that can be asked for in words or by a command."""

    START = "start"
    HELP = "help"
    ADD_PLAYER = "add_player"
    PAIR = "pair"
    RENAME_PLAYER = "rename_player"
    ADD_NICKNAME = "add_nickname"
    SHOW_NOTES = "show_notes"
    WHO = "who"
    OUR_PAIR = "our_pair"
    MODE = "mode"
    LOG_ONLY = "log_only"
    EXPORT = "export"
    SHARE = "share"
    FORGET = "forget"
    FORGET_ME = "forget_me"
    JOIN = "join"
    MEMBERS = "members"
    REMOVE_MEMBER = "remove_member"
    LEAVE = "leave"
    BOOKS = "books"
    BIND = "bind"
    UNBIND = "unbind"
    PRIVACY = "privacy"
    SCORE = "score"
    NEXT = "next"
    WHEN = "when"
    REVIEW = "review"
    SCOUT = "scout"
    TAG_RALLIES = "tag_rallies"
    STOP_TAGGING = "stop_tagging"
    BASE_RATES = "base_rates"
    OWN_RATES = "own_rates"


@dataclass(frozen=True, slots=True, kw_only=True)
class BookSaid:
    """Book management: the verb and its words."""

    text: str
    verb: BookVerb
    words: str = ""
    mentions: tuple[Mention, ...] = ()


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


@dataclass(frozen=True, slots=True, kw_only=True)
class PoolAsked:
    """ "Next" and "pool", while a pool is on."""

    text: str
    verb: PoolVerb


@dataclass(frozen=True, slots=True, kw_only=True)
class VideoLine:
    """A line typed while watching a video: the time in it, and the words; None without a time.

    `call` is the score typed before the words, as called: serving side, other side, server.
    """

    at_s: int | None
    words: str
    call: tuple[int, ...] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class VideoSaid:
    """Lines of rallies watched on video, each with its time; `mentions` of the line above them."""

    text: str
    lines: tuple[VideoLine, ...]
    mentions: tuple[Mention, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CoachSaid:
    """Whom "we" means from now on: one of several pairs of the book, and perhaps against whom.

    `asks` is what is asked for that pair, in the words left; empty for nothing.
    """

    text: str
    ours: tuple[Mention, ...]
    theirs: tuple[Mention, ...] = ()
    asks: str = ""


class ListedVerb(StrEnum):
    """What is asked of a list that was shown, or of the review."""

    MORE = "more"
    LEAKS = "leaks"
    FOR_STUDENT = "for_student"


@dataclass(frozen=True, slots=True, kw_only=True)
class ListAsked:
    """ "More" after a list, "leaks", "review for a student"."""

    text: str
    verb: ListedVerb


@dataclass(frozen=True, slots=True, kw_only=True)
class Unclear:
    """We cannot tell what is asked: the two or three likeliest topics, to ask with buttons."""

    text: str
    offers: tuple[Topic, ...]
    slots: Slots = Slots()


Understood = (
    Question
    | NoteSaid
    | ScoreSaid
    | ResultSaid
    | MatchSaid
    | MatchMoved
    | ReminderSaid
    | ZoneSaid
    | FormatTold
    | TimeoutsAsked
    | RallySaid
    | DetailSaid
    | StarterSaid
    | ServerSaid
    | RemarkSaid
    | TimeoutSaid
    | AgreementSaid
    | UndoSaid
    | WhySaid
    | PlanSaid
    | RetellSaid
    | CorrectionSaid
    | BookSaid
    | PoolSaid
    | PoolAsked
    | VideoSaid
    | CoachSaid
    | ListAsked
    | Unclear
)

KIND_OF: dict[type, Kind] = {
    Question: Kind.QUESTION,
    NoteSaid: Kind.NOTE,
    ScoreSaid: Kind.SCORE,
    StarterSaid: Kind.SCORE,
    ServerSaid: Kind.SCORE,
    RemarkSaid: Kind.SCORE,
    TimeoutSaid: Kind.SCORE,
    ResultSaid: Kind.MATCH,
    MatchSaid: Kind.MATCH,
    MatchMoved: Kind.MATCH,
    ReminderSaid: Kind.BOOK,
    ZoneSaid: Kind.BOOK,
    FormatTold: Kind.MATCH,
    TimeoutsAsked: Kind.QUESTION,
    RallySaid: Kind.RALLY,
    DetailSaid: Kind.RALLY,
    AgreementSaid: Kind.AGREEMENT,
    UndoSaid: Kind.UNDO,
    WhySaid: Kind.QUESTION,
    PlanSaid: Kind.QUESTION,
    RetellSaid: Kind.QUESTION,
    CorrectionSaid: Kind.CORRECTION,
    BookSaid: Kind.BOOK,
    PoolSaid: Kind.MATCH,
    PoolAsked: Kind.QUESTION,
    VideoSaid: Kind.RALLY,
    CoachSaid: Kind.BOOK,
    ListAsked: Kind.QUESTION,
    Unclear: Kind.UNCLEAR,
}
