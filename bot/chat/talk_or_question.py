"""What a message without a fixed form says, courtesy, abuse and several questions seen to."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.another_topic import another_topic
from bot.chat.changes_said import as_change, leans, says_only_links, says_only_slots
from bot.chat.common_words import is_common
from bot.chat.counted_of_them import counts_theirs
from bot.chat.courtesies import is_courtesy, without_courtesies
from bot.chat.follow_ups import topic_carried
from bot.chat.lexicon import the_lexicon
from bot.chat.message import Message, names_somebody, read_message
from bot.chat.note_or_question import (
    SHORTEST_STATEMENT,
    begins_as_note,
    note_or_question,
    tells_of_private_life,
)
from bot.chat.note_witness import is_hearsay, is_opinion_of_another, is_told_by_another
from bot.chat.off_court_said import is_off_court
from bot.chat.out_balls_asked import out_balls_meant
from bot.chat.own_shape import own_shape
from bot.chat.rule_goes_on import rule_goes_on
from bot.chat.said import Question, Unclear, Understood
from bot.chat.several_questions import part_of, several_questions
from bot.chat.supposed_case import is_supposed
from bot.chat.telling import ranks_somebody
from bot.chat.topic_model import SURE_FROM
from bot.chat.topic_question import CERTAIN, asked_anyway, likely_topics, read_question
from bot.chat.view import ChatView
from knowledge.complaints import complains
from knowledge.regex import regex
from knowledge.tactics.smalltalk import is_other_language
from knowledge.vocabulary import TRAITS, Topic, TraitKind, Value

_OF_NUMBERS = (Topic.WIN_CHANCE, Topic.RISK_AT_SCORE, Topic.WHERE_TO_STAND)
"""What numbers alone may be about: a score."""

_CODE_SIGNS = frozenset("<>{}=;$^\\|*+[]_")
FEWEST_CODE_SIGNS = 3
"""Signs that hardly anybody types in a question; so many are markup or code."""


def talk_or_question(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """Small talk, a note, a question, a note beside its question, or questions in order."""
    if chat.forwarded or begins_as_note(message.said):
        return note_or_question(message, chat)
    is_chatter = is_courtesy(message.said) and not names_somebody(message)
    if is_chatter or is_off_court(message):
        return (small_talk(message.text),)
    meant = _not_asked(message, chat) or _meant(message, chat)
    if meant is not None:
        return (meant,)
    if not message.note.claims and topic_carried(message.said, message.mentions, chat) is not None:
        asked = read_question(message, chat)
        return (as_change(asked, message),) if isinstance(asked, Question) else (asked,)
    understood = _inside_courtesies(note_or_question(message, chat), message, chat)
    if understood == (message.note,):
        return _asked_in(message, chat)
    last = understood[-1]
    if isinstance(last, Question):
        several = several_questions(message, chat)
        if several:
            return (*understood[:-1], *several)
        last = _one(last, message, chat)
    if isinstance(last, Unclear) and is_other_language(message.text):
        last = small_talk(message.text)
    last = out_balls_meant(last, message) or last
    return (*understood[:-1], _of_a_case(last, message) or _against_a_habit(last, message))


def _of_a_case(said: Understood, message: Message) -> Question | None:
    """ "And if okafor poaches", after a target: what he is supposed to do, where that is a habit
    and no topic of its own is read. What he is, as a lefty, changes the question before."""
    habits = [TRAITS[one.trait].kind is TraitKind.HABIT for one in message.note.claims]
    if not (habits and all(habits)) or not is_supposed(message.said, message.mentions):
        return None
    match said:
        case Question(changes=False, topic=topic) if topic not in _WIDE:
            return None
        case Question(text=text, slots=slots) | Unclear(text=text, slots=slots):
            topic = Topic.ANSWER_PATTERN
            return Question(text=text, topic=topic, confidence=CERTAIN, slots=slots)
        case _:
            return None


_AGAINST_A_HABIT = regex(
    r"\b(?:what (?:do|should|can|would|shall) (?:i|we|you|u) do|what (?:to do|now)"
    r"|how (?:do|should|can) (?:i|we) (?:respond|react|cope|handle it))"
    r" (?:when|if|whenever|every time|about) (?:they|he|she|their|his|her)\b(?! (?:is|are) )"
)
_WIDE = frozenset([Topic.GAME_PLAN, Topic.OPPONENT_REPORT])
"""Topics that such a question names nothing of, though it names somebody."""
_OF_WEATHER = frozenset(["wind", "sun", "weather", "body"])


def _against_a_habit(said: Understood, message: Message) -> Understood:
    """ "What do I do when Okafor leans to poach" wants an answer to that habit."""
    is_wide = isinstance(said, Question) and (
        said.topic in _WIDE or (said.topic is Topic.WEATHER_OR_BODY and not _is_of_weather(message))
    )
    line = " ".join(word.folded for word in message.told.words)
    match said:
        case Unclear(text=text, slots=slots) | Question(text=text, slots=slots) if (
            is_wide or isinstance(said, Unclear)
        ) and _AGAINST_A_HABIT.search(line):
            topic = Topic.ANSWER_PATTERN
            return Question(text=text, topic=topic, confidence=CERTAIN, slots=slots)
        case _:
            return said


def _is_of_weather(message: Message) -> bool:
    said = [word.folded for word in message.said]
    return any(hit.concept in _OF_WEATHER for hit in the_lexicon().find(said))


def _asked_in(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """A note, and the question that it also is; without a claim only the question."""
    if message.note.about_body or is_told_by_another(message.said, message.mentions):
        return (message.note,)
    if tells_of_private_life(message):
        return (message.note,)
    is_heard = is_hearsay(message.said) or is_opinion_of_another(message.said, message.mentions)
    if (not message.asks and is_heard) or counts_theirs(message, chat):
        return (message.note,)
    if (shape := own_shape(message, chat)) is not None:
        return (message.note, shape)
    asked = asked_anyway(message, chat)
    if asked is None:
        return (message.note,)
    question, is_surely_asked = asked
    if _is_of_no_body(question, message) or _is_of_no_habit(question, message):
        return (message.note,)
    tells = bool(message.note.claims) or not is_surely_asked
    tells = tells or ranks_somebody(message.said, message.mentions)
    return (message.note, question) if tells else (question,)


def _is_of_no_body(question: Question, message: Message) -> bool:
    """ "Ilka keeps popping up her dinks", after the sun: a note of play that tells of no weather
    and no body, and would be answered as somebody's sore ankle."""
    told = message.note.claims and question.topic is Topic.WEATHER_OR_BODY
    return bool(told) and not (_is_of_weather(message) or complains(message.text))


