"""What is settled or asked of the book and the chat: agreements, management, whose coach."""

from __future__ import annotations

from enum import StrEnum

from bot.chat.said.mention import Mention
from knowledge.dataclass import dataclass
from knowledge.vocabulary import AgreementKey


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreementSaid:
    """Something our pair settles: "we agreed forehand takes the middle"."""

    text: str
    key: AgreementKey
    value: str


class BookVerb(StrEnum):
    """Book and chat management that can be asked for in words or by a command."""

    START = "start"
    HELP = "help"
    MANY_NOTES = "many_notes"
    ADD_PLAYER = "add_player"
    PAIR = "pair"
    RENAME_PLAYER = "rename_player"
    ADD_NICKNAME = "add_nickname"
    SHOW_NOTES = "show_notes"
    DROP_NOTES = "drop_notes"
    WHO = "who"
    OUR_PAIR = "our_pair"
    OUR_PAIRS = "our_pairs"
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
    DAY_RECORD = "day_record"
    LAST_MEETING = "last_meeting"
    SCOUT = "scout"
    TAG_RALLIES = "tag_rallies"
    STOP_TAGGING = "stop_tagging"
    BASE_RATES = "base_rates"
    OWN_RATES = "own_rates"


@dataclass(frozen=True, slots=True, kw_only=True)
class BookSaid:
    """Book management: the verb and its words.

    `then` is told behind our pair, and read once it is known whom "we" means; `tells_writer`: the
    first of the pair is who writes; `also` is with whom else they play, in another event.
    """

    text: str
    verb: BookVerb
    words: str = ""
    mentions: tuple[Mention, ...] = ()
    then: str = ""
    tells_writer: bool = False
    also: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPair:
    """One of a coach's pairs, and the draw that it plays; empty where that is not told."""

    players: tuple[Mention, ...]
    draw: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CoachSaid:
    """Whom "we" means from now on: one of several pairs of the book, and perhaps against whom.

    `asks` is what is asked for that pair, in the words left; empty for nothing. `coaches`: said as
    a coach does. `draw` is what the pair plays, where that is told; `also` are further pairs.
    Without anybody in `ours` the pair is told by `draw` alone, or as the other one.
    """

    text: str
    ours: tuple[Mention, ...]
    theirs: tuple[Mention, ...] = ()
    asks: str = ""
    coaches: bool = False
    draw: str = ""
    also: tuple[OwnPair, ...] = ()
