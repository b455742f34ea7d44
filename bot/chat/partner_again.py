"""A partner of ours played with again: "im back with benedikt now", "with anouk again"."""

from __future__ import annotations

from bot.chat.names import find_mentions
from bot.chat.occasions import OCCASION
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex

_LEAD = r"(?:(?:ok|okay|so|and|now|yes|no|um|uh|hey|then|this time|oh|actually|its|it is) )*"
_WE = r"(?:(?:im|i am|were|we are|ill be|i will be|i|me|playing|play|playin|go|going) )*"
_AGAIN = regex(
    rf"{_LEAD}{_WE}(?:(?P<back>back (?:together )?(?:with|to))|with) (?P<name>\w+(?: \w+){{0,2}}?)"
    rf"(?P<when>(?:{OCCASION})*)"
)


def partner_again(text: str, chat: ChatView) -> BookSaid | None:
    """Who plays with us again; None for anything else.

    Only somebody of ours who is not of the pair that plays now: so neither a question about the
    pair nor a note on an opponent or on one of the two is ever taken for it.
    """
    if "?" in text or len(chat.ours) != 2 or chat.forwarded:
        return None
    said = words(text)
    found = _AGAIN.fullmatch(" ".join(word.folded for word in said))
    if found is None or not (found["back"] or found["when"]):
        return None
    partner = next((one for one in find_mentions(said, chat) if _rests(one, chat)), None)
    if partner is None or partner.typed.lower() != found["name"]:
        return None
    return BookSaid(text=text, verb=BookVerb.OUR_PAIR, words=partner.typed, mentions=(partner,))


def _rests(one: Mention, chat: ChatView) -> bool:
    """Whether somebody of ours is surely meant who is not of the pair now."""
    return one.certainty is Certainty.SURE and not one.pronoun and rests(one, chat)


def rests(one: Mention, chat: ChatView) -> bool:
    """Whether all who may be meant are ours and none of them plays now."""
    ours = {row.player for row in chat.roster if row.ours}
    return bool(one.players) and {*one.players} <= ours - {*chat.ours}
