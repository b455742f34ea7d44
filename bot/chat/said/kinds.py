"""Every kind of message that understanding tells apart, and its name in the `--json` contract."""

from __future__ import annotations

from enum import StrEnum

from bot.chat.said.book import AgreementSaid, BookSaid, CoachSaid
from bot.chat.said.change import CorrectionSaid, UndoSaid
from bot.chat.said.compare import CompareAsked
from bot.chat.said.match import FormatTold, MatchMoved, MatchSaid, PoolAsked, PoolSaid, ResultSaid
from bot.chat.said.note import NoteSaid, WriteDownSaid
from bot.chat.said.plan import PlanSaid
from bot.chat.said.question import ListAsked, Question, RetellSaid, TimeoutsAsked, Unclear, WhySaid
from bot.chat.said.rally import DetailSaid, RallySaid, VideoSaid
from bot.chat.said.reminder import ReminderSaid, ZoneSaid
from bot.chat.said.score import RemarkSaid, ScoreSaid, ServerSaid, StarterSaid, TimeoutSaid


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
    | CompareAsked
    | WriteDownSaid
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
    CompareAsked: Kind.QUESTION,
    WriteDownSaid: Kind.NOTE,
    Unclear: Kind.UNCLEAR,
}
