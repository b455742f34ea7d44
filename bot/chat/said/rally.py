"""Rallies told with what happened in them, at the court or from a video."""

from __future__ import annotations

from bot.chat.said.mention import Mention
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Ending, PlayerId, Stroke, Topic, Wing


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
    `may_note`: it also tells a habit of one of theirs, which no detail of a rally keeps.
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
    may_note: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class DetailSaid:
    """What is said of the last rally after it was counted: "it was my dink", "that was forced".

    `leaves_who`: somebody else is meant and not named ("no, him not me"); `not_asker` not who
    writes.
    """

    text: str
    details: RallyDetails
    mentions: tuple[Mention, ...] = ()
    leaves_who: bool = False
    not_asker: bool = False


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
