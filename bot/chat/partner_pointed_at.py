"""A partner told by pointing back: "oriane is righty, shes my partner", "no shes my partner"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.names import find_mentions
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId

_POINTS = regex(
    r"(?:^|(?P<before>.+) )(?:(?:and|but|so|no|nope|wait|cause|because) )*"
    r"(?P<who>(?:she|he|that|this) is|shes|hes|thats) (?:also |actually |now )*"
    r"(?:my|our) (?:new |regular |usual |mixed |doubles )*(?:partner|teammate)"
    r"(?: (?:now|today|here))*(?: (?:and )?not (?:an? |my |our |the |one of )*"
    r"(?:opponents?|opps?|enemy|them|theirs))?$"
)


def partner_pointed_at(text: str, chat: ChatView) -> BookSaid | None:
    """Who is our partner by such words: whom the message names, or else whom we spoke of last."""
    said = words(text)
    line = " ".join(word.folded for word in said)
    found = None if "?" in text or chat.forwarded else _POINTS.search(line)
    if found is None:
        return None
    at = len(line[: found.start("who")].split())
    named = [one for one in find_mentions(said, chat) if one.span[0] < said[at].span[0]]
    named = [one for one in named if not one.pronoun]
    if len(named) > 1:
        return None
    who = named[0] if named else _spoken_of(chat)
    if who is None or not _may_play_with_us(who, chat):
        return None
    before = text[: said[at].span[0]].rstrip(" ,.;:-–—")
    return BookSaid(
        text=text,
        verb=BookVerb.OUR_PAIR,
        words=who.typed,
        mentions=() if who.certainty is Certainty.NOBODY else (who,),
        then=before.removesuffix(" and").removesuffix(" but") if named else "",
    )


def _spoken_of(chat: ChatView) -> Mention | None:
    """The one spoken of just now, or the only one of the book beside us."""
    others = [row.player for row in chat.roster if row.player not in chat.ours]
    whom: Sequence[PlayerId] = chat.focus or others
    name = next((row.name for row in chat.roster if row.player in whom), None)
    if len(whom) != 1 or name is None:
        return None
    return Mention(typed=name, span=(0, 0), certainty=Certainty.SURE, players=(whom[0],))


def _may_play_with_us(who: Mention, chat: ChatView) -> bool:
    """Not somebody whom we play against, nor one of us already."""
    if who.certainty is Certainty.NOBODY:
        return True
    return who.certainty is Certainty.SURE and who.players[0] not in {*chat.theirs, *chat.ours}
