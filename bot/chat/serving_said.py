"""Who serves now, and as which server, said of the running match: "its our serve", "2nd server"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.announcements import begins_as_match
from bot.chat.forms import any_of, word_set
from bot.chat.message import Message, names_somebody
from bot.chat.on_court import is_of_one_side
from bot.chat.pronouns import CALLS
from bot.chat.said import Certainty, Mention, SaidScore, ScoreSaid, ServerSaid
from bot.chat.score_serving import serving_side
from bot.chat.serve_told import OURS, THEIRS, with_sides
from bot.chat.short_forms import in_full
from bot.chat.slip_words import SLIP
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

_BE = r"(?:is |are |was |re |s )?"
_NOW = r"(?: now| here| again| next| first)?"
_IT = r"(?:its|it is|it|thats|that is|that)"
_DOES = rf"{_BE}(?:(?:the )?ones? )?(?:serving|serves?|to serve|servin|at serve|on serve){_NOW}"
_BY_NAME = regex(rf"(?:{_IT} )?@ (?:{_DOES}|serve{_NOW}|to serve|has the (?:serve|ball))")
_SECOND = regex(r"\b(?:second|2nd|server (?:2|two)|serve (?:2|two))\b")
_FIRST = regex(r"\b(?:first|1st|server (?:1|one)|serve (?:1|one))\b")
_NUMBERED = regex(r"\b(?:server|serve|number) (?:1|2|one|two)\b(?! (?:\d|one|two))")
_BEGINS_IT = regex(
    r"\b(?:we|they) (?:(?:are|re) )?(?:serves?|serving|starts?|begins?) (?:first|1st)$"
)
"""`we serve first`: who serves the game's first ball, and not as which server."""
_TELLING = word_set("of_a_serve")
_SERVE = any_of("serve_word")
_STOPS = frozenset(",;.:!\n()")
_LONGEST_TAIL = 7
"""Words at an announcement's end among which who serves may stand without a comma before it."""


_BACK = regex(r"^(?:so |ok |and )*ball back (?:to |for |with )?(?:us|we|ours|them|they|theirs)$")
"""`ball back us` tells a side-out."""

_GAME = (
    r"(?:(?:the |this |next )?(?:game|set) (?:[1-5]|one|two|three|four|five)|g[1-5]"
    r"|(?:the )?(?:first|second|third|fourth|fifth|1st|2nd|3rd|4th|5th|last|new|next) (?:game|set)"
    r"|(?:next|this|new|last) one|the decider)"
)
_OF_A_GAME = regex(rf"^(?:in |for |start |starting )?{_GAME} |(?: in| for| of)? {_GAME}$")
"""`game 2 they serve first`: which game it is the log knows."""

_WEIGHED = regex(r"\bor\b")
"""`okafor or hale on the return` asks which of them."""

_HIT_TO = regex(
    r"(?:(?:so|ok|just|we|i|and) )*(?:serve|srv|return|ret|hit)(?: (?:it|deep))* (?:to|at)"
)

_INVERTED = regex(
    r"(?:(?:so|ok|wait|hey|um|and) )*"
    r"(?:is|are|am|was|do|does|did|isnt|arent|can|should|shall|who|whos|whose|which|when)\b"
)
"""`is it my serve`, `who serves first` ask, question mark or not."""

_BEGINS = regex(
    r"(?:(?:ok|okay|right|alright|hey|lets|match|game|were|we are|and|so) )*"
    r"(?:start|starting|started|starts|begin|beginning|begins|game on|match on|here we go|lets go)"
    r"(?: (?:now|then|and|with|the match|the game|match|game))*"
    r" (?=(?:we|they|our|my|their|the|his|her|me|us|@|its|i|im|were|theyre) )"
)
"""What tells that the match begins, before who serves: "start, we serve first"."""


_DENIED = regex(
    r" not (?:(?:the )?(?:first|second|1st|2nd|1|2|one|two)|ours?|us|we|theirs?|them|they)$"
)
"""`second server not first`, `their serve not ours`."""

_TO_WHOM = regex(r"^(?!.*\b(?:now|next|first)\b)(?:we|they) serves? to (?:we|they)$")
_STARTS = (
    r"(?:starts|starting|started|begins|beginning)"
    r"(?! (?:on|in|at|from|to|with|over|right|left|the|wide|deep|slow|slowly|cold|hot|\w+ing)\b)"
)
"""Beside a score the one who starts serves: "we serve first 0-0-2 kath starting"."""

_BESIDE_A_SCORE = regex(rf"(?:^|[^@])@ (?:{_DOES}|to serve|{_STARTS})\b")


