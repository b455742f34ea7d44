"""Corrections: by replying to a message of ours, by editing one's own, or by "no, it was ..."."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers import notes
from bot.chat.answers.claims_told import observed_line
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.name_left_open import asked_of_note, with_name_open
from bot.chat.answers.names import ask_which, settled
from bot.chat.answers.note_rewritten import replace_claims, rewrite
from bot.chat.answers.opponents_put_right import opponents_put_right
from bot.chat.answers.questions import answer_asked
from bot.chat.asked import Asked
from bot.chat.names import mentions_of
from bot.chat.note_put_right import says_it_is_so, says_nothing_more
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import Certainty, CorrectionSaid, NoteSaid
from bot.chat.understand import understand_note
from bot.chat.wording import wording
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId, Value
from scouting_db.values import NoteId, NoteRow

DELETING = frozenset(
    f"{verb}{what}"
    for verb in ("delete", "remove", "undo", "scratch", "forget")
    for what in ("", " it", " that", " this", " note", " the note")
)


def correct(desk: Desk, said: CorrectionSaid) -> Reply:
    """ "No, the other one", "scratch that, it was Lindqvist": of the last note or question."""
    put_right = opponents_put_right(desk, said)
    if put_right is not None:
        return put_right
    players = settled(said.mentions)
    if players and _PARTNER.search(said.text) and all(one.pronoun for one in said.mentions):
        players = ()  # "no, his partner" says whose it is not
    asked = desk.context.asked
    note = None if asked is not None and desk.context.asked_last else _last_note(desk)
    if players is None:
        # A name that nobody bears must not fall through to deleting what was noted.
        number = None if note is None else note.note
        return ask_which(desk, said.text, said.mentions, note=number)
    denied = settled(said.denied) or ()
    if note is not None and note.observations and said.both:
        return attribute(desk, note, _two_of(desk, note))
    if note is not None and said.untrue and says_it_is_so(said.text) and not _denies(note):
        text = wording("note.as_it_was").format(claims=observed_line(desk, note.observations))
        return Reply(text=text, about=("note", note.note))
    if note is not None and said.untrue:
        return notes.delete(desk, note.note)
    if note is not None and note.observations and _meansthe_other(said, players, denied, note):
        players = the_other(desk, [note.observations[0].player])
    if note is not None and players and _is_of(note, players) and not _names_any(said):
        text = wording("note.as_it_was").format(claims=observed_line(desk, note.observations))
        return Reply(text=text, about=("note", note.note))
    if note is not None and players:
        asked_of = asked_of_note(desk)
        reply = attribute(desk, note, players)
        return with_name_open(desk, reply, asked_of, but=(*denied, *players))
    if note is not None and denied:
        return Reply(text=wording("name.whom"))
    if asked is not None:
        meant = _meant_instead(desk, asked, players, denied)
        if meant is not None:
            return answer_asked(desk, meant)
    if note is not None and _OTHER.search(said.text):
        return _whose_words(desk, note)
    if note is not None:
        return notes.delete(desk, note.note)
    return Reply(text=wording("nothing_to_undo" if asked is None else "name.whom"))


def _meansthe_other(
    said: CorrectionSaid,
    players: Sequence[PlayerId],
    denied: Sequence[PlayerId],
    note: NoteRow,
) -> bool:
    """ "No, the other one"; and a "no, him" that would change nothing."""
    is_pronoun = all(one.pronoun for one in said.mentions)
    same = list(players) == [note.observations[0].player] and is_pronoun
    return not denied and (not players or (same and says_nothing_more(said.text)))


def _is_of(note: NoteRow, players: Sequence[PlayerId]) -> bool:
    return {one.player for one in note.observations} == {*players}


_NEGATION = regex(
    r"\b(?:never|not|no|rarely|hardly|seldom|nothing|without|cannot)\b|n['’]?t\b",
    re.IGNORECASE,
)


def _denies(note: NoteRow) -> bool:
    """Whether it holds something for not so or seldom, which "she does" takes back."""
    is_denied = any(one.denied or one.value is Value.RARELY for one in note.observations)
    return is_denied or _NEGATION.search(note.text) is not None


def _names_any(said: CorrectionSaid) -> bool:
    return any(not one.pronoun for one in said.mentions)


_OTHER = regex(r"\b(?:other|partner|wrong (?:one|player|guy|name))\b", re.IGNORECASE)
_PARTNER = regex(r"\b(?:partner|pard)\b", re.IGNORECASE)


def _whose_words(desk: Desk, note: NoteRow) -> Reply:
    """A note of words only is nobody's yet: they stay, and come again with the right name."""
    change = desk.book.last_change(desk.chat.chat)
    buttons = rows([undo_button(change.change)]) if change is not None else ()
    return Reply(text=wording("note.whose_words"), buttons=buttons, about=("note", note.note))


