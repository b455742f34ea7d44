"""One of our own pair replaced: "imke isnt here, its tobias", "tobias is subbing for imke"."""

from __future__ import annotations

import re

from bot.chat.introduced_said import sure
from bot.chat.message import Message
from bot.chat.moods import tells_a_state
from bot.chat.partner_again import rests
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.substitutes_said import FORMS
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

PAIR = 2

_AWAY = (
    r"(?:(?:isnt|is not|aint|cant|cannot|couldnt|didnt|wont|is)"
    r" (?:be )?(?:here|playing|play|coming|come|make it|show|show up|away))"
)
_NOW = (
    r"(?:(?:so|and|today|now|its|it is|im|i am|we are|were|i|ill|play|playing|with|w|have|got) )*"
)
_OURS = (
    regex(
        rf"(?:(?:ok|so|no|oh|wait|actually|btw) )*(?P<out>\w+(?: \w+)??) {_AWAY} {_NOW}"
        r"(?P<new>\w+(?: \w+)??)(?: (?:is |plays )?(?:instead|today|now|in|plays))*"
    ),
    *(form for form in FORMS if "out" in form.groupindex),
)


def own_substitute_said(message: Message, chat: ChatView) -> BookSaid | None:
    """Our pair with who comes in; None unless one of us goes out, by name, for a partner of ours
    or somebody nobody knows: whoever is in the book as an opponent is no partner.
    """
    if message.asks or "?" in message.text or chat.forwarded or len(chat.ours) != PAIR:
        return None
    line = " ".join(word.folded for word in message.said)
    for form in _OURS:
        found = form.fullmatch(line)
        is_told = found is not None and found["out"] and found["new"]
        told = _told(found, message, chat) if found is not None and is_told else None
        if told is not None:
            return told
    return None


def _told(found: re.Match[str], message: Message, chat: ChatView) -> BookSaid | None:
    out = _mention(_words_of(found, "out", message), message)
    new = _words_of(found, "new", message)
    if out is None or out.certainty is not Certainty.SURE or out.players[0] not in chat.ours:
        return None
    if "stay" in found.groupdict() and found["stay"] is not None:
        return None
    known = _mention(new, message)
    known = known if known is not None and known.players else None
    if known is None and not all(may_bear_a_name(one) and not tells_a_state(one) for one in new):
        return None
    if known is not None and (known.certainty is not Certainty.SURE or not rests(known, chat)):
        return None
    me = next((row for row in chat.roster if row.player in {*chat.ours} - {*out.players}), None)
    if me is None:
        return None
    typed = message.text[new[0].span[0] : new[-1].span[1]]
    return BookSaid(
        text=message.text,
        verb=BookVerb.OUR_PAIR,
        words=f"{me.name} and {typed}",
        mentions=(sure(me), *(() if known is None else (known,))),
    )


def _words_of(found: re.Match[str], who: str, message: Message) -> tuple[Word, ...]:
    start = len(found.string[: found.start(who)].split())
    return tuple(message.said[start : start + len(found[who].split())])


def _mention(named: tuple[Word, ...], message: Message) -> Mention | None:
    span = (named[0].span[0], named[-1].span[1])
    return next((one for one in message.mentions if one.span == span and not one.pronoun), None)
