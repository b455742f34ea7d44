"""A match told of with a note behind it: "new match against ana and bo, ana is the lefty".

Only words that by themselves announce a pair stand before the note, and only what by itself is a
note on one of that pair behind it: so neither a note nor a question or a result becomes a match.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from bot.chat.announced_names import PAIR
from bot.chat.announcements import begins_as_match, clock, court_of
from bot.chat.forms import any_of
from bot.chat.match_announced import match_announced
from bot.chat.message import Message, read_message
from bot.chat.opponents_told import tells_only_of
from bot.chat.said import MatchSaid, Understood
from bot.chat.unknown_names import has_predicate, owns_a_skill, without_possessive
from bot.chat.view import ChatView
from bot.chat.words import Word, folded_line, words_in
from scouting_db.names import fold

_MARKS = frozenset(",;:.!\n(–—")
_CUTS = words_in("the a but who she he and")
"""Words at which a note may begin without a mark before it."""

_ARTICLES = words_in("the a an")
_AND = words_in("and n")
_FEWEST_BEFORE = 3
"""Words of the announcement: two names and a word between them."""

_OF_PLAY = words_in("first starts")
"""Who of them serves or starts is of play, though no match is on yet that could tell."""

_LONGEST = 40
_LONGEST_LOOKS = 4
"""Words that say how one of them looks: "the tall lad in red"."""

Settled = Callable[[str, Message, ChatView], Understood | None]


def announced_and_noted(message: Message, chat: ChatView, settled: Settled) -> MatchSaid | None:
    """The match, with what is told behind it as `then`; None for anything else.

    `settled` reads what has one meaning by its form: a server or a score is no note.
    """
    if chat.forwarded or message.asks or "?" in message.text or not _may_announce(message.said):
        return None
    cuts = [at for at in range(_FEWEST_BEFORE, len(message.said)) if _may_begin(message.said[at])]
    for place, at in enumerate(cuts):
        found = _announced(message, at, chat)
        if found is not None:
            start = _behind_the_schedule(message.said, cuts[place:])
            return None if start is None else _with_note(message, start, chat, settled)
    return None


def _may_announce(said: Sequence[Word]) -> bool:
    """Cheap to ask: most messages name no round and do not begin like an announcement."""
    if len(said) > _LONGEST:
        return False
    line = folded_line(said)
    is_round = any(any_of(f"announced.{of}").search(line) for of in ("bracket", "opponents"))
    return is_round or line.startswith("new match") or begins_as_match(said)


def _may_begin(word: Word) -> bool:
    return bool(_MARKS & set(word.gap)) or word.folded in _CUTS


def _announced(message: Message, at: int, chat: ChatView) -> MatchSaid | None:
    """The pair that the words before this one announce; the one we play already is no news."""
    text = message.text[: message.said[at - 1].span[1]]
    before = read_message(text, chat)
    found = None if before.asks else match_announced(before, chat)
    if found is None or len(found.mentions) != PAIR:
        return None
    players = {player for one in found.mentions for player in one.players}
    return None if chat.match_on and players == {*chat.theirs} else found


def _behind_the_schedule(said: Sequence[Word], cuts: Sequence[int]) -> int | None:
    """The first of the places behind which more is told than when, where or in what round."""
    ends = [*cuts[1:], len(said)]
    told = (at for at, end in zip(cuts, ends, strict=True) if not tells_only_of((), said[at:end]))
    return next(told, None)


def _with_note(message: Message, start: int, chat: ChatView, settled: Settled) -> MatchSaid | None:
    found = _announced(message, start, chat)
    if found is None:
        return None
    rest = message.text[message.said[start].span[0] :].strip()
    told = _by_looks(message.said[start:], found) or _note_on_them(rest, found, chat, settled)
    return None if told is None else replace(found, then=told)


def _by_looks(rest: Sequence[Word], found: MatchSaid) -> str | None:
    """ "The tall lad and red cap": how each looks, in the order in which they were named."""
    places = [at for at, word in enumerate(rest) if word.folded in _AND]
    if len(places) != 1 or rest[0].folded not in _ARTICLES or has_predicate(rest, 1):
        return None
    looks = [rest[: places[0]], rest[places[0] + 1 :]]
    if not all(0 < len(one) <= _LONGEST_LOOKS for one in looks):
        return None
    typed = [" ".join(word.typed for word in one) for one in looks]
    told = zip(found.mentions, typed, strict=True)
    return ". ".join(f"{one.typed} is {look}" for one, look in told)


def _note_on_them(rest: str, found: MatchSaid, chat: ChatView, settled: Settled) -> str | None:
    """The rest where it begins with a name of the pair and is neither of play nor of the day."""
    read = read_message(rest, chat)
    names = {part for one in found.mentions for part in fold(one.typed).split()}
    if read.asks or clock(rest) is not None or court_of(rest) is not None:
        return None
    if _OF_PLAY & {word.folded for word in read.said}:
        return None
    first = read.said[0].folded
    is_told = first in names and has_predicate(read.said, 1)
    is_owned = without_possessive(read.said, 0).lower() in names and owns_a_skill(read.said, 0)
    is_of_them = is_told or is_owned
    return rest if is_of_them and settled(rest, read, chat) is None else None
