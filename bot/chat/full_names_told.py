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
from knowledge.dataclass import dataclass
from scouting_db.sounds import fold
from scouting_db.values import PlayerRow

_LEAD = words_in(
    "its thats theyre they are is it that the their full first names name ok so and btw fyi yes"
    " opponents opps them"
)
_AND = words_in("and n plus")
_IS = words_in("is are was s")
PAIR = 2
LONGEST = 9
"""Words of such a message: two names with what leads to them."""
_FIRST_NAME = (["first", "name", "is"], ["first", "name"])


def full_name_told(message: Message, chat: ChatView) -> BookSaid | None:
    """The first of the names told, what follows it still to be read; None for anything more."""
    said = message.said
    if chat.forwarded or message.asks or "?" in message.text or len(said) > LONGEST:
        return None
    meant = {player for one in message.mentions for player in one.players} - {*chat.ours}
    by_one = tuple(row for row in chat.roster if row.player in meant and " " not in row.name)
    if not by_one:
        return None
    start = 0
    while start < len(said) and said[start].folded in _LEAD:
        start += 1
    told = _Told(message=message, chat=chat, by_one=by_one)
    return told.in_full(said[start:]) or told.by_first(said[start:])


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """`by_one` are those the message may name whom the book knows by one name."""

    message: Message
    chat: ChatView
    by_one: tuple[PlayerRow, ...]

    def in_full(self, rest: Sequence[Word]) -> BookSaid | None:
        """ "Dorn is marek dorn", and "marek dorn, ollie keogh": one alone is written as a name,
        since "stats dorn" asks.
        """
        if len(rest) > PAIR and (row := self._known(rest[0])) is not None:
            first, last = rest[-2:]
            is_same = self._known(last) == row and {one.folded for one in rest[1:-2]} <= _IS
            return self._renamed(row, last, first) if is_same and self._is_first(first) else None
        told = [word for word in rest if word.folded not in _AND]
        names = list(zip(told[::2], told[1::2], strict=False))
        known = [row for _, last in names if (row := self._known(last)) is not None]
        is_whole = len(told) == PAIR * len({*known}) and len(names) in (1, PAIR)
        if not is_whole or not all(self._is_first(first) for first, _ in names):
            return None
        if len(names) == 1 and not names[0][0].is_capitalised:
            return None
        (first, last), *more = names
        then = [f"{last.typed} is {first.typed} {last.typed}" for first, last in more]
        return self._renamed(known[0], last, first, then=" ".join(then))

    def by_first(self, rest: Sequence[Word]) -> BookSaid | None:
        """ "Keoghs first name is ollie", "ollie is keoghs first name"."""
        said = [word.folded for word in rest]
        if said[1:-1] in _FIRST_NAME:
            last, first = rest[0], rest[-1]
        elif said[1:2] == ["is"] and said[3:] == ["first", "name"]:
            last, first = rest[2], rest[0]
        else:
            return None
        row = self._known(last)
        return None if row is None or not self._is_first(first) else self._renamed(row, last, first)

    def _known(self, word: Word) -> PlayerRow | None:
        """Who bears this name and no other; "keoghs" is Keogh's."""
        names = {word.folded, word.folded.removesuffix("s")}
        return next((row for row in self.by_one if fold(row.name) in names), None)

    def _is_first(self, word: Word) -> bool:
        """Whether it may be a first name that nobody in the book bears, and tells nothing."""
        taken = {fold(part) for row in self.chat.roster for part in row.name.split()}
        if word.folded in taken or word.folded in trait_phrases().words:
            return False
        return may_bear_a_name(word) and not tells_a_state(word)

    def _renamed(self, row: PlayerRow, last: Word, first: Word, *, then: str = "") -> BookSaid:
        who = Mention(
            typed=last.typed, span=last.span, certainty=Certainty.SURE, players=(row.player,)
        )
        name = first.typed if first.is_capitalised else first.typed.capitalize()
        return BookSaid(
            text=self.message.text,
            verb=BookVerb.RENAME_PLAYER,
            words=f"{row.name} to {name} {row.name}",
            mentions=(who,),
            then=then,
        )
