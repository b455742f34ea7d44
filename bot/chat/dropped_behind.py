"""A note taken back behind what is told: "her bh isn't that weak after all, take back weak bh"."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.corrections_said import undo_said
from bot.chat.forms import word_set
from bot.chat.message import Message, names_somebody, weighed_note
from bot.chat.notes_dropped import as_told, notes_dropped
from bot.chat.said import BookSaid, BookVerb, Certainty, NoteSaid
from bot.chat.several_questions import part_of
from bot.chat.trait_holders_said import claims_of
from bot.chat.view import ChatView
from bot.chat.words import WORDS_READ_AT_MOST

_DENIED = word_set("denied_doing") | word_set("denied_being")
_MARKS = frozenset(",;.!\n–—")


def dropped_behind(message: Message, chat: ChatView) -> tuple[BookSaid | NoteSaid, ...]:
    """The note that goes, then what is told before; nothing where none is taken back so.

    What is taken back was said of whoever the words before name.
    """
    said = message.said
    marked = [at for at in range(1, len(said)) if set(said[at].gap) & _MARKS]
    is_cut = len(said) >= WORDS_READ_AT_MOST  # what stands behind would be read as its end
    if chat.forwarded or "?" in message.text or is_cut or not marked:
        return ()
    behind = part_of(message, marked[-1], len(said), chat)
    # "Delete" behind a mark may look like the name of somebody new.
    known = tuple(one for one in behind.mentions if one.certainty is not Certainty.NOBODY)
    dropped = notes_dropped(replace(behind, mentions=known), chat)
    if dropped is None and undo_said(behind.text, behind.said) is None:
        return ()
    told = part_of(message, 0, marked[-1], chat)
    named = [one for one in told.mentions if not one.pronoun]
    if dropped is None:
        if not _denies(told) or len(named) != 1:
            return ()
        # "Lena never cheats, scrap that": a note that says she does is to go.
        return (BookSaid(text=told.text, verb=BookVerb.DROP_NOTES, mentions=tuple(named)),)
    if told.asks:
        return ()
    if not dropped.mentions and len(named) == 1:
        claims = " ".join(as_told(one) for one in claims_of(f" {dropped.text}", chat))
        dropped = replace(dropped, words=claims, mentions=(replace(named[0], span=(0, 0)),))
    note = replace(weighed_note(told, chat), text=told.text.rstrip(" ,;–—"))
    return (dropped, note) if names_somebody(told) else (dropped,)


def _denies(told: Message) -> bool:
    return any(word.folded in _DENIED for word in told.said)
