"""One of their pair replaced: "now mireaux w toomey not ruun", "okafor instead of ruun"."""

from __future__ import annotations

import re

from bot.chat.message import Message
from bot.chat.moods import tells_a_state
from bot.chat.said import Certainty, MatchSaid, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

_PAIR = 2
_LEAD = (
    r"(?:(?:ok|okay|so|oh|no|nope|hey|wait|actually|update|and|but|now|today|its|it is|theyre"
    r"|they are|they have|looks like|apparently|btw) )*"
)
_CUE = r"(?:(?:ok|so|oh|no|and|wait|actually) )*(?:now|its|it is|theyre|today) (?:now |its )?"
_WHEN = r"(?: (?:now|today|here|instead|tho|though|this time|this game|this match|for this one))*"
_NOT = r"(?:(?:and )?not|instead of|no longer|rather than|(?:and )?no)"
_WITH = r"(?:w|with|and|n|plus)"
_FOR = (
    r"(?:(?:is |are |was )?(?:instead of|replacing|replaces|replaced|(?:(?:in|subs?|subbing|subbed"
    r"|plays|playing|stands? in|standing in|fills in|filling in|steps in|stepping in|comes in"
    r"|coming in) )?for))"
)
_GONE = r"(?:is |was |got )?(?:out|gone|replaced|subbed|swapped)(?: out)?"
_STAY, _NEW, _OUT = (rf"(?P<{who}>\w+(?: \w+)??)" for who in ("stay", "new", "out"))

FORMS = (
    regex(rf"{_LEAD}{_STAY} {_WITH} {_NEW}{_WHEN} {_NOT} {_OUT}{_WHEN}"),
    regex(rf"{_CUE}{_STAY} {_WITH} {_NEW}{_WHEN}"),
    regex(
        rf"{_LEAD}(?:{_OUT} {_GONE}(?: so| and)* )?{_STAY} (?:is )?(?:plays|playing|partners"
        rf"|partnering) (?:w|with) {_NEW}{_WHEN}"
    ),
    regex(rf"{_LEAD}{_NEW} {_FOR} {_OUT}{_WHEN}"),
    regex(
        rf"{_LEAD}{_OUT} {_GONE}(?: (?:and|by|for|with|so))* {_NEW}"
        rf"(?: (?:is |comes |steps |plays )?(?:in|plays))?{_WHEN}"
    ),
    regex(
        rf"{_LEAD}(?:they )?(?:swapped|subbed|changed|replaced|switched)(?: out)? {_OUT} "
        rf"(?:for|with|by|to) {_NEW}{_WHEN}"
    ),
)
"""Who stays, who comes in and who goes out; of our own pair too (`own_substitute_said`)."""


def substitute_said(message: Message, chat: ChatView) -> MatchSaid | None:
    """The match against who stays and who comes in; None where no pair of theirs is known."""
    if message.asks or chat.forwarded or len(chat.theirs) != _PAIR or message.note.claims:
        return None
    line = " ".join(word.folded for word in message.said)
    for form in FORMS:
        found = form.fullmatch(line)
        pair = None if found is None else _pair(found, message, chat)
        if pair is not None:
            return MatchSaid(text=message.text, mentions=pair)
    return None


def _pair(found: re.Match[str], message: Message, chat: ChatView) -> tuple[Mention, Mention] | None:
    groups = {who for who in found.groupdict() if found[who] is not None}
    new = _newcomer(_words_of(found, "new", message), message, chat)
    if new is None:
        return None
    out = _of_theirs(_words_of(found, "out", message), message, chat) if "out" in groups else None
    stay = (
        _of_theirs(_words_of(found, "stay", message), message, chat) if "stay" in groups else None
    )
    if ("out" in groups) is (out is None) or ("stay" in groups) is (stay is None):
        return None
    if stay is None and out is not None:
        left = next(player for player in chat.theirs if player != out.players[0])
        stay = _by_name(left, out, chat)
    return None if stay is None or (out and out.players == stay.players) else (stay, new)


def _words_of(found: re.Match[str], who: str, message: Message) -> tuple[Word, ...]:
    start = len(found.string[: found.start(who)].split())
    return tuple(message.said[start : start + len(found[who].split())])


def _by_name(player: PlayerId, out: Mention, chat: ChatView) -> Mention | None:
    """Who stays, though the message does not name them."""
    name = next((row.name for row in chat.roster if row.player == player), None)
    if name is None:
        return None
    return Mention(typed=name, span=out.span, certainty=Certainty.SURE, players=(player,))


def _of_theirs(named: tuple[Word, ...], message: Message, chat: ChatView) -> Mention | None:
    one = _mention(named, message)
    is_theirs = (
        one is not None and one.certainty is Certainty.SURE and one.players[0] in chat.theirs
    )
    return one if is_theirs else None


def _newcomer(named: tuple[Word, ...], message: Message, chat: ChatView) -> Mention | None:
    """Who comes in: somebody of the book who is neither ours nor one of the two, or a new name."""
    one = _mention(named, message)
    if one is not None and one.certainty is not Certainty.NOBODY:
        playing = {*chat.ours, *chat.theirs}
        return None if playing.intersection(one.players) else one
    if not all(map(may_bear_a_name, named)) or any(map(tells_a_state, named)):
        return None
    span = (named[0].span[0], named[-1].span[1])
    typed = message.text[slice(*span)]
    return Mention(typed=typed, span=span, certainty=Certainty.NOBODY, players=())


def _mention(named: tuple[Word, ...], message: Message) -> Mention | None:
    """Whom these words name, and nothing beside it."""
    span = (named[0].span[0], named[-1].span[1])
    inside = (one for one in message.mentions if not one.pronoun)
    return next((one for one in inside if one.span[0] == span[0] and one.span[1] >= span[1]), None)