def _is_of_no_habit(question: Question, message: Message) -> bool:
    """ "Neither of them poaches": there is no poacher to answer."""
    told = [one.denied or one.value is Value.RARELY for one in message.note.claims]
    is_of_one = question.topic is Topic.ANSWER_PATTERN and not message.asks
    return is_of_one and bool(told) and all(told)


_OPENS_CORRECTION = regex(
    r"(?:(?:no|nope|sorry|oops|wait|actually) )*(?:i (?:mean|meant|said)|make that)\b"
)


_NOT_ASKED = regex(
    r"\b(?:not what i (?:asked|meant|wanted)|wrong (?:answer|question|topic)|not my question"
    r"|didnt ask (?:you )?(?:for )?(?:that|this))\b"
)


def _not_asked(message: Message, chat: ChatView) -> Unclear | None:
    """ "That's not what I asked": ask, since the same answer again would be worse."""
    complains = _NOT_ASKED.search(" ".join(word.folded for word in message.said))
    if chat.last_topic is None or complains is None or "?" in message.text:
        return None
    return Unclear(text=message.text, offers=likely_topics(message, chat, but=chat.last_topic))


def _meant(message: Message, chat: ChatView) -> Question | Unclear | None:
    """What "no, I meant the third shot" asks: another topic about the same people."""
    found = _OPENS_CORRECTION.match(" ".join(word.folded for word in message.said))
    begin = 0 if found is None else len(found[0].split())
    if chat.last_topic is None or not 0 < begin < len(message.said):
        return None
    alone = replace(chat, last_topic=None)
    part = part_of(message, begin, len(message.said), alone)
    if part.note.claims and not part.asks:
        return None
    said = read_question(part, alone)
    if isinstance(said, Question) and _is_idle(said):
        return None
    return replace(said, changes=True) if isinstance(said, Question) else said


def _has_no_word(message: Message) -> bool:
    """Numbers and signs only."""
    return not any(letter.isalpha() for word in message.said for letter in word.folded)


def small_talk(text: str) -> Question:
    return Question(text=text, topic=Topic.SMALLTALK_OR_UNKNOWN, confidence=CERTAIN)


