"""The note of one given to another, and what is told of the one beside it."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers import corrections, notes
from bot.chat.answers.desk import Desk
from bot.chat.handed_over import HandedOver
from bot.chat.note_parts import says_one_of
from bot.chat.notes_dropped import words_to_drop
from bot.chat.reply import Reply
from bot.chat.said import Claim, NoteSaid
from bot.chat.understand import understand_note
from knowledge.vocabulary import PlayerId
from scouting_db.values import NoteRow


def hand_over(desk: Desk, row: NoteRow, told: HandedOver) -> Reply | None:
    """The note moved to whom it was of; None where it is theirs, or something else is told."""
    whose = {one.player for one in row.observations}
    wrong, right = row.observations[0].player, told.right.players[0]
    if whose != {wrong} or right == wrong:
        return None
    if told.retells:
        rest = _read(desk, told.behind, right)
        return corrections.attribute(desk, row, [right]) if _is_same(row, rest) else None
    rest = _read(desk, told.behind, wrong)
    beside = _beside(row, rest, wrong, right)
    moved = corrections.attribute(desk, row, [right])
    if not beside:
        desk.book.add_note(told.behind, chat=desk.chat.chat, parser=notes.PARSER_VERSION)
        return moved
    players = tuple(dict.fromkeys(one.player for one in beside))
    about = replace(told.right, pronoun=True, players=players[:1])
    kept = notes.take(desk, replace(rest, claims=beside, offered=(), mentions=(about,)))
    return replace(kept, text=f"{moved.text}\n{kept.text}")


def _read(desk: Desk, text: str, of: PlayerId) -> NoteSaid:
    return understand_note(text, chat=replace(desk.chat_view(), focus=(of,), replying_to_note=True))


def _is_same(row: NoteRow, rest: NoteSaid) -> bool:
    """Whether it tells of what the note told, or in words without a trait what it said."""
    noted = {one.trait for one in row.observations}
    claims = (*rest.claims, *rest.offered)
    if claims:
        return any(one.trait in noted for one in claims)
    own = words_to_drop(rest.text, rest.mentions)
    return not own or says_one_of(row.text, own)


def _beside(row: NoteRow, rest: NoteSaid, wrong: PlayerId, right: PlayerId) -> tuple[Claim, ...]:
    """What is told of whom the note was of, else of whom it is; what the note told itself is not
    told again."""
    noted = {(one.trait, one.value, one.denied) for one in row.observations}
    traits = {trait for trait, _, _ in noted}
    meant = [one for one in rest.offered if one.trait in traits] if not rest.claims else ()
    names_them = any(not one.pronoun for one in rest.mentions)
    return tuple(
        one if names_them else replace(one, player=wrong if one.trait in traits else right)
        for one in (*rest.claims, *meant)
        if (one.trait, one.value, one.denied) not in noted
    )
