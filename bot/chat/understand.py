"""From a typed message to what it is: the one entry for texts.

The order matters: what is said in a fixed form (commands, undo, scores, results, matches)
comes before notes, and notes before questions, since a fixed form is never a question.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from bot.chat.announcements import begins_as_match, match_said, result_said
from bot.chat.asking import asks
from bot.chat.follow_ups import follow_up, topic_carried
from bot.chat.names import find_mentions
from bot.chat.notes import read_note
from bot.chat.question import (
    BookSaid,
    BookVerb,
    Certainty,
    Mention,
    NoteSaid,
    Question,
    RallySaid,
    ResultSaid,
    ScoreSaid,
    Unclear,
    Understood,
    UndoSaid,
)
from bot.chat.sayings import (
    BOOK_COMMANDS,
    TOPIC_COMMANDS,
    Command,
    agreement_said,
    book_said,
    command,
    correction_said,
    undo_said,
)
from bot.chat.scores import cast, is_all_score, score_message, stray_words
from bot.chat.slots import find_slots
from bot.chat.topic_model import SURE_FROM, Band, TopicGuess, recognise
from bot.chat.utterance import Mask, SlotToken, read
from bot.chat.view import ChatView
from bot.chat.words import Word, words
from knowledge.cautions import is_emergency
from knowledge.vocabulary import PlayerId, Topic

CERTAIN = 1.0
"""The confidence of a question asked by a command or in a fixed form."""

_SOMEBODY = PlayerId(-1)
"""Stands for a player that the book does not know yet."""

STRAY_WORDS_OF_A_QUESTION = 3
"""A score with so many other words may be asking something, if the topic is beyond doubt."""

_NOTE_COMMANDS = frozenset(["note", "n"])


@dataclass(frozen=True, slots=True, kw_only=True)
class _Message:
    text: str
    said: tuple[Word, ...]
    mentions: tuple[Mention, ...]
    asks: bool
    note: NoteSaid


def understand(text: str, *, chat: ChatView) -> tuple[Understood, ...]:
    """What the message says: one thing, or a note and the question that comes with it."""
    typed = command(text)
    if typed is not None:
        return (_commanded(text, typed, chat),)
    if is_emergency(text):
        # Help comes first: such words are answered at once, never read or kept as a note.
        return (Question(text=text, topic=Topic.WEATHER_OR_BODY, confidence=CERTAIN),)
    message = _message(text, chat)
    if not message.said:
        return (Unclear(text=text, offers=()),)
    fixed = follow_up(text, message.said, chat) or _fixed(message, chat)
    if fixed is None:
        return _note_or_question(message, chat)
    return (*_asked_beside(fixed, message, chat), fixed)


def understand_note(text: str, *, chat: ChatView) -> NoteSaid:
    """The text read as a note, whatever else it might be."""
    message = _message(_without_command(text), chat)
    return replace(message.note, text=text)


def _message(text: str, chat: ChatView) -> _Message:
    said = words(text)
    mentions = find_mentions(said, chat)
    return _Message(
        text=text,
        said=said,
        mentions=mentions,
        asks=asks(text, said),
        note=read_note(text, said, mentions, chat),
    )


def _without_command(text: str) -> str:
    """The text with a leading `/note` blanked out, so that spans still fit."""
    typed = command(text)
    if typed is None or typed.word not in _NOTE_COMMANDS:
        return text
    start = len(text) - len(text.lstrip())
    end = start + len(text[start:].split(maxsplit=1)[0])
    return " " * end + text[end:]


def _commanded(text: str, typed: Command, chat: ChatView) -> Understood:
    rest = _message(typed.rest, chat)
    if typed.word in _NOTE_COMMANDS:
        return understand_note(text, chat=chat)
    if typed.word == "undo":
        return UndoSaid(text=text)
    if typed.word in TOPIC_COMMANDS:
        slots = find_slots(rest.said, rest.mentions, _cast(rest, chat))
        topic = TOPIC_COMMANDS[typed.word]
        return Question(text=text, topic=topic, confidence=CERTAIN, slots=slots)
    verb = BOOK_COMMANDS.get(typed.word, BookVerb.HELP)
    return BookSaid(text=text, verb=verb, words=typed.rest, mentions=rest.mentions)


def _fixed(message: _Message, chat: ChatView) -> Understood | None:
    """What has a form of its own, in this order."""
    text, said, mentions = message.text, message.said, message.mentions
    if chat.forwarded or _begins_as_note(said):
        return None
    undone = undo_said(text, said)
    if undone is not None:
        return undone
    if message.asks and not _is_bare_score(message, chat):
        return book_said(text, said, mentions)
    replying = chat.replying_to_note
    return (
        result_said(text, said)
        or _match(message, chat)
        or _score(message, chat)
        or agreement_said(text, said)
        or book_said(text, said, mentions)
        or correction_said(text, said, mentions, replying=replying)
    )


def _match(message: _Message, chat: ChatView) -> Understood | None:
    opponents = _opponents(message.mentions, chat)
    found = match_said(message.text, message.said, opponents)
    tells_of_play = message.note.claims and not begins_as_match(message.said)
    return None if tells_of_play else found


def _opponents(mentions: Sequence[Mention], chat: ChatView) -> list[Mention]:
    return [one for one in mentions if not one.pronoun and not _is_ours(one, chat.ours)]


def _is_bare_score(message: _Message, chat: ChatView) -> bool:
    """Nothing but a score, though a word of it looks like asking ("were up 8 7")."""
    return "?" not in message.text and not stray_words(_cast(message, chat))


def _score(message: _Message, chat: ChatView) -> Understood | None:
    """A score or a rally, with chatter around it but nothing said of anybody's play."""
    told = _cast(message, chat)
    score = score_message(message.text, told)
    if score is None:
        return None
    outcome = isinstance(score, RallySaid) or score.side_out
    if message.note.claims and not is_all_score(told) and not (outcome and not _opens(message)):
        return None
    named = tuple(one for one in message.mentions if not one.pronoun)
    return replace(score, mentions=named) if isinstance(score, RallySaid) else score


