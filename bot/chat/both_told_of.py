"""What is told of both of them: "both of em jam at body", "they both lefty".

Such a line opens with them and asks nothing. What "they" do, without a "both of", is as often a
trouble that wants an answer, so there only plain facts, a hand or a side, are taken as told.
"""

from __future__ import annotations

from bot.chat.message import Message, weighed_note
from bot.chat.said import NoteSaid
from bot.chat.view import ChatView
from knowledge.regex import regex
from knowledge.vocabulary import TRAITS, TraitKind

_LEADS = r"^(?:(?:and|so|ok|okay|btw|also|oh|note|fyi) )*"
_BOTH_OF_THEM = regex(
    rf"{_LEADS}(?:both of (?:them|em|these(?: two| guys)?|those(?: two| guys)?))\b"
)
_THEY_BOTH = regex(rf"{_LEADS}(?:they|theyre|both|these two|those two)(?: are| r|re)?(?: both)?\b")
_ASKS_TOO = regex(
    r"\b(?:how|what|where|who|why|which|should|can|could|do (?:i|we)|help|advice|us|me|we|my|our)\b"
)
_PAST = regex(r"\b(?!need|speed|feed)\w+ed\b|\b(?:hit|got|went|was|were|lost|won)\b")
"""Told of a rally and not of what they do."""


def both_told_of(message: Message, chat: ChatView) -> NoteSaid | None:
    """The note about both of them; None for anything else."""
    line = " ".join(word.folded for word in message.said)
    if "?" in message.text or message.asks or _ASKS_TOO.search(line) or _PAST.search(line):
        return None
    is_of_both = _BOTH_OF_THEM.search(line) is not None
    if not message.note.claims or not (is_of_both or _THEY_BOTH.search(line)):
        return None
    if not {one.player for one in message.note.claims} <= set(chat.theirs):
        return None
    note = weighed_note(message, chat)
    facts = all(TRAITS[one.trait].kind is TraitKind.FACT for one in note.claims)
    return note if note.claims and (is_of_both or facts) else None
