"""What a message turns out to be: one typed value per kind, for texts and taps alike."""

from __future__ import annotations

from bot.chat.said.book import AgreementSaid, BookSaid, BookVerb, CoachSaid, OwnPair
from bot.chat.said.change import CorrectionSaid, UndoSaid
from bot.chat.said.compare import Among, CompareAsked, Compared
from bot.chat.said.kinds import KIND_OF, Kind, Understood
from bot.chat.said.match import (
    FormatTold,
    MatchMoved,
    MatchSaid,
    PoolAsked,
    PoolSaid,
    PoolTeam,
    PoolVerb,
    ResultSaid,
)
from bot.chat.said.mention import Certainty, Mention
from bot.chat.said.note import Claim, NoteSaid, WriteDownSaid
from bot.chat.said.plan import PlanAsk, PlanSaid
from bot.chat.said.question import (
    ListAsked,
    ListedVerb,
    OneOfUs,
    OurPlace,
    Question,
    Retelling,
    RetellSaid,
    Slots,
    TimeoutsAsked,
    Unclear,
    WhySaid,
)
from bot.chat.said.rally import (
    DetailSaid,
    RallyDetails,
    RallySaid,
    ToldChoice,
    VideoLine,
    VideoSaid,
)
from bot.chat.said.reminder import ReminderSaid, ReminderVerb, ZoneSaid
from bot.chat.said.score import (
    RemarkSaid,
    SaidNeeds,
    SaidRates,
    SaidScore,
    ScoreRemark,
    ScoreSaid,
    ServerSaid,
    StarterSaid,
    TimeoutSaid,
)

__all__ = [
    "KIND_OF",
    "AgreementSaid",
    "Among",
    "BookSaid",
    "BookVerb",
    "Certainty",
    "Claim",
    "CoachSaid",
    "CompareAsked",
    "Compared",
    "CorrectionSaid",
    "DetailSaid",
    "FormatTold",
    "Kind",
    "ListAsked",
    "ListedVerb",
    "MatchMoved",
    "MatchSaid",
    "Mention",
    "NoteSaid",
    "OneOfUs",
    "OurPlace",
    "OwnPair",
    "PlanAsk",
    "PlanSaid",
    "PoolAsked",
    "PoolSaid",
    "PoolTeam",
    "PoolVerb",
    "Question",
    "RallyDetails",
    "RallySaid",
    "RemarkSaid",
    "ReminderSaid",
    "ReminderVerb",
    "ResultSaid",
    "RetellSaid",
    "Retelling",
    "SaidNeeds",
    "SaidRates",
    "SaidScore",
    "ScoreRemark",
    "ScoreSaid",
    "ServerSaid",
    "Slots",
    "StarterSaid",
    "TimeoutSaid",
    "TimeoutsAsked",
    "ToldChoice",
    "Unclear",
    "Understood",
    "UndoSaid",
    "VideoLine",
    "VideoSaid",
    "WhySaid",
    "WriteDownSaid",
    "ZoneSaid",
]
