"""A run of rallies with how they went behind it: "lost 3 in a row, okafor flicked me twice".

The run is asked about as it is alone; what it tells of somebody else is kept as a note.
"""

from __future__ import annotations

from bot.chat.message import Message, opponents, read_message, weighed_note
from bot.chat.note_or_question import begins_as_note
from bot.chat.runs_said import several_rallies
from bot.chat.said import Certainty, RallySaid, RemarkSaid, Understood
from bot.chat.score_groups import level_at, score_group
from bot.chat.told_first import Settles
from bot.chat.view import ChatView
from bot.chat.words import Word, words_in
from knowledge.regex import regex

_MARKS = frozenset(",;.:!\n–—")
_LEADS = words_in("because cause cuz bc cos coz since as")

_A_RUN = regex(r"\b(?:in a row|in row|straight|on the trot|back to back|running)\b")
"""In so many words: behind "they won 2" anything may come."""

LONGEST = 32
"""Words of a run and how it went. Our own bound."""


def run_told(message: Message, chat: ChatView, settles: Settles) -> tuple[Understood, ...]:
    """The run, and before it the note of how it went; nothing where the rest tells its own."""
    is_possible = chat.match_on and not (chat.forwarded or message.asks)
    if not is_possible or len(message.said) > LONGEST or begins_as_note(message.said):
        return ()
    at = next((at for at, word in enumerate(message.said) if at and _parts(word)), 0)
    run = _run(message.text[: message.said[at].span[0]], chat) if at else None
    if run is None:
        return ()
    rest = read_message(message.text[message.said[at].span[0] :], chat)
    if rest.asks or score_group(rest.said) is not None or level_at(rest.said) is not None:
        return ()
    if not isinstance(settles(rest.text, rest, chat), RallySaid | None):
        return ()
    named = [one for one in opponents(rest.mentions, chat) if one.certainty is Certainty.SURE]
    return (weighed_note(rest, chat), run) if named else (run,)


def _parts(word: Word) -> bool:
    return bool(set(word.gap) & _MARKS) or " - " in word.gap or word.folded in _LEADS


def _run(text: str, chat: ChatView) -> RemarkSaid | None:
    part = read_message(text, chat)
    is_run = bool(part.said) and _A_RUN.search(" ".join(one.folded for one in part.said))
    found = several_rallies(part, chat) if is_run else None
    return found if found is not None and found.number is not None else None
