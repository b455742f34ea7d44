"""The first names of people known by one name: "marek dorn, ollie keogh", "dorn is marek dorn"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.message import Message
from bot.chat.moods import tells_a_state
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.trait_lexicon import trait_phrases
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word, words_in
from scouting_db.sounds import fold
from scouting_db.values import PlayerRow

_LEAD = words_in(
    "its thats theyre they are is it that the their full first names name ok so and btw fyi yes"
    " opponents opps them"
)
_AND = words_in("and n plus")
_IS = words_in("is are was s")
PAIR = 2
_CALLED = (
    ("is", "called"),
    ("is", "named"),
    ("called",),
    ("first", "name", "is"),
    ("first", "name"),
)


def full_name_told(message: Message, chat: ChatView) -> BookSaid | None:
    """The first of the names told, what follows it still to be read; None for anything more."""
    said = message.said
    if chat.forwarded or message.asks or "?" in message.text:
        return None
    start = 0
    while start < len(said) and said[start].folded in _LEAD:
        start += 1
    rest = said[start:]
    return _in_full(message, rest, chat) or _by_first(message, rest, chat)


def _in_full(message: Message, rest: Sequence[Word], chat: ChatView) -> BookSaid | None:
    """ "Dorn is marek dorn", and "marek dorn, ollie keogh": one alone is written as a name, since
    "stats dorn" asks.
    """
    if len(rest) > 2 and (row := _known(rest[0], chat)) is not None:
        first, last = rest[-2:]
        is_same = _known(last, chat) == row and {one.folded for one in rest[1:-2]} <= _IS
        return _renamed(message, row, last, first) if is_same and _is_first(first, chat) else None
    told = [word for word in rest if word.folded not in _AND]
    names = list(zip(told[::2], told[1::2], strict=False))
    known = [_known(last, chat) for _, last in names]
    if (
        not names
        or len(told) % 2
        or len(names) > PAIR
        or None in known
        or len(known) > len({*known})
    ):
        return None
    if not all(_is_first(first, chat) for first, _ in names):
        return None
    if len(names) == 1 and not names[0][0].is_capitalised:
        return None
    (first, last), *more = names
    then = [f"{last.typed} is {first.typed} {last.typed}" for first, last in more]
    row = _known(last, chat)
    return None if row is None else _renamed(message, row, last, first, then=" ".join(then))


def _by_first(message: Message, rest: Sequence[Word], chat: ChatView) -> BookSaid | None:
    """ "Dorn is called marek", "keoghs first name is ollie", "ollie is keoghs first name"."""
    if len(rest) < 3:
        return None
    inside = tuple(word.folded for word in rest[1:-1])
    row = _known(rest[0], chat)
    if row is not None and inside in _CALLED and _is_first(rest[-1], chat):
        return _renamed(message, row, rest[0], rest[-1])
    if len(rest) == 5 and inside[0] == "is" and inside[2:] == ("first",):
        row = _known(rest[2], chat) if rest[-1].folded == "name" else None
        if row is not None and _is_first(rest[0], chat):
            return _renamed(message, row, rest[2], rest[0])
    return None


def _known(word: Word, chat: ChatView) -> PlayerRow | None:
    """Who bears this name and no other; "keoghs" is Keogh's."""
    names = {word.folded, word.folded.removesuffix("s")}
    found = [row for row in chat.roster if fold(row.name) in names and row.player not in chat.ours]
    return found[0] if len(found) == 1 else None


def _is_first(word: Word, chat: ChatView) -> bool:
    """Whether it may be a first name that nobody of the book bears, and nothing told of them."""
    taken = {fold(part) for row in chat.roster for part in row.name.split()}
    if word.folded in taken or word.folded in trait_phrases().words:
        return False
    return may_bear_a_name(word) and not tells_a_state(word)


def _renamed(
    message: Message, row: PlayerRow, last: Word, first: Word, *, then: str = ""
) -> BookSaid:
    who = Mention(typed=last.typed, span=last.span, certainty=Certainty.SURE, players=(row.player,))
    name = first.typed if first.is_capitalised else first.typed.capitalize()
    return BookSaid(
        text=message.text,
        verb=BookVerb.RENAME_PLAYER,
        words=f"{row.name} to {name} {row.name}",
        mentions=(who,),
        then=then,
    )
