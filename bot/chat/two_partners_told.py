"""Two partners of one of us, by event: "im mira, i play mixed with tom and womens with jo"."""

from __future__ import annotations

from bot.chat.moods import tells_a_state
from bot.chat.names import find_mentions
from bot.chat.occasions import DISCIPLINE
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex

_LEAD = r"(?:(?:hi|hey|hello|ok|okay|so|btw|and|well) )*"
_ME = r"(?:(?:im|i am|this is|my name is) (?P<me>[^\W\d]+(?: [^\W\d]+)??) (?:and )?)?"
_PLAY = r"(?:(?:im|i am|i|ill be|ill) )?(?:play|playing|partnering) "
_EVENT = rf"(?:(?:the|in|my) )*{DISCIPLINE}(?: doubles)?"
_ONE = r"(?P<one>[^\W\d]+(?: [^\W\d]+)??)"
_TWO = r"(?P<two>[^\W\d]+(?: [^\W\d]+)??)"
_TELLS = (
    regex(rf"{_LEAD}{_ME}{_PLAY}{_EVENT} with {_ONE} (?:and |but )?{_EVENT} with {_TWO}"),
    regex(rf"{_LEAD}{_ME}{_PLAY}with {_ONE} {_EVENT} (?:and |but )(?:with )?{_TWO} {_EVENT}"),
)
"""The two events tell that these are partners: nothing else is told or asked of such a line."""


def two_partners_told(text: str, chat: ChatView) -> BookSaid | None:
    """Whoever writes with the first partner, who counts now, and the second; else None."""
    if "?" in text or chat.forwarded:
        return None
    said = words(text)
    line = " ".join(word.folded for word in said)
    found = next((each for form in _TELLS if (each := form.fullmatch(line))), None)
    if found is None:
        return None
    mentions = find_mentions(said, chat)
    typed: dict[str, str] = {}
    for part in ("me", "one", "two"):
        if found[part] is None:
            continue
        start = len(line[: found.start(part)].split())
        named = said[start : start + len(found[part].split())]
        span = (named[0].span[0], named[-1].span[1])
        known = next((one for one in mentions if one.span == span), None)
        if _is_theirs(known, chat):
            return None
        if known is None and not all(map(may_bear_a_name, named)):
            return None
        if known is None and any(map(tells_a_state, named)):
            return None
        typed[part] = text[slice(*span)]
    return BookSaid(
        text=text,
        verb=BookVerb.OUR_PAIR,
        words=" and ".join(typed[part] for part in ("me", "one") if part in typed),
        mentions=tuple(one for one in mentions if one.typed in typed.values()),
        also=typed["two"],
        tells_writer="me" in typed,
    )


def _is_theirs(known: Mention | None, chat: ChatView) -> bool:
    """Whether somebody is named against whom we play."""
    is_sure = known is not None and known.certainty is Certainty.SURE
    return known is not None and is_sure and known.players[0] in chat.theirs