def _one(question: Question, message: Message, chat: ChatView) -> Question | Unclear:
    """The question, marked where it leans on the last; unclear where we know none of its words.

    So is what looks like code or markup and asks nothing.
    """
    if _only_carries_weather(question, message, chat):
        alone = read_question(message, replace(chat, last_topic=None))
        offers = alone.offers if isinstance(alone, Unclear) else (alone.topic, *alone.offers)
        return Unclear(text=question.text, offers=offers, slots=question.slots)
    question = rule_goes_on(question, message, chat)
    of_play = _of_play_after_a_body(question, message, chat)
    if of_play is not None:
        return of_play
    other = another_topic(message, chat) if question.topic is chat.last_topic else None
    if other is not None:
        return other
    is_talk = question.topic is Topic.SMALLTALK_OR_UNKNOWN
    if not is_talk and says_only_links(message) and not _is_clear(question, message):
        return Unclear(text=question.text, offers=(question.topic, *question.offers))
    has_score = question.slots.score is not None and len(message.said) > 1
    if not has_score and (_has_no_word(message) or (not is_talk and _is_all_unknown(message))):
        is_word = any(letter.isalpha() for letter in message.text)
        offers = likely_topics(message, chat) if is_word else _OF_NUMBERS
        return Unclear(text=question.text, offers=offers, slots=question.slots)
    if not is_talk and _is_code(message.text) and not message.asks:
        return Unclear(text=question.text, offers=(question.topic, *question.offers))
    return as_change(question, message) if leans(question, message, chat) else question


def _only_carries_weather(question: Question, message: Message, chat: ChatView) -> bool:
    """ "And on the backhand", after the wind: nothing of it is of weather or a body, and the entry
    nearest to such words would be somebody's sore arm.
    """
    weather = Topic.WEATHER_OR_BODY
    if question.topic is not weather or chat.last_topic is not weather or chat.hurt:
        return False
    if question.slots.ball_kind is not None:
        return False  # "and my lobs?": what the wind does to each kind of ball is known
    return says_only_slots(message) and not (_is_of_weather(message) or complains(message.text))


def _of_play_after_a_body(question: Question, message: Message, chat: ChatView) -> Question | None:
    """ "What if they lob her", after a knee that hurts: play, where nothing of it is of a body."""
    weather = Topic.WEATHER_OR_BODY
    if question.topic is not weather or not chat.hurt:
        return None  # after the wind, "and my lobs?" asks of the wind
    if _is_of_weather(message) or complains(message.text):
        return None
    alone = read_question(message, replace(chat, last_topic=None))
    if not isinstance(alone, Question) or _is_idle(alone) or alone.topic is weather:
        return None
    return alone if alone.confidence >= SURE_FROM else None


_OF_NOTHING = regex(r"\bwhat about (?:it|that|this|them)$")


def _is_clear(question: Question, message: Message) -> bool:
    """ "Was out, I hit it": small words, but enough of them for a topic beyond doubt.

    "And then what about it" asks of something that it does not say.
    """
    is_long = len(message.said) >= SHORTEST_STATEMENT
    line = " ".join(word.folded for word in message.said)
    return question.confidence >= SURE_FROM and is_long and not _OF_NOTHING.search(line)


def _is_all_unknown(message: Message) -> bool:
    """Whether no word of it is English, the game's, a slip of the game's or a name."""
    lexicon = the_lexicon()
    return not message.mentions and not any(
        is_common(word.folded)
        or word.folded in lexicon.shorthand
        or lexicon.repair(word.folded) in lexicon.words
        for word in message.said
        if not word.folded.isdigit()
    )


def _is_code(text: str) -> bool:
    return sum(sign in _CODE_SIGNS for sign in text) >= FEWEST_CODE_SIGNS


def _inside_courtesies(
    understood: tuple[Understood, ...], message: Message, chat: ChatView
) -> tuple[Understood, ...]:
    """A question that courtesy or abuse around it hid; else what was understood."""
    if not _is_idle(understood[-1]):
        return understood
    bare = without_courtesies(message.text, message.said)
    if not bare or len(bare.split()) >= len(message.said):
        return understood
    inside = note_or_question(read_message(bare, chat), chat)
    asked = tuple(replace(one, text=message.text) for one in inside if isinstance(one, Question))
    return understood if len(asked) < len(inside) or _is_idle(asked[-1]) else asked


def _is_idle(said: Understood) -> bool:
    is_talk = isinstance(said, Question) and said.topic is Topic.SMALLTALK_OR_UNKNOWN
    return is_talk or isinstance(said, Unclear)
