"""A match told as people say it: "next is mixed with tom against um a guy called hale and ruiz".

Our partner in it is no opponent, and whoever rests plays now; fillers are no part of a name.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.announced_names import PAIR
from bot.chat.announcements import clock, court_of
from bot.chat.forms import word_set
from bot.chat.introduced_first import after_introduction
from bot.chat.match_announced import match_announced
from bot.chat.message import Message, read_message
from bot.chat.moods import tells_a_state
from bot.chat.numbers import number_of
from bot.chat.said import BookSaid, BookVerb, Certainty, MatchSaid, Mention
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word, words, words_in
from knowledge.regex import regex

_FILLERS = regex(
    r"[ ,]*\b(?:u+m+|u+h+|e+r+m*|hmm*|i (?:think|guess|believe|reckon)|apparently"
    r"|what(?:['’]?s| is| are) (?:her|his|their|the) names?(?: again)?"
    r"|(?:(?:a|an|some|this|that|one) (?:guy|girl|woman|man|lady|dude|kid|player|bloke)"
    r"|someone|somebody)(?: (?:who is|whos|who's))? (?:called|named))\b,?",
    re.IGNORECASE,
)
_AGAINST = words_in("against vs versus v facing")
_OF_A_MATCH = words_in("match game next final finals semi semis quarter quarters first up round")
_IN_THE_LEAD = (
    _OF_A_MATCH
    | word_set("of_a_schedule")
    | words_in(
        "so ok okay um and is its our my the a we have got play playing in at on one for mixed mens"
        " womens women men doubles dubs court bronze gold medal today now then second third last"
        " thirty fifteen forty fifty twenty five past half quarter to"
    )
)
_LONGEST_NAME = 2


def announced_against(message: Message, chat: ChatView) -> MatchSaid | BookSaid | None:
    """The match, or the partner that it brings back with the match to be read behind it.

    Only where the words before "against" are a schedule's and two names follow: so a question how
    to play against them, or a note, is never one.
    """
    if chat.forwarded or "?" in message.text:
        return None
    text, with_me = after_introduction(_FILLERS.sub("", message.text))
    said = words(text)
    place = next((at for at, word in enumerate(said) if word.folded in _AGAINST), 0)
    lead, rest = said[:place], said[place + 1 :]
    with_whom = next((at for at, word in enumerate(lead) if word.folded in ("with", "w")), place)
    partner = lead[with_whom + 1 :] if with_me is None else words(with_me)
    if not rest or not _is_lead(lead[:with_whom]) or len(partner) > _LONGEST_NAME:
        return None
    if text == message.text and not partner:
        return None  # told in plain words: every other reader knows it
    found = _announced(text, lead[:with_whom], rest[0].span[0], chat)
    return found if found is None or not partner else _with(partner, found, message, chat)


def _is_lead(lead: Sequence[Word]) -> bool:
    folded = [word.folded for word in lead]
    known = all(word in _IN_THE_LEAD or number_of(word) is not None for word in folded)
    return known and bool(_OF_A_MATCH & set(folded))


def _announced(text: str, lead: Sequence[Word], start: int, chat: ChatView) -> MatchSaid | None:
    """The match of the names from `start` on; when and where may stand before them."""
    before = text[: lead[-1].span[1]] if lead else ""
    tells = clock(before) is not None or court_of(before) is not None
    line = f"next: {text[start:].strip(' .!')}" + (f", {before.strip()}" if tells else "")
    found = match_announced(read_message(line, chat), chat)
    return found if found is not None and len(found.mentions) == PAIR else None


def _with(
    partner: Sequence[Word], found: MatchSaid, message: Message, chat: ChatView
) -> MatchSaid | BookSaid | None:
    typed = " ".join(word.typed for word in partner)
    known = next(
        (one for one in message.mentions if one.typed == typed and not one.pronoun and one.players),
        None,
    )
    if known is None:
        is_new = all(map(may_bear_a_name, partner)) and not any(map(tells_a_state, partner))
        return _our_pair(message.text, typed, (), found) if is_new else None
    if known.certainty is not Certainty.SURE or known.players[0] in chat.theirs:
        return None
    if known.players[0] in chat.ours:
        return found
    return _our_pair(message.text, typed, (known,), found)


def _our_pair(text: str, typed: str, mentions: tuple[Mention, ...], then: MatchSaid) -> BookSaid:
    verb = BookVerb.OUR_PAIR
    return BookSaid(text=text, verb=verb, words=typed, mentions=mentions, then=then.text)