def server_named(message: Message, chat: ChatView) -> Mention | None:
    """Who serves by name, told beside a score: "5-4-1 tom is serving"; one of those on court."""
    named = [one for one in message.mentions if not one.pronoun]
    if len(named) != 1 or named[0].certainty is not Certainty.SURE:
        return None
    if named[0].players[0] not in {*chat.ours, *chat.theirs}:
        return None
    return named[0] if _BESIDE_A_SCORE.search(_with_name(message, named[0])) else None


def _folded(message: Message) -> str:
    return " ".join(word.folded for word in message.said)


def serving_said(message: Message, chat: ChatView) -> ScoreSaid | ServerSaid | None:
    """The message, if it says who serves in the running match, and nothing else."""
    if not chat.match_on or "?" in message.text or _INVERTED.match(_folded(message)):
        return None
    if _BACK.search(_folded(message)):
        return None  # the ball has changed sides
    if _WEIGHED.search(_folded(message)) or _aims(message):
        return None
    if begins_as_match(message.said) and names_somebody(message):
        return None  # of the match announced
    named = [one for one in message.mentions if not one.pronoun]
    spoken_of = named or [one for one in message.mentions if one.typed.lower() in CALLS]
    if len(spoken_of) == 1 and (server := _by_name(message, spoken_of[0], chat)) is not None:
        return server
    if not all(is_of_one_side(one, chat) for one in named):
        return None
    if _tells_to_whom(message) and not chat.asks_serve:
        return None
    return _by_side(message.text, message.told.words)


def _aims(message: Message) -> bool:
    """Whether somebody is named to whom a ball goes: "return to okafor", "serve at hale"."""
    starts = {one.span[0] for one in message.mentions if not one.pronoun}
    at = next((at for at, word in enumerate(message.said) if word.span[0] in starts), 0)
    return _HIT_TO.fullmatch(" ".join(word.folded for word in message.said[:at])) is not None


def _tells_to_whom(message: Message) -> bool:
    """ "Ilka serves to Joost" says who faces whom whenever she serves, not that she serves now."""
    line = " ".join(word.folded for word in message.told.words)
    return _TO_WHOM.search(line) is not None


def serves_at_first(said: Sequence[Word]) -> bool | None:
    """Whether we serve first, as a part of an announcement tells; None where none does."""
    for part in (*_parts(said), *(said[-many:] for many in range(2, _LONGEST_TAIL))):
        told = _by_side("", part)
        if told is not None and told.score is not None and told.score.we_serve is not None:
            return told.score.we_serve
    return None


def _parts(said: Sequence[Word]) -> list[list[Word]]:
    """The words between commas, full stops and the like."""
    parts: list[list[Word]] = []
    for word in said:
        if not parts or set(word.gap) & _STOPS:
            parts.append([])
        parts[-1].append(word)
    return parts


def _by_side(text: str, said: Sequence[Word]) -> ScoreSaid | None:
    line = _DENIED.sub("", _line(said))
    if not set(_NUMBERED.sub("server", line).split()) <= _TELLING or not _SERVE.search(line):
        return None
    ours, theirs = OURS.search(line), THEIRS.search(line)
    we_serve = serving_side(line)
    is_second = _SECOND.search(line)
    is_first = None if _BEGINS_IT.search(line) else _FIRST.search(line)
    server = None if bool(is_second) is bool(is_first) else 2 if is_second else 1
    is_sided = ours is not None or theirs is not None
    if (we_serve is None) is is_sided or (we_serve is None and server is None):
        return None
    return ScoreSaid(text=text, score=SaidScore(we_serve=we_serve, server=server))


def _line(said: Sequence[Word]) -> str:
    return _bare(with_sides(" ".join(word.folded for word in said)))


def _by_name(message: Message, mention: Mention, chat: ChatView) -> ServerSaid | None:
    if mention.certainty is not Certainty.SURE:
        return None
    if mention.players[0] not in {*chat.ours, *chat.theirs}:
        return None
    if _BY_NAME.fullmatch(_bare(_with_name(message, mention))) is None:
        return None
    is_first = message.said[-1].folded == "first"
    return ServerSaid(text=message.text, mention=mention, first=is_first)


def _with_name(message: Message, mention: Mention) -> str:
    """The message's line with @ for the name."""
    line: list[str] = []
    for word in in_full(message.said, names=[mention.span]):
        is_name = mention.span[0] <= word.span[0] < mention.span[1]
        if not is_name or line[-1:] != ["@"]:
            line.append("@" if is_name else word.folded)
    return " ".join(line)


def _bare(line: str) -> str:
    """The line without words that only lead up to it, or tell which game they are of."""
    bare = _BEGINS.sub("", re.sub(rf"^(?:{SLIP}|(?:so|and|now|btw) )+", "", line), count=1)
    return _OF_A_GAME.sub("", bare)
