"""The question that a message asks: its topic as far as it is clear, and what it settles."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.asked_plainly import asked_plainly
from bot.chat.asking import surely_asks
from bot.chat.asks_model import (
    ANSWERED_FROM,
    ASKS_FROM,
    MAY_ASK_FROM,
    OFFERED_ALSO_FROM,
    OFFERED_FROM,
    OFFERED_UNCLAIMED_FROM,
    asking_score,
)
from bot.chat.follow_ups import topic_carried
from bot.chat.message import Message, is_ours
from bot.chat.own_shape import asks_how_bold
from bot.chat.said import Mention, Question, Unclear
from bot.chat.slots import find_slots
from bot.chat.supposed_case import is_supposed
from bot.chat.topic_model import SHOWN, SURE_FROM, Band, TopicGuess, recognise
from bot.chat.trait_asked import trait_asked, wants_confirming
from bot.chat.utterance import Mask, SlotToken, Utterance, read
from bot.chat.view import ChatView
from knowledge.complaints import complains
from knowledge.vocabulary import TRAITS, PlayerId, Topic, TraitKind

CERTAIN = 1.0
"""The confidence of a question asked by a command or in a fixed form."""


def read_question(message: Message, chat: ChatView) -> Question | Unclear:
    slots = find_slots(message.said, message.mentions, message.told)
    carried = topic_carried(message.said, message.mentions, chat)
    if carried is not None:
        return Question(text=message.text, topic=carried, confidence=CERTAIN, slots=slots)
    if asks_how_bold(message):
        topic = Topic.RISK_AT_SCORE
        return Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots)
    guess = _guess(message, chat)
    if guess.topic is Topic.WEATHER_OR_BODY and _is_of_theirs(message, chat):
        # "And if hale poaches", "should i headhunt okafor", behind a complaint: no part of it.
        guess = _guess(message, replace(chat, last_topic=None))
    if slots.rates is not None and _is_vague(guess):
        return Question(text=message.text, topic=Topic.WIN_CHANCE, confidence=CERTAIN, slots=slots)
    is_report = guess.topic is Topic.OPPONENT_REPORT or _is_vague(guess)
    is_report = is_report or (wants_confirming(message) and "?" in message.text)
    trait = trait_asked(message, chat) if is_report and message.asks else None
    if trait is not None and surely_asks(message.text, message.said):
        topic = Topic.OPPONENT_REPORT
        return Question(
            text=message.text, topic=topic, confidence=CERTAIN, slots=slots, trait=trait
        )
    if guess.band is Band.UNSURE:
        return Unclear(text=message.text, offers=guess.shown, slots=slots)
    return Question(
        text=message.text,
        topic=guess.topic,
        confidence=guess.confidence,
        offers=guess.shown[1:],
        slots=slots,
        trait=trait if guess.topic is Topic.OPPONENT_REPORT else None,
    )


def _is_of_theirs(message: Message, chat: ChatView) -> bool:
    """Whether it speaks of what they may do, or of one of them and of no body."""
    if is_supposed(message.said, message.mentions):
        return True
    named = [one for one in message.mentions if not one.pronoun]
    is_theirs = bool(named) and not any(is_ours(one, chat.ours) for one in named)
    return is_theirs and not complains(message.text)


def _is_vague(guess: TopicGuess) -> bool:
    return guess.band is Band.UNSURE or guess.topic is Topic.SMALLTALK_OR_UNKNOWN


def _masks(mentions: Sequence[Mention], ours: Sequence[PlayerId]) -> list[Mask]:
    return [
        Mask(span=one.span, token=SlotToken.OURS if is_ours(one, ours) else SlotToken.NAME)
        for one in mentions
        if not one.pronoun
    ]


def asked_anyway(message: Message, chat: ChatView) -> tuple[Question, bool] | None:
    """The question in what looks like a note or a score, and whether it is surely asked.

    The less the message reads like a question, the less doubt there may be about the topic.
    """
    score, question = asking(message, chat), likely_question(message, chat)
    if question is None or score < _answered_from(question, message):
        return None
    return question, score >= ASKS_FROM


def _answered_from(question: Question, message: Message) -> float:
    """The score that is enough; a report on somebody is near to any note of them.

    So is a topic to plain facts: "I'm right-handed on the left, tom is a lefty" only tells.
    """
    enough = next(score for sure, score in ANSWERED_FROM if question.confidence >= sure)
    claims = message.note.claims
    only_facts = bool(claims) and all(TRAITS[one.trait].kind is TraitKind.FACT for one in claims)
    is_near = only_facts or question.topic is Topic.OPPONENT_REPORT
    return max(enough, MAY_ASK_FROM) if is_near else enough


MOST_OFFERED = 2
LIKELIER_RIGHT = 0.5


def topics_offered(message: Message, chat: ChatView) -> tuple[Topic, ...]:
    """The likeliest topics of a note that may ask as well, as buttons beside it.

    Where nothing is claimed, or the topic is likelier right, less need speak for asking.
    "Okafor is a lefty" only tells, though a report on him is what it is nearest to.
    """
    score = asking(message, chat)
    if score < OFFERED_UNCLAIMED_FROM:
        return ()
    guess = _guess(message, chat)
    is_clear = guess.confidence >= LIKELIER_RIGHT and guess.topic is not Topic.OPPONENT_REPORT
    needed = OFFERED_ALSO_FROM if is_clear else OFFERED_FROM
    if score < needed and message.note.claims:
        return ()
    return _topics_of(guess)[:MOST_OFFERED]


def topics_with_score(message: Message, chat: ChatView) -> tuple[Topic, ...]:
    """The likeliest topics of a score that may ask as well."""
    return _topics_of(_guess(message, chat))[:MOST_OFFERED]


def likely_topics(
    message: Message, chat: ChatView, *, but: Topic | None = None
) -> tuple[Topic, ...]:
    """The three likeliest topics `but` one, however unlikely: to offer where nothing is clear."""
    likely = (one for one in _topics_of(_guess(message, chat)) if one is not but)
    return tuple(likely)[:SHOWN]


def _topics_of(guess: TopicGuess) -> tuple[Topic, ...]:
    return tuple(one for one, _ in guess.ranked if one is not Topic.SMALLTALK_OR_UNKNOWN)


def asking(message: Message, chat: ChatView) -> float:
    """How much the message reads like a question: about 1, or -1 for a note or a score."""
    return asking_score(_utterance(message, chat))


def sure_question(message: Message, chat: ChatView) -> Question | None:
    """The question of a message, where its topic is beyond doubt and no small talk."""
    question = likely_question(message, chat)
    return question if question is not None and question.confidence >= SURE_FROM else None


def likely_question(message: Message, chat: ChatView) -> Question | None:
    """The question of a message, where its topic is clear enough to answer and no small talk."""
    question = read_question(message, chat)
    is_talk = isinstance(question, Question) and question.topic is Topic.SMALLTALK_OR_UNKNOWN
    return None if is_talk or isinstance(question, Unclear) else question


def _guess(message: Message, chat: ChatView) -> TopicGuess:
    """The topic as the message puts it, or in a plainer verb where that is not clear."""
    guess = _recognised(_utterance(message, chat), chat)
    masks = _masks(message.mentions, chat.ours)
    plainly = asked_plainly(message.text, masks) if guess.band is Band.UNSURE else None
    if plainly is None:
        return guess
    put = _recognised(read(*plainly), chat)
    return guess if put.band is Band.UNSURE else put


def _recognised(utterance: Utterance, chat: ChatView) -> TopicGuess:
    return recognise(utterance, context_topic=chat.last_topic, match_on=chat.match_on)


def _utterance(message: Message, chat: ChatView) -> Utterance:
    return read(message.text, _masks(message.mentions, chat.ours))
