"""What holds of an opponent, told behind a rally: "we lost that one and philippa is really fast".

The rally counts and the note is kept. How the rally went is no note: "our point, okafor netted it"
tells of that one rally, and only what somebody is or does at all times is taken for more.
"""

from __future__ import annotations

from bot.chat.message import Message, opponents, read_message, weighed_note
from bot.chat.note_or_question import begins_as_note
from bot.chat.rally_clauses import with_details
from bot.chat.rally_tense import tells_what_holds
from bot.chat.said import Certainty, Mention, NoteSaid, RallySaid, Understood
from bot.chat.told_first import Settles
from bot.chat.view import ChatView
from bot.chat.words import words_in

_LEADS = words_in("and but because cuz bc cause cos coz since as so btw also though")
"""Words between the rally and what is told of somebody."""

_IS = words_in("is isnt has hasnt cant never always")

LONGEST = 24
"""Words of a message that may tell both. Our own bound."""


def rally_and_note(message: Message, chat: ChatView, settles: Settles) -> tuple[Understood, ...]:
    """The rally, then the note; nothing unless the first part tells a rally by itself."""
    is_possible = chat.match_on and not (chat.forwarded or message.asks)
    if not is_possible or len(message.said) > LONGEST or begins_as_note(message.said):
        return ()
    named = [one for one in opponents(message.mentions, chat) if one.certainty is Certainty.SURE]
    at = next((at for at, word in enumerate(message.said) if _opens(word.span[0], named)), 0)
    note = _note(message.text[message.said[at].span[0] :], chat) if at else None
    if note is None:
        return ()
    while at and message.said[at - 1].folded in _LEADS:
        at -= 1
    rally = _rally(message.text[: message.said[at - 1].span[1]], chat, settles) if at else None
    return () if rally is None else (rally, note)


def _opens(place: int, named: list[Mention]) -> bool:
    return any(one.span[0] == place for one in named)


def _note(text: str, chat: ChatView) -> NoteSaid | None:
    part = read_message(text, chat)
    if part.asks or part.note.about_body or not _holds(part):
        return None
    note = weighed_note(part, chat)
    is_theirs = note.claims and all(one.player not in chat.ours for one in note.claims)
    return note if is_theirs else None


def _holds(part: Message) -> bool:
    """Whether it tells in the present what somebody is or does: "is fast", "poaches a lot"."""
    named = [one.span for one in part.mentions if not one.pronoun]
    behind = [word.folded for word in part.said if word.span[0] >= named[0][1]] if named else []
    return behind[:1] != [] and (behind[0] in _IS or tells_what_holds(part.said, part.mentions))


def _rally(text: str, chat: ChatView, settles: Settles) -> RallySaid | None:
    part = read_message(text, chat)
    told = None if part.asks or not part.said else settles(text, part, chat)
    if not isinstance(told, RallySaid) or told.corrects:
        return None
    return told if told.understood else with_details(told, part, chat)
