"""What stands beside what was told: a question answered as well, topics or a note as buttons."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.asking import surely_asks
from bot.chat.asks_model import ASKS_FROM, MAY_ASK_FROM, OFFERED_WITH_SCORE_FROM
from bot.chat.forms import word_set
from bot.chat.introduced_first import after_introduction
from bot.chat.message import Message, is_ours, names_somebody, opponents
from bot.chat.note_or_question import SHORTEST_STATEMENT, begins_as_note, opens_with_somebody
from bot.chat.opponents_told import opponents_told
from bot.chat.rally_clauses import LONGEST_TOLD
from bot.chat.rally_opening import opened_by
from bot.chat.said import (
    MatchSaid,
    NoteSaid,
    Question,
    RallySaid,
    ResultSaid,
    SaidScore,
    ScoreSaid,
    Unclear,
    Understood,
)
from bot.chat.score_fixes_said import score_fixed
from bot.chat.scores import stray_words
from bot.chat.serving_said import serving_said
from bot.chat.topic_model import SURE_FROM
from bot.chat.topic_question import (
    CERTAIN,
    LIKELIER_RIGHT,
    asked_anyway,
    asking,
    likely_question,
    topics_offered,
    topics_with_score,
)
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.complaints import complains, complains_of_us
from knowledge.regex import regex
from knowledge.vocabulary import Topic

STRAY_WORDS_OF_A_QUESTION = 3
"""A score with so many other words may be asking something, if the topic is clear."""

FEWEST_WORDS_OFFERED = 2
"""Words beside a score for topics to be offered where it hardly reads like a question."""

LONG_NOTE = 20
"""Words of a message worth keeping though it asks at its end. Common practice, no source."""

ASKS_BESIDE = 0.5
"""How much a score with fewer other words must read like a question to be answered as well, and a
rally told in words to be nothing but a question. With a topic beyond doubt MAY_ASK_FROM will do: of
the writers' hard scores that answers 13 of 39 such lines that ask and 7 of 411 that do not."""

_OTHERWISE = word_set("not_of_one_rally")
_POINTS = frozenset(["point", "points", "pt", "pts", "ball"])

_BESIDE_OUR_BODY = frozenset({Topic.TIMEOUT_NOW, Topic.PAIR_UP})
"""What may be offered where one of us is hurt: a break, or somebody else to play with."""


def asked_beside(fixed: Understood, message: Message, chat: ChatView) -> tuple[Question, ...]:
    """A question put as a statement around a score ("5-5, feels like we are stuck")."""
    asked = _asked_beside(fixed, message, chat)
    return () if _is_of_an_end(fixed, asked, message, chat) else asked


_NAMES_CHANCES = regex(r"\b(?:chances?|odds)\b")

_OF_A_SCORE = frozenset({Topic.WIN_CHANCE, Topic.RISK_AT_SCORE, Topic.WHERE_TO_STAND})


def _is_of_an_end(
    fixed: Understood, asked: Sequence[Question], message: Message, chat: ChatView
) -> bool:
    """ "11-9 us lol what a comeback": a game that is over has no chances, unless they are asked."""
    if not asked or asked[0].topic not in _OF_A_SCORE or message.asks:
        return False
    if _NAMES_CHANCES.search(folded_line(message.said)):
        return False
    if isinstance(fixed, ResultSaid):
        return bool(fixed.games)
    points = _points(fixed.score) if isinstance(fixed, ScoreSaid) else None
    return points is not None and chat.format.is_won(max(points), min(points))


def _points(score: SaidScore | None) -> tuple[int, int] | None:
    if score is None or (score.ours is None and score.call is None):
        return None
    if score.ours is not None and score.theirs is not None:
        return score.ours, score.theirs
    return None if score.call is None else (score.call.serving, score.call.receiving)


def _asked_beside(fixed: Understood, message: Message, chat: ChatView) -> tuple[Question, ...]:
    stray = _words_beside(fixed, message, chat)
    if stray <= 0:
        return ()
    is_clear = stray >= STRAY_WORDS_OF_A_QUESTION and not isinstance(fixed, MatchSaid)
    if is_clear or asking(message, chat) >= ASKS_BESIDE:
        asked = asked_anyway(message, chat)
        return () if asked is None else asked[:1]
    if asking(message, chat) < _asks_enough(fixed, chat):
        return ()
    question = likely_question(message, chat)
    needed = LIKELIER_RIGHT if _is_of_no_match(fixed, chat) else SURE_FROM
    return () if question is None or question.confidence < needed else (question,)


def _asks_enough(fixed: Understood, chat: ChatView) -> float:
    """How much it must read like a question for a clear topic to be answered beside it."""
    is_lightly_told = isinstance(fixed, ScoreSaid) or _is_of_no_match(fixed, chat)
    return MAY_ASK_FROM if is_lightly_told else ASKS_FROM


def _is_of_no_match(fixed: Understood, chat: ChatView) -> bool:
    """A rally while no match is on: there is nothing that it could count for."""
    return isinstance(fixed, RallySaid) and not chat.match_on


def with_topics_beside(fixed: Understood, message: Message, chat: ChatView) -> Understood:
    """A score or a result that is not answered, with the topics that it may ask about."""
    if not isinstance(fixed, ScoreSaid | ResultSaid):
        return fixed
    stray, score = _words_beside(fixed, message, chat), asking(message, chat)
    needed = OFFERED_WITH_SCORE_FROM if stray >= FEWEST_WORDS_OFFERED else MAY_ASK_FROM
    if stray <= 0 or score < needed:
        return fixed
    return replace(fixed, may_ask=topics_with_score(message, chat))


