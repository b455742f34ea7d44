"""What a button carries: a short, versioned payload that decodes to a typed tap.

Form: `1:verb:arg:arg`. A payload is never read as text again. The Bot API allows 64 bytes. Where
old buttons stay under old messages the version is followed by the book that they speak of,
`1.2s:verb:arg`: numbers of one book mean something else in another.
"""

from __future__ import annotations

from enum import StrEnum
from typing import TypeVar

from knowledge.dataclass import dataclass

VERSION = "1"
LIMIT_BYTES = 64
"""Bot API: callback_data of 1 to 64 bytes (telegram.constants.InlineKeyboardButtonLimit)."""

STAMP_BYTES = 9
"""A dot and a book's number in base 36: enough for 2.8 million million books."""

ROOM_BYTES = LIMIT_BYTES - STAMP_BYTES
"""What a payload may take before it is stamped."""

HIGHEST_NUMBER = 2**63 - 1
"""The largest integer that both databases hold."""

Word = TypeVar("Word", bound=StrEnum)


class Verb(StrEnum):
    """What a tap does. Stored in sent messages: never reuse a word for something else."""

    ASK = "ask"  # topic[, player]: ask a question of that topic
    SETTLE = "set"  # topic, fact, value[, player]: the answer's other branch
    WHY = "why"  # topic: the reasons in full
    MIX = "mix"  # topic: the exact mix of the last answer
    PICK = "pick"  # topic: draw the next one from that mix
    WHO = "who"  # pending number, player: which of the alike names is meant
    ADD = "add"  # pending number: add the unknown name as a player
    UNDO = "undo"  # change: take it back
    REDO = "redo"  # change: put it back
    NOTE = "note"  # what, note: show, delete or keep a note
    RALLY = "rally"  # us|them, match, n: the next entry of the match's log
    TIMEOUT = "to"  # us|them, match, n
    SERVE = "serve"  # us|them, match[, game]: who serves that game first
    SIDES = "sides"  # us|them, player, match, game: who of a pair started right
    SERVER = "server"  # player, match, n: who of the serving pair serves
    SCORE = "score"  # us|them, call, match, n: whose call a bare score was
    MODE = "mode"  # match|break|open
    PROFILE = "prof"  # player, trait, value: one tap of a profile
    USE_LOG = "rates"  # log: what we said of our rallies counts no longer
    EXAMPLE = "ex"  # number: one of the example questions
    CLAIM = "claim"  # change, number: add a claim that was offered when it read a note
    ENDED = "end"  # winner|error|forced, match, n: how that rally ended
    ENDED_BY = "by"  # player, match, n: whose winner or error it was
    MEANT = "meant"  # player, match, n: whom a name not in this match stood for
    TAG = "tag"  # serve|return, option, match, n: our choice in the rally about to be played
    AGREE = "agree"  # agreement, answer, our two players: one tap of a new pair's card
    PAGE = "page"  # what, of which match or event, page: more of a list
    SCOUT = "scout"  # card, question, player, answer; card, skip|look|done; open: see scout_taps
    PLAN = "plan"  # what, two players of theirs: the plan against them in another form
    LATER = "later"  # pending number: the next of several questions asked at once
    INVITE = "inv"  # editor|reader, or cancel: an invitation to the book
    MEMBER = "mem"  # what, person: show, remove or change the role of a member
    BOOK = "book"  # what[, book]: use, bind, leave: which book a chat speaks of
    FORGET = "forget"  # player|me[, player]: erase for good
    IMPORT = "import"  # inbox number: add what the file in that message holds
    OVER = "over"  # match: it was the games it has, and no more
    ZONE = "zone"  # time zone: where the book's clocks are


class BadPayloadError(ValueError):
    """A payload that this version never wrote: forged, cut, or too old."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tap:
    """A button pressed."""

    verb: Verb
    args: tuple[str, ...] = ()

    def __str__(self) -> str:
        """The payload; ValueError over ROOM_BYTES or for an argument with a colon."""
        if any(":" in arg or not arg for arg in self.args):
            raise ValueError(f"arguments are non-empty and without a colon: {self.args}")
        text = ":".join((VERSION, self.verb, *self.args))
        if len(text.encode()) > ROOM_BYTES:
            raise ValueError(f"payload over {ROOM_BYTES} bytes: {text}")
        return text

    @classmethod
    def parse(cls, payload: str) -> Tap:
        """The tap that wrote this payload; BadPayloadError for any other text."""
        version, _, rest = payload.partition(":")
        verb, *args = rest.split(":")
        if version != VERSION or verb not in {*Verb} or not all(args):
            raise BadPayloadError(f"not a payload of version {VERSION}: {payload[:80]!r}")
        return cls(verb=Verb(verb), args=tuple(args))


def tap(verb: Verb, *args: object) -> str:
    """The payload of a button."""
    return str(Tap(verb=verb, args=tuple(str(arg) for arg in args)))


def stamped(payload: str, book: int) -> str:
    """The payload as it speaks of that book; ValueError for a number that a stamp cannot hold."""
    version, rest = payload.split(":", 1)
    stamp = f".{_base36(book)}"
    if len(stamp) > STAMP_BYTES:
        raise ValueError(f"book {book} does not fit into {STAMP_BYTES} bytes")
    return f"{version}{stamp}:{rest}"


def unstamped(payload: str) -> tuple[str, int | None]:
    """The payload without its stamp, and the book; None where it bears none that we write."""
    version, colon, rest = payload.partition(":")
    bare, dot, stamp = version.partition(".")
    if not colon or not dot or not _is_base36(stamp):
        return payload, None
    return f"{bare}:{rest}", int(stamp, 36)


_DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"


def _is_base36(stamp: str) -> bool:
    return 0 < len(stamp) < STAMP_BYTES and set(stamp) <= {*_DIGITS}


def _base36(number: int) -> str:
    digits = ""
    while number:
        number, digit = divmod(number, len(_DIGITS))
        digits = _DIGITS[digit] + digits
    return digits or "0"


def yes_or_no(value: str) -> bool:
    """What a fact's value settles; BadPayloadError for any other word."""
    if value not in ("yes", "no"):
        raise BadPayloadError(f"yes or no, not {value}")
    return value == "yes"


def number_in(arg: str) -> int:
    """A number of ours as a tap carries it; BadPayloadError for anything else."""
    if not (arg.isascii() and arg.isdigit()) or int(arg) > HIGHEST_NUMBER:
        raise BadPayloadError(f"not a number of ours: {arg}")
    return int(arg)


def word_in(kind: type[Word], arg: str) -> Word:
    """The member of a closed set; BadPayloadError for any other word."""
    if arg not in {*kind}:
        raise BadPayloadError(f"no {kind.__name__}: {arg}")
    return kind(arg)
