"""A match told as people say it: "next is mixed with tom against um a guy called hale and ruiz",
"back with tom, same opponents hale and ruiz at 4".

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
from bot.chat.opponents_told import tells_only_of
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
_BEHIND_A_PARTNER = _AGAINST | words_in("opponents opponent opps next play plays playing face")
"""What names our opponents once it is told with whom we play."""

_LEADS_TO_NAMES = _BEHIND_A_PARTNER | words_in("are is again its")
_US = words_in("im back playing play mixed mens womens men women doubles dubs")
"""One of these tells that the partner behind "with" is ours, where no word of a match does."""

_NO_PASSER_BY = words_in("back mixed mens womens doubles")
"""Whoever is named behind one of these plays with us, whatever stands before the other two."""

_BESIDE_US = _US | words_in("i am ill be again")
_SAME = words_in("same")
_MARKS = frozenset(",;:.!\n(–—")
_SCORE = regex(r"\d ?[-–] ?\d")
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
    with_whom = _with_whom(lead)
    partner = lead[with_whom + 1 :] if with_me is None else words(with_me)
    if not rest or not _is_lead(lead[:with_whom]) or len(partner) > _LONGEST_NAME:
        return _with_ours(text, said, message, chat)
    if text == message.text and not partner:
        return None  # told in plain words: every other reader knows it
    found = _announced(text, _typed(text, lead[:with_whom]), rest[0].span[0], chat)
    return found if found is None or not partner else _with(partner, found, message, chat)


def _with_ours(
    text: str, said: Sequence[Word], message: Message, chat: ChatView
) -> MatchSaid | BookSaid | None:
    """The same where it opens with us: "im back with tom at 4 on court 3, against hale and ruiz".

    Nothing but when, where and in what round may stand beside the names: what is told or asked of
    them is none of it, and a score tells how it went.
    """
    with_whom = _with_whom(said)
    lead, behind = said[:with_whom], said[with_whom + 1 :]
    folded = {word.folded for word in lead if number_of(word.folded) is None}
    if message.asks or not folded & _US or not folded <= _IN_THE_LEAD | _BESIDE_US:
        return None
    stop = next((at for at, word in enumerate(behind) if at and _ends_a_name(word)), len(behind))
    place = next((at for at, one in enumerate(behind) if one.folded in _BEHIND_A_PARTNER), 0)
    if not place and folded & _NO_PASSER_BY and stop < len(behind):
        place = stop  # "back with tom. hale and ruiz at 4"
    start = next(
        (at for at in range(place, len(behind)) if behind[at].folded not in _LEADS_TO_NAMES), place
    )
    between = [word for word in behind[stop:place] if word.folded not in _SAME]
    if not 0 < stop <= min(place, _LONGEST_NAME) or not tells_only_of((), between):
        return None
    when = _when(f"{_typed(text, lead)} {_typed(text, behind[stop:place])}")
    found = _announced(text, when, behind[start].span[0], chat)
    is_all = found is not None and tells_only_of(found.mentions, words(found.text))
    if found is None or not is_all or _SCORE.search(text):
        return None
    return _with(behind[:stop], found, message, chat)


def _when(told: str) -> str:
    """The time and the court of such words, and nothing else of them."""
    at, court = clock(told), court_of(told)
    found = (at and f"{at:%H:%M}", court and f"court {court}")
    return ", ".join(one for one in found if one)


def _typed(text: str, said: Sequence[Word]) -> str:
    return text[said[0].span[0] : said[-1].span[1]] if said else ""


def _with_whom(said: Sequence[Word]) -> int:
    return next((at for at, word in enumerate(said) if word.folded in ("with", "w")), len(said))


def _ends_a_name(word: Word) -> bool:
    is_known = word.folded in _IN_THE_LEAD | _BEHIND_A_PARTNER | _SAME
    return bool(_MARKS & set(word.gap)) or is_known or number_of(word.folded) is not None


def _is_lead(lead: Sequence[Word]) -> bool:
    folded = [word.folded for word in lead]
    known = all(word in _IN_THE_LEAD or number_of(word) is not None for word in folded)
    return known and bool(_OF_A_MATCH & set(folded))


def _announced(text: str, before: str, start: int, chat: ChatView) -> MatchSaid | None:
    """The match of the names from `start` on; when and where may be told in what is `before`."""
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