def _words_beside(fixed: Understood, message: Message, chat: ChatView) -> int:
    """How many words may ask something beside what was told; none beside a score put right."""
    if not isinstance(fixed, ScoreSaid | RallySaid | ResultSaid | MatchSaid):
        return 0
    if isinstance(fixed, MatchSaid) and _only_announces(message, chat):
        return 0  # every word of it announces
    if score_fixed(message, chat) is not None:
        return 0  # "wait, it should be 4-4-1" says what the score is, and nothing else
    if isinstance(fixed, ScoreSaid) and _counts_games(fixed, message):
        return 0
    if isinstance(fixed, ScoreSaid) and serving_said(message, chat) is not None:
        return 0  # "actually we serve first": every word of it tells whose serve it is
    if isinstance(fixed, RallySaid) and _is_told_whole(message):
        return 0
    stray = stray_words(message.told.of_score) - _of_match_points(message)
    stray -= _of_the_end(fixed, message)
    return stray - fixed.understood if isinstance(fixed, RallySaid) and not message.asks else stray


def _is_told_whole(message: Message) -> bool:
    """ "Lost it i dumped the third": whose it was and what was done; without a word of what holds
    at all times, or of a question, there is nothing beside it."""
    said = message.told.words
    is_asked = message.asks or any(word.folded in _OTHERWISE for word in said)
    return not is_asked and len(said) <= LONGEST_TOLD and opened_by(said) > 0


_GAMES = frozenset(["1st", "2nd", "3rd", "first", "second", "third"])


def _counts_games(score: ScoreSaid, message: Message) -> bool:
    """ "3rd, 6-6-1 they serve": which game it is; while they serve the third shot is not ours."""
    opens = message.said[0].folded in _GAMES and message.said[1:2] != ()
    is_theirs = score.score is not None and score.score.we_serve is False
    return is_theirs and opens and message.said[1].folded[0].isdigit()


def _of_match_points(message: Message) -> int:
    """How often "match point" tells of the score itself: "4-10 match point them" asks nothing."""
    said = [word.folded for word in message.told.of_score]
    return sum(one == "match" and then in _POINTS for one, then in pairwise(said))


_ENDED = regex(
    r"^(?:\w+ )*?(?:ended|wound|finished) up (?:losing|winning|dropping|taking|beating)\b"
)


def _of_the_end(fixed: Understood, message: Message) -> int:
    """How many words lead over to how a game ended: "so we ended up losing 11-7" asks nothing."""
    if not isinstance(fixed, ResultSaid) or message.asks:
        return 0
    found = _ENDED.match(folded_line(message.told.words))
    if found is None:
        return 0
    left_out = sum(word.folded == "," for word in message.told.of_score)
    return left_out + stray_words(message.told.words[: len(found[0].split())])


def with_offers(
    said: tuple[Understood, ...], message: Message, chat: ChatView
) -> tuple[Understood, ...]:
    """A note alone with the topics it may ask about, a question alone that may be a note."""
    if chat.forwarded or begins_as_note(message.said):
        return said
    match said:
        case (NoteSaid() as note,):
            return (replace(note, may_ask=_topics_of_note(note, message, chat)),)
        case (Question() as question,):
            return (replace(question, may_note=_may_be_a_note(question, message, chat)),)
        case (Unclear() as unclear,):
            may_note = _may_be_told(message, chat) and not _is_of_an_answer(message)
            return (replace(unclear, may_note=may_note),)
    return said


def _topics_of_note(note: NoteSaid, message: Message, chat: ChatView) -> tuple[Topic, ...]:
    hurts = note.about_body or (not note.claims and complains(note.text))
    care = (Topic.WEATHER_OR_BODY,) if hurts else ()
    offered = topics_offered(message, chat)
    if hurts and _is_of_us(message, chat):
        offered = tuple(topic for topic in offered if topic in _BESIDE_OUR_BODY)
    return tuple(dict.fromkeys((*care, *offered)))


def _is_of_us(message: Message, chat: ChatView) -> bool:
    """Whether the body may be one of ours: "gina limps, hale pops it up" asks whom to target."""
    return complains_of_us(message.text, names=()) or any(
        is_ours(one, chat.ours) for one in message.mentions
    )


def _may_be_a_note(question: Question, message: Message, chat: ChatView) -> bool:
    """A statement answered as a question; what names nobody must read the less like one."""
    if question.confidence >= CERTAIN or question.topic is Topic.SMALLTALK_OR_UNKNOWN:
        return False
    return _may_be_told(message, chat)


def _may_be_told(message: Message, chat: ChatView) -> bool:
    """Whether its words may tell of somebody; a long one with claims does, however it ends."""
    if len(message.said) < SHORTEST_STATEMENT or surely_asks(message.text, message.said):
        return False
    if message.note.about_body or complains(message.text):
        return False
    if message.note.claims and len(message.said) >= LONG_NOTE and names_somebody(message):
        return True
    is_of_somebody = names_somebody(message) or opens_with_somebody(message.said)
    below = ASKS_FROM if is_of_somebody else MAY_ASK_FROM
    return asking(message, chat) < below


_OF_AN_ANSWER = frozenset(["ask", "asked", "answer", "answered", "question"])


def _is_of_an_answer(message: Message) -> bool:
    """ "That's not what I asked": nothing for the book."""
    return any(word.folded in _OF_AN_ANSWER for word in message.said)


def _only_announces(message: Message, chat: ChatView) -> bool:
    """Whether nothing but whom we play is told, or who writes and plays with whom before it."""
    if after_introduction(message.text)[1] is not None:
        return not message.asks
    return bool(opponents_told(message, opponents(message.mentions, chat)))
