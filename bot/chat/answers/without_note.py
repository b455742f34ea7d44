"""The last answer as it would be without a note, which stays in the book."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from bot.chat.answers.advised import advice_on, advised
from bot.chat.answers.claims_told import cut
from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import evidence_of, profiles_without
from bot.chat.answers.in_words import with_caution
from bot.chat.answers.standing import cannot_be, standing
from bot.chat.asked import Asked
from bot.chat.book_evidence import note_of
from bot.chat.names import find_mentions
from bot.chat.notes_dropped import words_to_drop
from bot.chat.reply import Reply
from bot.chat.wording import wording
from bot.chat.words import words, words_in
from knowledge.advice import Advice
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import TRAITS, PlayerId, Topic
from scouting_db.values import NoteId, NoteRow

MOST_LINES = 3
"""Lines of the answer without it."""

MOST_QUOTED = 3
"""Notes left out that are quoted."""

_OF_THE_QUESTION = words_in(
    "without minus ignoring leaving out counting took take taken remove removed drop dropped delete"
    " deleted ignore ignored leave left forget forgot away note notes would change changes say do"
    " call suggest advise pick tell look answer differently hadnt made noted them"
)


def without_note(desk: Desk, text: str) -> Reply:
    """The call without the note meant, or that it stands; whom to play where nothing was asked."""
    asked = desk.context.asked or Asked(topic=Topic.WHOM_TO_TARGET, text="")
    desk.context = replace(desk.context, asked=asked)
    where = standing(desk, asked)
    if where.faults:
        return cannot_be(asked, where)
    before, situation = advice_on(desk, asked, where)
    left_out = _meant(desk, text, before, situation)
    if not left_out:
        return Reply(text="\n".join([before.call, wording("without.none")]))
    bare = _without(desk, situation, left_out)
    after = with_caution(asked, advised(desk, bare, traced=False), bare)
    desk.trace |= {"advice": after, "topic": asked.topic}
    words_of = [f"“{cut(row.text)}”" for row in left_out]
    key = "without.same" if after.call == before.call else "without.other"
    told = [f"· {one.text} ({one.source})" for one in (*after.reasons, *after.lines)][:MOST_LINES]
    said = wording(key).format(notes=", ".join(words_of[:MOST_QUOTED]))
    return Reply(text="\n".join(filter(None, [after.call, *told, after.caution, said])))


def _meant(desk: Desk, text: str, advice: Advice, situation: Situation) -> tuple[NoteRow, ...]:
    """The notes that have the words said, of whoever is named; those behind the answer where the
    words are none but "that note"."""
    named = [one for one in find_mentions(words(text), desk.chat_view()) if not one.pronoun]
    players = {player for one in named for player in one.players}
    asked = set(words_to_drop(text, named)) - _OF_THE_QUESTION
    people = tuple(one.player for one in (*situation.ours, *situation.theirs))
    told = evidence_of(desk, people).notes
    known = {note_of(one) for player in players or people for one in told.get(player, ())}
    behind = [NoteId(int(one.split(":")[1])) for one in advice.evidence if one.startswith("note:")]
    rows = desk.book.notes_in(sorted(known))
    if asked:
        return tuple(row for row in rows if _says(row, asked))
    if players:
        return tuple(rows)
    return tuple(row for row in rows if row.note in behind)


def _says(row: NoteRow, asked: Collection[str]) -> bool:
    """Whether a word of the note, or of what was read from it, begins as one that was said."""
    labels = " ".join(TRAITS[one.trait].label for one in row.observations)
    has = [word.folded for word in words(f"{row.text} {labels}")]
    return any(word.startswith(one) or one.startswith(word) for one in asked for word in has)


def _without(desk: Desk, situation: Situation, left_out: Sequence[NoteRow]) -> Situation:
    people = [one.player for one in (*situation.ours, *situation.theirs)]
    gone = {row.note for row in left_out}
    profiles = profiles_without(desk, people, notes=gone, matches=())
    of_them: set[PlayerId] = {one.player for row in left_out for one in row.observations}

    def known(one: OnCourt) -> OnCourt:
        return replace(one, profile=profiles[one.player]) if one.player in of_them else one

    return replace(
        situation,
        ours=tuple(known(one) for one in situation.ours),
        theirs=tuple(known(one) for one in situation.theirs),
        jammed_hips=tuple(one for one in situation.jammed_hips if one.player not in of_them),
        kept_words=tuple(one for one in situation.kept_words if one.player not in of_them),
    )
