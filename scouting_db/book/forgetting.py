"""Forgetting a player for good: the name everywhere, what notes say of them, and their figures.

What they played stays as matches of nobody: rallies keep who won, not who hit the ball.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from sqlalchemy import BindParameter, bindparam, delete, or_, select, update

from knowledge.vocabulary import PlayerId
from scouting_db.book.scope import Scope
from scouting_db.tables import (
    agreement,
    alias,
    change,
    choice,
    match,
    note,
    observation,
    pair,
    plan,
    player,
    rally,
    rally_rate,
)
from scouting_db.values import MatchId, NoteId

NOBODY = "somebody"
"""What a forgotten player is called where a match needs an opponent."""

_BOOK: BindParameter[int] = bindparam("book")
_WHO: BindParameter[int] = bindparam("player")
_PAIRS = select(pair.c.pair_id).where(
    pair.c.book_id == _BOOK, or_(pair.c.player_a == _WHO, pair.c.player_b == _WHO)
)
_FORGET = (
    delete(rally_rate).where(rally_rate.c.book_id == _BOOK, rally_rate.c.player_id == _WHO),
    update(rally)
    .where(rally.c.book_id == _BOOK, rally.c.by_player == _WHO)
    .values(by_player=None, words=None),
    update(choice)
    .where(choice.c.book_id == _BOOK, choice.c.against_player == _WHO)
    .values(against_player=None),
    delete(agreement).where(agreement.c.book_id == _BOOK, agreement.c.pair_id.in_(_PAIRS)),
    # A plan's lines name whom it is against, so none is kept that may name them.
    delete(plan).where(
        plan.c.book_id == _BOOK, or_(plan.c.our_pair.in_(_PAIRS), plan.c.their_pair.in_(_PAIRS))
    ),
    delete(observation).where(observation.c.book_id == _BOOK, observation.c.player_id == _WHO),
    delete(alias).where(alias.c.book_id == _BOOK, alias.c.player_id == _WHO),
    update(player)
    .where(player.c.book_id == _BOOK, player.c.player_id == _WHO)
    .values(name=NOBODY, forgotten_at=bindparam("when")),
    # What stood before a change is kept beside it, with names and words: none of it may stay.
    delete(change).where(change.c.book_id == _BOOK),
)
_EVERYTHING_SAYS_ELSE = tuple(
    update(table).where(table.c.book_id == _BOOK).values(changed=bindparam("version"))
    for table in (note, match)
)
_WORDS = select(note.c.note_id, note.c.text).where(note.c.book_id == _BOOK)
_DROP_CLAIMS = delete(observation).where(
    observation.c.book_id == _BOOK, observation.c.note_id == bindparam("note")
)
_DROP_NOTE = delete(note).where(note.c.book_id == _BOOK, note.c.note_id == bindparam("note"))
_REWORD = (
    update(note)
    .where(note.c.book_id == _BOOK, note.c.note_id == bindparam("note"))
    .values(text=bindparam("new_text"))
)
_SPANS_NOWHERE = (
    update(observation)
    .where(observation.c.book_id == _BOOK, observation.c.note_id == bindparam("note"))
    .values(span_from=None, span_to=None, origin="corrected")
)
_RALLY_WORDS = select(rally.c.match_id, rally.c.n, rally.c.words).where(
    rally.c.book_id == _BOOK, rally.c.words.is_not(None)
)
_DROP_RALLY_WORDS = (
    update(rally)
    .where(
        rally.c.book_id == _BOOK,
        rally.c.match_id == bindparam("match"),
        rally.c.n == bindparam("number"),
    )
    .values(words=None)
)


class Forgetting(Scope):
    """What is done here cannot be undone."""

    def all_words(self) -> Mapping[NoteId, str]:
        """Every note's words, deleted notes included: they are still there to be erased."""
        return {NoteId(row.note_id): row.text for row in self._read(_WORDS)}

    def all_rally_words(self) -> Mapping[tuple[MatchId, int], str]:
        """The words of every rally that was told in any."""
        rows = self._read(_RALLY_WORDS)
        return {(MatchId(row.match_id), int(row.n)): row.words for row in rows}

    def erase_note(self, note: NoteId) -> None:
        """The words and what they said, for good."""
        for statement in (_DROP_CLAIMS, _DROP_NOTE):
            self._write(statement, {"note": note})

    def reword_note(self, note: NoteId, text: str) -> None:
        """Other words for a note whose claims stand: they carry no place in the words then."""
        self._write(_REWORD, {"note": note, "new_text": text})
        self._write(_SPANS_NOWHERE, {"note": note})

    def erase_rally_words(self, match: MatchId, n: int) -> None:
        """What was told of a rally beyond who won it and how it ended."""
        self._write(_DROP_RALLY_WORDS, {"match": match, "number": n})

    def forget_player(self, player: PlayerId) -> None:
        """The name and all that is told of them; erase or reword their notes before."""
        values: dict[str, Any] = {"player": player, "when": self._now}
        for statement in _FORGET:
            self._write(statement, values)
        for statement in _EVERYTHING_SAYS_ELSE:
            self._write(statement, {"version": self._stamp()})
