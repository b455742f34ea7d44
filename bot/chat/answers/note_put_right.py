"""A note put right by the next message: its claims give way to what is said instead."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers import corrections, notes
from bot.chat.answers.claims_told import observed_line
from bot.chat.answers.desk import Desk
from bot.chat.note_put_right import told_instead, wing_instead
from bot.chat.private_words import is_private
from bot.chat.reply import Reply
from bot.chat.said import NoteSaid
from bot.chat.understand import understand_note
from bot.chat.wording import wording
from knowledge.vocabulary import TRAITS, Trait, Wing
from scouting_db.values import NewObservation, NoteRow

MOST_TRAITS_TRIED = 2
"""Traits of the note before that a bare "no, she is good at it" may be said of."""


def put_right(desk: Desk, said: NoteSaid) -> Reply | None:
    """The note with what was said instead; None where it is a note of its own."""
    if not said.corrects or desk.after_note is None:
        return None
    row = desk.book.note(desk.after_note)
    if row is None or row.deleted or not row.observations:
        return None
    if said.about_body or is_private(said.text):
        return None
    wing = wing_instead(said.text)
    if wing is not None:
        return corrections.rewrite(desk, row, [_on(wing, one) for one in row.observations])
    told = _told(desk, row, said)
    if told:
        desk.book.add_note(said.text, chat=desk.chat.chat, parser=notes.PARSER_VERSION)
        if not _is_of_another(row, told):
            return corrections.replace_claims(desk, row, told)
        return corrections.attribute(desk, row, [told[0].player])
    if said.claims:
        return None
    kept = notes.take(desk, said)
    stands = wording("note.stands").format(claims=observed_line(desk, row.observations))
    return replace(kept, text="\n".join([kept.text, stands]))


def _told(desk: Desk, row: NoteRow, said: NoteSaid) -> Sequence[NewObservation]:
    """What it says of a trait that the note told of, or of whom it was told."""
    whose = {(one.player, one.trait) for one in row.observations}
    claims = notes.observations(said)
    offered = notes.observations(replace(said, claims=said.offered))
    for found in (claims, offered if not claims else ()):
        if any((one.player, one.trait) in whose for one in found):
            return [one for one in found if found is claims or (one.player, one.trait) in whose]
    if claims:
        return claims if _is_of_another(row, claims) else ()
    return _of_its_traits(desk, row, said.text)


def _on(wing: Wing, one: NewObservation) -> NewObservation:
    """The observation of the same stroke on that wing; of a trait that has no wings as it is."""
    twin = one.trait.value.replace(wing.other.value, wing.value)
    return replace(one, trait=Trait(twin)) if twin in {*Trait} else one


def _is_of_another(row: NoteRow, told: Sequence[NewObservation]) -> bool:
    """ "Okafor is slow", "no, hale is slow": the same, told of somebody else."""
    was = {(one.trait, one.value, one.denied) for one in row.observations}
    players = {one.player for one in told}
    is_same = {(one.trait, one.value, one.denied) for one in told} == was
    return is_same and len(players) == 1 and not players & {one.player for one in row.observations}


def _of_its_traits(desk: Desk, row: NoteRow, text: str) -> Sequence[NewObservation]:
    """A bare judgement read as one of what the note told of: "no wait she is good at it"."""
    found = []
    for one in list({each.trait: each for each in row.observations}.values())[:MOST_TRAITS_TRIED]:
        view = replace(desk.chat_view(), focus=(one.player,), replying_to_note=True)
        said = understand_note(f"{TRAITS[one.trait].label} {told_instead(text)}", chat=view)
        found += [
            replace(each, span=None)
            for each in notes.observations(said)
            if (each.player, each.trait) == (one.player, one.trait)
        ]
    return found