def reply_to_note(desk: Desk, note: NoteId, text: str, said: NoteSaid | None) -> Reply:
    """A reply to our message about a note: delete it, say whose it is, or say what is right."""
    row = desk.book.note(note)
    if row is None:
        return Reply(text=wording("unclear.too_old"))
    if text.strip().rstrip(".!").lower() in DELETING:
        return notes.delete(desk, note)
    if said is None:
        return Reply(text=wording("name.who_is"))
    desk.book.add_note(text, chat=desk.chat.chat, parser=notes.PARSER_VERSION)
    if said.claims:
        return replace_claims(desk, row, notes.observations(said))
    players = settled(said.mentions)
    if players is None:
        return ask_which(desk, text, said.mentions, note=note)
    if players:
        return attribute(desk, row, players)
    return Reply(text=wording("note.all_words"), about=("note", note))


def name_settled(desk: Desk, note: NoteId, said: NoteSaid) -> Reply:
    """A message about a note again, with a name settled: whose the note is, or its own words."""
    row, players = desk.book.note(note), settled(said.mentions)
    if row is not None and row.observations and players and not said.claims:
        return attribute(desk, row, players)
    return notes.read_again(desk, note, said, origin="parsed")


def whom_it_says(desk: Desk, note: NoteId) -> tuple[PlayerId, ...]:
    """The player whom the note speaks of first: a bare "righty" in reply is about them."""
    row = desk.book.note(note)
    return () if row is None else tuple(one.player for one in row.observations[:1])


def _meant_instead(
    desk: Desk, asked: Asked, players: tuple[PlayerId, ...], denied: Sequence[PlayerId]
) -> Asked | None:
    """The question about whom it should have been; None where nobody is named or known."""
    left = tuple(one for one in asked.about if one not in denied)
    if not players and left and len(left) < len(asked.about):
        return replace(asked, about=left)
    players = players or the_other(desk, asked.about)
    if not players:
        return None
    ours, about_ours = {*desk.ours}, [one for one in asked.about if one in desk.ours]
    if ours.issuperset(players) and not about_ours and asked.about:
        return replace(asked, asker=players[0])  # who of us plays the ball, not whom it is about
    wrong = [one for one in asked.about if one in denied] or [*asked.about]
    kept = [one for one in asked.about if one not in wrong and one not in players]
    own = next((one for one in players if one in desk.ours), None)
    pulled = own if asked.pulled_wide in (*wrong, *denied) else asked.pulled_wide
    about = (*players, *kept)
    return replace(asked, about=about, pulled_wide=pulled, hands=())


def _last_note(desk: Desk) -> NoteRow | None:
    change = desk.book.last_change(desk.chat.chat)
    if change is None or change.verb not in ("add_note", "read_note", "add_claim"):
        return None
    row = desk.book.note(NoteId(change.targets["note"]))
    return None if row is None or row.deleted else row


def the_other(desk: Desk, about: Sequence[PlayerId]) -> tuple[PlayerId, ...]:
    """The partner of whoever was meant, in the current match or as far as the book knows."""
    for pair in (desk.context.theirs, desk.ours):
        if len(about) == 1 and about[0] in pair and len(pair) == 2:
            return tuple(player for player in pair if player != about[0])
    partner = desk.view.partner_of(about[0]) if len(about) == 1 else None
    return () if partner is None else (partner,)


def attribute(desk: Desk, row: NoteRow, players: Sequence[PlayerId]) -> Reply:
    """The note was about somebody else, or several: what it says of its first player moves over."""
    if not row.observations:
        return _read_for(desk, row, players[0])
    wrong = row.observations[0].player
    moved = [
        replace(one, player=player)
        for one in row.observations
        for player in (players if one.player == wrong else (one.player,))
    ]
    return rewrite(desk, row, moved)


def _two_of(desk: Desk, row: NoteRow) -> tuple[PlayerId, ...]:
    """Both whom the note names, or whom it is about and the partner."""
    about = row.observations[0].player
    named = [
        one.players[0]
        for one in mentions_of(row.text, desk.chat_view())
        if one.certainty is Certainty.SURE and not one.pronoun
    ]
    others = dict.fromkeys(one for one in named if one != about)
    return (about, *(others or the_other(desk, (about,))))


def _read_for(desk: Desk, row: NoteRow, player: PlayerId) -> Reply:
    """A note that named nobody, read as this player's."""
    view = replace(desk.chat_view(), focus=(player,), theirs=(), ours=())
    said = understand_note(row.text, chat=view)
    if not said.claims:
        said = understand_note(f"{desk.view.name_of(player)}: {row.text}", chat=view)
    return notes.read_again(desk, row.note, said, origin="corrected")
