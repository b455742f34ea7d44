"""A new partner told by name: "new partner tmrw, bronagh", "bronaghs my partner!!"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.moods import tells_a_state
from bot.chat.names import find_mentions
from bot.chat.occasions import DISCIPLINE
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word, words
from knowledge.regex import regex
from scouting_db.known_names import Known, known_first_name

_NO_NAME = (
    r"(?:(?:wtf|lol|no|nope|dude|bro|omg|uh|um|hey|oops|wait) )*(?:\w+ ){0,4}"
    r"(?:isnt|is not|aint|wasnt|thats not|not|no)"
    r" (?:(?:a|an|my|his|her|the|even) )*(?:name|partner|person|player|somebody|him|her) "
)
"""`tilting isnt a name, my partner is idris`: what was taken for a name is put right."""

_LEAD = (
    rf"(?:{_NO_NAME})?(?:(?:no|nope|wrong|actually|wait|sorry|lol|wtf|said|hi|hey|ok|okay|so|btw|update|and|also|now|yes|yep|oh|news|fyi|i|ive|we|have|has|had|got"
    r"|a|the|my|our|another|change|with) )*"
)
_WHEN = (
    r"(?:(?:for|from|on|this|next|again|now|today|tonight|tomorrow|tmrw|tmw|tmr|instead|here|then"
    r"|weekend|week|time|season|event|tournament|tourney|morning|afternoon|evening"
    r"|(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)(?:day|sday|nesday|rsday|urday)?"
    r"|the|lol|so|pls|please|yay)\b ?)*"
)
_NAME = r"(?P<name>\w+(?: \w+)??)"
_OF_NAME = regex(
    rf"^(?:(?:ok|so|btw|and|hey|hi|hello|yes|no) )*"
    rf"{_NAME}(?: is| will be|s| is gonna be)? (?:my|now my)"
    rf" (?:new |regular |usual )?partner(?: {_WHEN})?$"
)
_TELLS = (
    regex(
        rf"^{_LEAD}(?:new|different|other) partner {_WHEN}"
        rf"(?:(?:is|its|called|named|will be|switch|name) )*{_NAME}(?: {_WHEN})?$"
    ),
    regex(
        rf"^{_LEAD}partner {_WHEN}(?:is|will be|called|switch to|switch|now) {_NAME}(?: {_WHEN})?$"
    ),
    _OF_NAME,
    regex(
        r"^(?:(?:ok|so|btw|hey|and) )*(?:(?:im|i am|ill be|i) )?"
        rf"(?:play|playing|partnering|teaming up) (?:with|w) {_NAME}(?: {_WHEN})?$"
    ),
    regex(
        rf"^{_LEAD}(?:(?:new|match|game|{DISCIPLINE}|next|time) )*(?:(?:im|i am|ill be|its me) )"
        rf"(?:(?:now|playing|back) )*(?:with|w) {_NAME} "
        rf"(?:(?:now|today|instead|first|to start)(?: (?:today|first|off|with))*"
        rf"|(?:now )?(?:for|in) (?:the )?(?:{DISCIPLINE}|this one|this match))$"
    ),
    regex(
        rf"^{_LEAD}(?:switch|switched|switching|swap|swapped|swapping|change|changed|changing)"
        rf" (?:partner|partners) (?:to|for|over to|and its) {_NAME}(?: {_WHEN})?$"
    ),
)
"""Statements and nothing else: what goes on after the name is about something else."""

_SWITCHED_TO = regex(
    rf"^{_LEAD}(?:switch|switched|switching|swap|swapped|swapping) (?:over )?to {_NAME}"
    rf"(?: {_WHEN})?$"
)
"""`switch to oskar`: somebody of ours who rests now, or a first name that many bear. "Switch to
okafor" and "switch to lobs" say whom and what we play, "switch to spanish" how we should write."""


def partner_told(text: str, chat: ChatView) -> BookSaid | None:
    """The partner that a message names, whom the book may not know; None for anything else."""
    said = words(text)
    if "?" in text or not any(_may_tell(word) for word in said):
        return None
    line = " ".join(word.folded for word in said)
    for form in _TELLS:
        found = form.match(line)
        if found is not None:
            start = len(line[: found.start("name")].split())
            named = said[start : start + len(found["name"].split())]
            after = said[start + len(named)].folded if start + len(named) < len(said) else ""
            is_short = form is _OF_NAME and after in ("my", "now")
            return _said_of(text, named, find_mentions(said, chat), chat, is_short=is_short)
    return _switched_to(text, said, line, chat)


def _switched_to(text: str, said: Sequence[Word], line: str, chat: ChatView) -> BookSaid | None:
    found = _SWITCHED_TO.match(line)
    if found is None:
        return None
    start = len(line[: found.start("name")].split())
    named = said[start : start + len(found["name"].split())]
    if named[-1].folded == "book":
        return None  # "switch to mira's book": where we write, and not with whom we play
    known = _known(find_mentions(said, chat), named)
    if known is not None:
        rests = {row.player for row in chat.roster if row.ours} - {*chat.ours}
        is_sure = known.certainty is Certainty.SURE and known.players[0] in rests
        return _our_pair(text, known.typed, (known,)) if is_sure else None
    is_borne = known_first_name(named[0].folded) is Known.COMMONLY
    if not is_borne or not all(map(may_bear_a_name, named)):
        return None
    return _our_pair(text, text[named[0].span[0] : named[-1].span[1]], ())


def _may_tell(word: Word) -> bool:
    return word.folded in ("with", "w") or word.folded.startswith(
        ("partner", "play", "switch", "swap")
    )


def _said_of(
    text: str,
    named: Sequence[Word],
    mentions: Sequence[Mention],
    chat: ChatView,
    *,
    is_short: bool,
) -> BookSaid | None:
    known = _known(mentions, named)
    if known is not None:
        is_theirs = known.certainty is Certainty.SURE and known.players[0] in chat.theirs
        return None if is_theirs else _our_pair(text, known.typed, (known,))
    if not all(map(may_bear_a_name, named)) or any(map(tells_a_state, named)):
        return None
    typed = text[named[0].span[0] : named[-1].span[1]]
    return _our_pair(text, _without_owner(typed) if is_short else typed, ())


def _known(mentions: Sequence[Mention], named: Sequence[Word]) -> Mention | None:
    """Whom the words name; of "hale targets my partner" they are more than a name."""
    span = (named[0].span[0], named[-1].span[1])
    whole = (one for one in mentions if one.span == span)
    return next((one for one in whole if one.certainty is not Certainty.NOBODY), None)


_ENDS_SO = regex(r"(?:[iu]s|ss|james|charles|agnes|ines)$", re.IGNORECASE)
"""Names that end in an s of their own."""


def _without_owner(typed: str) -> str:
    """`bronagh` of "bronaghs my partner", where the s is short for "is"."""
    bare = re.sub(r"['’‘`´]s$", "", typed)
    is_own = bare != typed or _ENDS_SO.search(bare) is not None
    return bare if is_own else bare.removesuffix("s")


def _our_pair(text: str, name: str, mentions: tuple[Mention, ...]) -> BookSaid:
    return BookSaid(text=text, verb=BookVerb.OUR_PAIR, words=name, mentions=mentions)
