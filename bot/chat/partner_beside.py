"""A partner of ours told behind something else: "next: ana and bo 14:15, mixed w tom", "good game,
back with tom". What stands before it is read next, as of the pair that plays then.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.announcements import begins_as_match
from bot.chat.moods import tells_a_state
from bot.chat.names import find_mentions
from bot.chat.occasions import DISCIPLINE, OCCASION
from bot.chat.partner_again import rests
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word, words
from knowledge.regex import regex

PAIR = 2

_WE = r"(?:(?:and|so|now|but|im|i am|were|we are|ill be|i|me|playing|play|its) )*"
_LAST = regex(
    rf"{_WE}(?:(?P<back>back (?:together )?(?:with|to))"
    rf"|(?P<event>(?:(?:the|in|for) )*{DISCIPLINE}(?: doubles)?) (?:with|w)|(?:with|w))"
    rf" (?P<name>[^\W\d]+(?: [^\W\d]+)??)(?:{OCCASION})*"
)
_PUT_RIGHT = regex(r"(?:^| )(?:i mean|i meant|sorry|no|not)(?: it s| its)? (?P<name>[^\W\d]+)$")
""" "Who's toby, i mean tobias": a slip in that partner's own name tells nothing else."""

_MARKS = frozenset(",;:.!\n(–—")
_LONGEST = 8
"""Words of such an end."""


def partner_beside(text: str, chat: ChatView) -> BookSaid | None:
    """Who plays with us, and what was said before it as `then`; None for anything else.

    Behind an announcement anybody of ours who rests now counts, else only whoever we are "back
    with": so a note how somebody plays "with tom" stays one. Whoever nobody knows is a partner
    only where the event is told, since "next: ana, with bo" names them both.
    """
    if "?" in text or chat.forwarded or len(chat.ours) != PAIR:
        return None
    said = words(text)
    cuts = [at for at in range(1, len(said)) if _MARKS & set(said[at].gap)]
    at = cuts[-1] if cuts else len(said)
    if not 0 < len(said) - at <= _LONGEST:
        return None
    found = _LAST.fullmatch(" ".join(word.folded for word in said[at:]).removesuffix(")"))
    announces = begins_as_match(said)
    if found is None or not (announces or found["back"]):
        return None
    start = at + len(found.string[: found.start("name")].split())
    named = said[start : start + len(found["name"].split())]
    partner = _resting(named, find_mentions(said, chat), chat)
    if partner is None and not (announces and found["event"] and _is_new(named)):
        return None
    return BookSaid(
        text=text,
        verb=BookVerb.OUR_PAIR,
        words=text[named[0].span[0] : named[-1].span[1]],
        mentions=() if partner is None else (partner,),
        then=_before(text, said[:at], found["name"]),
    )


def _resting(named: Sequence[Word], mentions: Sequence[Mention], chat: ChatView) -> Mention | None:
    span = (named[0].span[0], named[-1].span[1])
    one = next((one for one in mentions if one.span == span and not one.pronoun), None)
    is_sure = one is not None and one.certainty is Certainty.SURE
    return one if one is not None and is_sure and rests(one, chat) else None


def _is_new(named: Sequence[Word]) -> bool:
    return all(map(may_bear_a_name, named)) and not any(map(tells_a_state, named))


def _before(text: str, before: Sequence[Word], name: str) -> str:
    """What is told before the partner, where it is more than their name put right."""
    found = _PUT_RIGHT.search(" ".join(word.folded for word in before))
    if found is not None and found["name"] == name:
        return ""
    return text[: before[-1].span[1]]