def _opens(message: _Message) -> bool:
    """Whether the message opens with somebody's name, as notes do."""
    return bool(message.mentions) and message.mentions[0].span[0] <= message.said[0].span[0]


def _cast(message: _Message, chat: ChatView) -> list[Word]:
    named = [one for one in message.mentions if not one.pronoun]
    ours = [one for one in named if _is_ours(one, chat.ours)]
    return cast(message.said, ours, [one for one in named if one not in ours])


def _note_or_question(message: _Message, chat: ChatView) -> tuple[Understood, ...]:
    note = message.note
    if _begins_as_note(message.said) or chat.forwarded:
        return (note,)
    names_somebody = any(not one.pronoun for one in note.mentions)
    tells = (note.claims and names_somebody) or note.about_body
    tells = tells or _tells_of_somebody(message, chat)
    if tells and not message.asks:
        return (note,)
    question = _question(message, chat)
    if tells and isinstance(question, Unclear) and not _weighs(message):
        return (note,)
    if names_somebody and not message.asks and _tells_of_others(message, question):
        return (note,)
    return (question,)


def _weighs(message: _Message) -> bool:
    """A question mark, or two things weighed against each other: "weak backhand or forehand"."""
    return "?" in message.text or any(word.folded == "or" for word in message.said)


def _tells_of_others(message: _Message, question: Question | Unclear) -> bool:
    """A statement about somebody else that no topic clearly fits: words to keep."""
    of_us = any(word.folded in _OF_US for word in message.said)
    is_sure = isinstance(question, Question) and question.confidence >= SURE_FROM
    return isinstance(question, Unclear) or (
        not of_us and not is_sure and len(message.said) > SHORTEST_STATEMENT
    )


_OF_US = frozenset(
    [
        "i",
        "me",
        "my",
        "we",
        "us",
        "our",
        "im",
        "were",
        "you",
        "your",
        "partner",
        "p",
        "pard",
        "lets",
    ]
)
SHORTEST_STATEMENT = 3
"""Words of a statement; shorter ones ("okafor backhand") ask."""


def _tells_of_somebody(message: _Message, chat: ChatView) -> bool:
    """Whether it would be a note, were the names it has not settled known: "zorblatt: lefty"."""
    if message.asks or all(one.certainty is Certainty.SURE for one in message.mentions):
        return False
    known = [
        replace(one, certainty=Certainty.SURE, players=one.players[:1] or (_SOMEBODY,))
        for one in message.mentions
    ]
    return bool(read_note(message.text, message.said, known, chat).claims)


def _begins_as_note(said: Sequence[Word]) -> bool:
    first = [word.folded for word in said[:2]]
    return first[:1] == ["note"] or first[:1] == ["notes"] or first == ["take", "note"]


def _guess(message: _Message, chat: ChatView) -> TopicGuess:
    utterance = read(message.text, _masks(message.mentions, chat.ours))
    return recognise(utterance, context_topic=chat.last_topic, match_on=chat.match_on)


def _asked_beside(fixed: Understood, message: _Message, chat: ChatView) -> tuple[Question, ...]:
    """A question put as a statement around a score ("5-5, feels like we are stuck")."""
    if not isinstance(fixed, ScoreSaid | RallySaid | ResultSaid):
        return ()
    if stray_words(_cast(message, chat)) < STRAY_WORDS_OF_A_QUESTION:
        return ()
    question = _question(message, chat)
    if not isinstance(question, Question) or question.topic is Topic.SMALLTALK_OR_UNKNOWN:
        return ()
    return (question,) if question.confidence >= SURE_FROM else ()


def _question(message: _Message, chat: ChatView) -> Question | Unclear:
    carried = topic_carried(message.said, message.mentions, chat)
    if carried is not None:
        slots = find_slots(message.said, message.mentions, _cast(message, chat))
        return Question(text=message.text, topic=carried, confidence=CERTAIN, slots=slots)
    slots = find_slots(message.said, message.mentions, _cast(message, chat))
    guess = _guess(message, chat)
    if guess.band is Band.UNSURE:
        return Unclear(text=message.text, offers=guess.shown, slots=slots)
    return Question(
        text=message.text,
        topic=guess.topic,
        confidence=guess.confidence,
        offers=guess.shown[1:],
        slots=slots,
        why=guess.why,
    )


def _masks(mentions: Sequence[Mention], ours: Sequence[PlayerId]) -> list[Mask]:
    return [
        Mask(span=one.span, token=SlotToken.OURS if _is_ours(one, ours) else SlotToken.NAME)
        for one in mentions
        if not one.pronoun
    ]


def _is_ours(mention: Mention, ours: Sequence[PlayerId]) -> bool:
    return bool(mention.players) and all(player in ours for player in mention.players)
