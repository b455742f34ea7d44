"""Notes by whom they are of: those with a claim about a player, and those whose words name them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.names import find_mentions
from bot.chat.notes import read_note
from bot.chat.opponents_told import denied
from bot.chat.said import Certainty, Mention
from bot.chat.words import Word, words
from knowledge.regex import regex
from knowledge.situation import KeptWords, Situation
from knowledge.vocabulary import PlayerId, Topic, Trait
from scouting_db.names import fold
from scouting_db.values import NoteId, NoteRow, Part
from scouting_db.zones import local_day

MOST_IN_WORDS = 2
"""Notes kept as words that a report gives of a player: the newest."""

LOOKED_AT = 6
"""Of the newest notes that name somebody, those among which they are looked for."""

NOTES_SEARCHED = 200
"""The newest notes of a book, searched for a report; a list of notes searches all."""

_OPENING = regex(r"\s*(?:/n(?:otes?)?|notes?|take note)\b[\s:]*", re.IGNORECASE)


def names_player(desk: Desk, text: str, player: PlayerId) -> bool:
    """Whether the words name the player as the book would read them, alike names included.

    Whoever is named only as not meant ("sorry, not gretel") is not: the words are of another.
    """
    row = desk.view.player(player)
    if row is None:
        return False
    known = {part for name in (row.name, *row.aliases) for part in fold(name).split()}
    said = words(text)
    if known.isdisjoint(one for word in said for one in _may_be_named_by(word)):
        return False
    found = find_mentions(said, desk.chat_view())
    not_them = denied(said, found)
    return any(
        player in one.players and one.certainty is not Certainty.NOBODY and one not in not_them
        for one in found
    )


def _may_be_named_by(word: Word) -> tuple[str, str]:
    """The word, and the name that owns something in it: "sunnivas backhand"."""
    return word.folded, word.folded.removesuffix("s")


def notes_on(desk: Desk, player: PlayerId, *, limit: int) -> tuple[NoteRow, ...]:
    """Undeleted notes with a claim about the player or words that name them, newest first."""
    claimed = {row.note: row for row in desk.book.notes_of(player, limit=limit)}
    named = _naming(desk, player, desk.book.words_of_notes())
    in_words = desk.book.notes_in([note for note in named if note not in claimed][:limit])
    found = [
        row
        for row in in_words
        if not (_is_put_right(row, player) or _is_of_one_alike(desk, row, player))
    ]
    rows = sorted((*claimed.values(), *found), key=lambda row: (row.at, row.note), reverse=True)
    return tuple(rows[:limit])


def _naming(
    desk: Desk, player: PlayerId, notes: Sequence[tuple[NoteId, str]]
) -> tuple[NoteId, ...]:
    """Those whose words name the player."""
    return tuple(note for note, text in notes if names_player(desk, text, player))


def _is_put_right(row: NoteRow, player: PlayerId) -> bool:
    """Whether it was corrected to be of others, though its words still name the player."""
    read = row.observations
    is_of_others = all(one.player != player for one in read)
    return bool(read) and is_of_others and all(one.origin == "corrected" for one in read)


def _is_of_one_alike(desk: Desk, row: NoteRow, player: PlayerId) -> bool:
    """Whether its name fits several and what it claims is of others of them: it was asked about."""
    told = {one.player for one in row.observations}
    named = [one for one in _named_in(desk, row) if player in one.players]
    return player not in told and all(told.intersection(one.players) for one in named)


def with_kept_words(desk: Desk, situation: Situation) -> Situation:
    """For a report: what was noted of them in words that no trait covers."""
    if situation.topic is not Topic.OPPONENT_REPORT:
        return situation
    people = situation.asked.about or tuple(one.player for one in situation.theirs)
    trait = None if situation.asked.trait is None else situation.asked.trait.trait
    kept = desk.recall(
        ("kept words", people, trait, desk.zone),
        lambda: _kept_words(desk, people, trait),
        Part.NOTES,
        Part.PEOPLE,
    )
    return replace(situation, kept_words=kept)


def _kept_words(
    desk: Desk, people: Sequence[PlayerId], trait: Trait | None
) -> tuple[KeptWords, ...]:
    """The newest words on each that none of their claims carries, and what counts the trait."""
    newest = desk.book.newest_with_claims(limit=NOTES_SEARCHED)
    rows = {row.note: row for row in newest}
    words_of = [(row.note, row.text) for row in newest]
    naming = {player: _naming(desk, player, words_of)[:LOOKED_AT] for player in people}
    found = []
    for player, notes in naming.items():
        own = [rows[one] for one in notes if not _is_put_right(rows[one], player)]
        counting = [row for row in own if trait and _counts(row, player, trait)][:MOST_IN_WORDS]
        told = [
            (row, kept)
            for row in own
            if row not in counting and (kept := _kept_of(desk, row, player))
        ]
        found += [
            KeptWords(player=player, words=kept, day=local_day(row.at, desk.zone))
            for row, kept in told[:MOST_IN_WORDS]
        ]
        found += [
            KeptWords(
                player=player,
                words=_whole(row, _named_in(desk, row)),
                day=local_day(row.at, desk.zone),
                trait=trait,
            )
            for row in counting
        ]
    return tuple(found)


_COUNTED = regex(
    r"\d|\b(?:only|when|whenever|if|unless|except|until|after|once|half|most|mostly"
    r"|one|two|three|four|five) (?:of|in|out of|\w)",
    re.IGNORECASE,
)
"""What says how often, how many, or when."""


def _counts(row: NoteRow, player: PlayerId, trait: Trait) -> bool:
    """Whether the note claims the trait of the player in words that say more than the claim."""
    claims = any((one.player, one.trait) == (player, trait) for one in row.observations)
    return claims and _COUNTED.search(row.text) is not None


def _named_in(desk: Desk, row: NoteRow) -> list[Mention]:
    said = find_mentions(words(row.text), desk.chat_view())
    return [one for one in said if not one.pronoun]


def _whole(row: NoteRow, named: Sequence[Mention]) -> str:
    """The note without the name that it opens with."""
    opening = _OPENING.match(row.text)
    begins = 0 if opening is None else opening.end()
    is_led = bool(named) and not row.text[begins : named[0].span[0]].strip()
    begins = named[0].span[1] if is_led else begins
    return row.text[begins:].strip(" :,;.-") or row.text.strip()


def _kept_of(desk: Desk, row: NoteRow, player: PlayerId) -> str:
    """The whole of a note that claims nothing of the player; of another what it left as words.

    A bare count says nothing without what it counts: there the whole note is given too.
    """
    named = _named_in(desk, row)
    if all(one.player != player for one in row.observations):
        return _whole(row, named if len(named) == 1 else ())
    if len(named) != 1:
        return ""
    left = read_note(row.text, words(row.text), named, desk.chat_view()).kept
    kept = [one for one in left if len(one.split()) > 1 and not _is_claimed(row, one)]
    is_count = any(_BARE_COUNT.fullmatch(one) for one in kept)
    return _whole(row, named) if is_count else ", ".join(kept)


_BARE_COUNT = regex(r"(?:about |maybe |like )?\d+ (?:of|in|out of|for) \d+|\d+ ?%?", re.IGNORECASE)


def _is_claimed(row: NoteRow, kept: str) -> bool:
    """Whether a claim of the note stands on these words."""
    start = row.text.find(kept)
    spans = [one.span for one in row.observations if one.span is not None]
    unknown = any(one.span is None for one in row.observations)
    return unknown or any(at < start + len(kept) and start < end for at, end in spans)
