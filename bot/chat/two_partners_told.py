"""Two partners of one of us, by event: "im mira, i play mixed with tom and womens with jo"."""

from __future__ import annotations

from bot.chat.introduced_said import sure
from bot.chat.moods import tells_a_state
from bot.chat.names import find_mentions
from bot.chat.occasions import DISCIPLINE
from bot.chat.partner_again import rests
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import words, words_in
from knowledge.regex import regex

PAIR = 2

_LEAD = r"(?:(?:hi|hey|hello|ok|okay|so|btw|and|well) )*"
_TIME = (
    r"(?:today|tonight|tomorrow|tmrw|here|now|both|first|then|later"
    r"|this (?:weekend|week|morning|afternoon)|in the (?:morning|afternoon|evening)"
    r"|on (?:mon|tues|wednes|thurs|fri|satur|sun)day)"
)
_WHEN, _END = rf"(?:{_TIME} )*", rf"(?: {_TIME})*"
_ME = rf"(?:im|i am|this is|my name is) (?P<me>[^\W\d]+(?: [^\W\d]+)??) (?:and )?{_WHEN}"
_PLAY = rf"(?:(?:im|i am|i|ill be|ill) )?(?:play|playing|partnering) {_WHEN}"
_EVENT = rf"(?:(?:the|in|my) )*{DISCIPLINE}(?: doubles)?"
_ONE = r"(?P<one>[^\W\d]+(?: [^\W\d]+)??)"
_TWO = r"(?P<two>[^\W\d]+(?: [^\W\d]+)??)"
_BY_EVENT = rf"{_EVENT} with {_ONE} {_WHEN}(?:and |but )?{_WHEN}{_EVENT} with {_TWO}{_END}"
_TELLS = (
    regex(rf"{_LEAD}(?:{_ME}(?:{_PLAY})?|{_WHEN}{_PLAY}){_BY_EVENT}"),
    regex(
        rf"{_LEAD}(?:{_ME})?{_PLAY}with {_ONE} {_EVENT} (?:and |but )(?:with )?{_TWO} {_EVENT}"
        rf"{_END}"
    ),
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


_OTHER = regex(
    rf"(?:(?:ok|so|and|also|plus|then) )*(?:i )?(?:also )?(?:play )?{_EVENT} with {_ONE}"
    r"(?: (?:who is |is |shes |hes )?(?:a )?(?P<hand>lefty|righty|left handed|right handed))?"
)
_BESIDE = words_in("and also plus")


def other_partner_told(text: str, chat: ChatView) -> BookSaid | None:
    """ "And womens with imke, righty": with whom else whoever writes plays; the pair stays.

    Only behind a word that adds it, and for somebody who is neither one of us nor across the net.
    """
    said = words(text)
    if "?" in text or chat.forwarded or len(chat.ours) != PAIR or chat.asker not in chat.ours:
        return None
    line = " ".join(word.folded for word in said)
    found = _OTHER.fullmatch(line) if {word.folded for word in said} & _BESIDE else None
    if found is None:
        return None
    start = len(line[: found.start("one")].split())
    named = said[start : start + len(found["one"].split())]
    span = (named[0].span[0], named[-1].span[1])
    known = next((one for one in find_mentions(said, chat) if one.span == span), None)
    known = known if known is not None and known.players else None
    if known is not None and (known.certainty is not Certainty.SURE or not rests(known, chat)):
        return None
    if known is None and not all(may_bear_a_name(one) and not tells_a_state(one) for one in named):
        return None
    ours = sorted(
        (row for row in chat.roster if row.player in chat.ours),
        key=lambda row: row.player != chat.asker,
    )
    typed = text[slice(*span)]
    return BookSaid(
        text=text,
        verb=BookVerb.OUR_PAIR,
        words=" and ".join(row.name for row in ours),
        mentions=(*map(sure, ours), *(() if known is None else (known,))),
        then="" if found["hand"] is None else f"{typed} is {found['hand']}",
        also=typed,
    )
