"""A score, result, rally or match with chatter around it: "18-20 down, they serve, lovely day"."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import TypeAlias

from bot.chat.asking import asks
from bot.chat.asks_model import ASKS_FROM
from bot.chat.disputed_calls import is_called_in, is_disputed
from bot.chat.message import Message, opponents, read_message
from bot.chat.note_or_question import begins_as_note
from bot.chat.numbers import groups
from bot.chat.said import (
    FormatTold,
    MatchMoved,
    MatchSaid,
    RallySaid,
    RemarkSaid,
    ResultSaid,
    ScoreSaid,
    Understood,
)
from bot.chat.score_groups import level_at
from bot.chat.score_reading import says_one_side
from bot.chat.scores import score_message
from bot.chat.topic_question import asking
from bot.chat.view import ChatView

Told: TypeAlias = FormatTold | MatchMoved | MatchSaid | RallySaid | ResultSaid | ScoreSaid
Settles: TypeAlias = Callable[[str, Message, ChatView], Understood | None]

_TOLD = (FormatTold, MatchMoved, MatchSaid, RallySaid, ResultSaid, ScoreSaid)
_MARKS = frozenset(",;.!:\n()–—")
_SENTENCE_ENDS = frozenset(".!\n")
_LINKS = frozenset(
    ["but", "while", "because", "cos", "cuz", "so", "which", "lol", "haha", "lmao", "ugh", "and",
     "idk", "what", "thanks", "tho", "though", "btw", "pls", "please", "like", "despite", "ffs"]
)  # fmt: skip
"""Words that chatter begins with where no mark stands before it."""

_SUPPOSES = frozenset(["if", "when", "whenever", "imagine", "suppose", "say", "like", "until"])
"""What opens so supposes: nothing of it is told."""

LONGEST = 32
"""Words of a message that is still about what it tells; each part of it is read anew."""

LONGEST_AFTER_A_BARE_RESULT = 6
"""Words after "we are out": more is a story, or asks something."""


LONGEST_AFTER_A_FORMAT = 3

_OF_SOMEBODY = frozenset(["he", "she", "his", "her", "him", "hes", "shes"])
"""Who is told of by these is an opponent, mostly."""


def told_first(message: Message, chat: ChatView, settles: Settles) -> Told | None:
    """What one part of the message tells whole, where the rest neither asks nor notes anything.

    `settles` reads a message that has one meaning by its form. The longest beginning counts, or
    else the last sentence: "good night. we are out".
    """
    if chat.forwarded or begins_as_note(message.said) or "?" in message.text:
        return None
    if not 1 < len(message.said) <= LONGEST or message.said[0].folded in _SUPPOSES:
        return None
    if asking(message, chat) >= ASKS_FROM or _notes_an_opponent(message, chat):
        return None
    for part, rest in _parts(message):
        told = _told(part, rest, message, chat, settles)
        if told is not None:
            return told
    return None


def _notes_an_opponent(message: Message, chat: ChatView) -> bool:
    return bool(message.note.claims and opponents(message.mentions, chat))


def _parts(message: Message) -> Iterator[tuple[str, str]]:
    """A beginning and what follows it, the longest first; then the last sentence, and its lead."""
    said, text = message.said, message.text
    for at in reversed(range(1, len(said))):
        if set(said[at].gap) & _MARKS or " - " in said[at].gap or said[at].folded in _LINKS:
            yield text[: said[at - 1].span[1]], text[said[at].span[0] :]
    for at in range(1, len(said)):
        if set(said[at].gap) & _SENTENCE_ENDS:
            yield text[said[at].span[0] :], text[: said[at - 1].span[1]]


def _told(part: str, rest: str, whole: Message, chat: ChatView, settles: Settles) -> Told | None:
    beside = read_message(rest, chat)
    if not beside.said or _says_more(beside, chat, settles):
        return None
    message = read_message(part, chat)
    told = None if message.asks or not message.said else settles(part, message, chat)
    if not isinstance(told, _TOLD) or (isinstance(told, ScoreSaid) and not chat.match_on):
        return None
    is_whose = isinstance(told, RallySaid) and told.says_whose and not is_called_in(whole.said)
    if isinstance(told, RallySaid) and not is_whose and is_disputed(whole.said):
        return None
    if isinstance(told, ScoreSaid):
        told = _with_server(told, whole)
    if _is_too_much(told, beside, chat):
        return None
    return replace(told, text=whole.text)


def _is_too_much(told: Told, beside: Message, chat: ChatView) -> bool:
    """Whether so much stands beside what is told that the message is about something else."""
    if isinstance(told, ScoreSaid):
        return says_one_side(told)
    if isinstance(told, MatchMoved) and told.at is None and told.court is None:
        return True
    others = {word.folded for word in beside.said} & _OF_SOMEBODY
    if beside.said[0].folded == "and" or (others and not isinstance(told, RallySaid)):
        return True
    if isinstance(told, FormatTold):
        return len(beside.said) > LONGEST_AFTER_A_FORMAT
    if isinstance(told, MatchSaid | MatchMoved):
        return bool(opponents(beside.mentions, chat))
    is_bare = isinstance(told, ResultSaid) and not (told.games or told.tally)
    return is_bare and len(beside.said) > LONGEST_AFTER_A_BARE_RESULT


def _with_server(told: ScoreSaid, whole: Message) -> ScoreSaid:
    """The score with who serves, where only the chatter tells: "nine each, tom returns"."""
    found = score_message(whole.text, whole.told.of_score)
    if not isinstance(found, ScoreSaid) or found.score is None:
        return told
    level = (told.all_at, told.all_at)
    points = (told.score.ours, told.score.theirs) if told.score is not None else level
    is_same = (found.score.ours, found.score.theirs) == points
    return found if is_same and found.score.we_serve is not None else told


def _says_more(rest: Message, chat: ChatView, settles: Settles) -> bool:
    """Whether what is left asks, tells something of an opponent, or holds a score of its own."""
    if asks(rest.text, rest.said) or groups(rest.said) or level_at(rest.said) is not None:
        return True
    if rest.note.claims and _OF_SOMEBODY.intersection(word.folded for word in rest.said):
        return True
    more = settles(rest.text, rest, chat)
    return more is not None and not isinstance(more, RemarkSaid)
