"""Our partner and whom we play, told in one: "me and sunniva play brackenridge and halvorsen".

The partner is told first, and the match is read next as any other. Two joined names must follow:
so "me and sunniva play left" stays what it was, and a question behind them one.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.asking import asks
from bot.chat.partner_named import Named, name_at
from bot.chat.said import BookSaid, BookVerb, Mention
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex

_PLAYS = regex(
    r"(?P<me> (?:and|n) (?:i|me|myself))?(?: (?:are|were|will|gonna|going|to|both|now))*"
    r" (?:play|playing|vs|versus|v|against|facing|face|meet)(?: (?:against|vs))? "
)


def with_a_match(
    text: str,
    said: Sequence[Word],
    partner: Named,
    mentions: Sequence[Mention],
    chat: ChatView,
    *,
    is_told: bool,
) -> BookSaid | None:
    """The partner with the match as `then`; None where the words behind the name announce none.

    `is_told`: the words before the name say that it is our partner's; else "and me" must follow.
    """
    if "?" in text or (partner.known is not None and partner.known.players[0] in chat.theirs):
        return None
    found = _PLAYS.match(" ".join(["", *(word.folded for word in said[partner.stop :]), ""]))
    if found is None or not (is_told or found["me"]):
        return None
    at = partner.stop + len(found[0].split())
    one = name_at(text, said, at, mentions)
    if one is None or one.stop >= len(said) or said[one.stop].folded not in ("and", "n"):
        return None
    if name_at(text, said, one.stop + 1, mentions) is None:
        return None
    is_asked, behind = asks(text, said), text[said[at].span[0] :]
    if is_asked and partner.known is not None and partner.known.players[0] in chat.ours:
        return None
    return BookSaid(
        text=text,
        verb=BookVerb.OUR_PAIR,
        words=partner.typed,
        mentions=() if partner.known is None else (partner.known,),
        then=behind if is_asked else f"next: {behind}",
    )
