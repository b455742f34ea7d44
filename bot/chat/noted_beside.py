"""A result or a score with a note beside it: "lost 7-11, mireaux is slow". Both are kept.

The words of one would blur the other, so the message is cut between them and each part is read as
if it stood alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice

from bot.chat.forms import word_set
from bot.chat.message import Message, opponents, read_message, weighed_note
from bot.chat.note_or_question import begins_as_note, tells_of_somebody
from bot.chat.numbers import groups
from bot.chat.said import Certainty, Mention, NoteSaid, ResultSaid, SaidScore, ScoreSaid, Understood
from bot.chat.several_questions import part_of
from bot.chat.talk_or_question import talk_or_question
from bot.chat.told_first import Settles
from bot.chat.view import ChatView
from bot.chat.words import Word, words_in

_MARKS = frozenset(",;.!:\n()–—")
_LINKS = words_in("and but because cuz bc cause cos coz since as so while though tho although")
"""Words that bring in what is told beside a result: "lost 7-11 because okafor poached"."""

_OF_THE_RESULT = words_in("to vs v versus against over by with w from beat bt and n")
"""Words before a name that belongs to the result: "lost 7-11 to okafor"."""

_ONLY_SUPPOSED = word_set("only_supposed")
"""Before a score that nobody has: "at 9-8-2 lindqvist tightens up"."""

_HE = words_in("he she his her hes shes him")

FEWEST_WORDS_TOLD = 2
"""Words behind a name that tell something of them, though no trait is read in it."""


LONGEST_FORM = 4
"""Words behind a name that may only say who serves or whose rally it was; more tell a story."""


MOST_CUTS = 6
"""Places where a message is cut, each for the price of two readings. Our own bound."""

LONGEST_TOLD = 24
"""Words of a part that may still be nothing but a result or a score. Our own bound."""


def told_and_noted(message: Message, chat: ChatView, settles: Settles) -> tuple[Understood, ...]:
    """The result or score, then the note and what its part asks; nothing if it does not hold both.

    `settles` reads a part that has one meaning by its form.
    """
    if chat.forwarded or begins_as_note(message.said):
        return ()
    for told_part, note_part in islice(_cut(message, chat), MOST_CUTS):
        noted = _noted(note_part, chat, settles)
        told = _told(told_part, chat, settles) if noted else None
        if told is not None:
            return (told, *noted)
    return ()


def _cut(message: Message, chat: ChatView) -> Iterator[tuple[Message, Message]]:
    """The part with the numbers and the part without: behind the last number, or before the first.

    Behind them a name begins the note, or a mark or a joining word does; before them only a mark.
    """
    numbers = groups(message.said)
    if not numbers:
        return
    said, last = message.said, numbers[-1].stop
    for at in range(last, min(len(said), LONGEST_TOLD)):
        if _begins(said[at], at, message):
            yield part_of(message, 0, at, chat), _with_whom(message, at, chat)
    if last + FEWEST_WORDS_TOLD < len(said) and last <= LONGEST_TOLD:
        # A name that the book does not have is only found where it opens the line.
        anew = read_message(message.text[said[last].span[0] :], chat)
        yield part_of(message, 0, last, chat), anew
    for at in range(max(1, len(said) - LONGEST_TOLD), numbers[0].start + 1):
        if set(said[at].gap) & _MARKS:
            yield part_of(message, at, len(said), chat), part_of(message, 0, at, chat)


def _with_whom(message: Message, at: int, chat: ChatView) -> Message:
    """The words from `at`, with the one before them who is meant by the "he" that opens them."""
    if message.said[at].folded in _HE:
        named = [one for one in opponents(message.mentions, chat) if _is_before(one, message, at)]
        if named:
            begin = named[-1].span[0]
            return read_message(message.text[begin:], chat)
    return part_of(message, at, len(message.said), chat)


def _is_before(mention: Mention, message: Message, at: int) -> bool:
    return mention.span[1] <= message.said[at].span[0]


def _begins(word: Word, at: int, message: Message) -> bool:
    before = message.said[at - 1].folded
    named = any(one.span[0] == word.span[0] and not one.pronoun for one in message.mentions)
    opens = named and before not in _OF_THE_RESULT
    return bool(opens or set(word.gap) & _MARKS or before in _LINKS)


def _told(part: Message, chat: ChatView, settles: Settles) -> ResultSaid | ScoreSaid | None:
    """The finished games, or in a match the whole score; nothing that is only asked about."""
    told = None if part.asks or not part.said else settles(part.text, part, chat)
    match told:
        case ResultSaid(corrects=False) if told.games or told.tally:
            return told
        case ScoreSaid(score=SaidScore(server=int())) if chat.match_on:
            return None if _ONLY_SUPPOSED.intersection(_folded(part)) else told
        case _:
            return None


def _folded(part: Message) -> set[str]:
    return {word.folded for word in part.said}


def _noted(part: Message, chat: ChatView, settles: Settles) -> tuple[Understood, ...]:
    """The note, and what its words ask; nothing where they tell nothing of an opponent."""
    if groups(part.said) or part.note.about_body:
        return ()
    of_them = opponents(part.mentions, chat)
    if part.note.claims and _is_of_them(part, chat) and not part.asks:
        return (weighed_note(part, chat),)
    if _tells(part, of_them, chat, settles) and not part.asks:
        return (weighed_note(part, chat),)
    if not part.asks:
        return (part.note,) if tells_of_somebody(part, chat) else ()
    said = talk_or_question(part, chat)
    return said if any(isinstance(one, NoteSaid) for one in said) else ()


def _is_of_them(part: Message, chat: ChatView) -> bool:
    return any(one.player not in chat.ours for one in part.note.claims)


def _tells(part: Message, of_them: list[Mention], chat: ChatView, settles: Settles) -> bool:
    """Whether words follow the name that opens it, and have no other meaning by their form."""
    if not of_them or of_them[0].certainty is not Certainty.SURE:
        return False
    if of_them[0].span[0] != part.said[0].span[0]:
        return False
    behind = [
        word
        for word in part.said
        if not any(one.span[0] <= word.span[0] < one.span[1] for one in of_them)
    ]
    if len(behind) > LONGEST_FORM:
        return True
    return len(behind) >= FEWEST_WORDS_TOLD and settles(part.text, part, chat) is None
