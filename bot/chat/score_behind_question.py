"""A score told behind a question: "what now ten ten one they serve", "time-out? 9-8-1 us".

It is a whole call with who serves, at the end, and stands now: behind "now" or "its", or in a
clause of its own. What is only supposed says so ("at", "if", "say"), and is asked about alone.
"""

from __future__ import annotations

from bot.chat.message import Message
from bot.chat.numbers import groups
from bot.chat.said import Question, ScoreSaid, Unclear, Understood
from bot.chat.scores import score_message, stray_words
from bot.chat.several_questions import part_of
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.vocabulary import Topic

_NOW = words_in("now its it is")
_MARKS = frozenset("?,;.!\n–—")
_SUPPOSED = words_in(
    "if when whenever say suppose supposing imagine would were was at till until unless from once"
    " about like vs versus than between"
)
_OF_A_CASE = frozenset({Topic.WIN_CHANCE, Topic.RULES_QUESTION})


def score_behind(
    message: Message, chat: ChatView, said: tuple[Understood, ...]
) -> ScoreSaid | None:
    """The score to keep beside these questions; None where none is told behind them.

    Behind a comma alone a call that our chances or a rule are asked at is rather supposed.
    """
    numbers = groups(message.said)
    if not chat.match_on or chat.forwarded or len(numbers) != 1:
        return None
    start = numbers[0].start
    before = [word.folded for word in message.said[:start]]
    if not before or _SUPPOSED.intersection(before):
        return None
    is_now = before[-1] in _NOW
    is_apart = bool(set(message.said[start].gap) & _MARKS)
    if not is_now and (not is_apart or _asks_of_a_case(said)):
        return None
    part = part_of(message, start, len(message.said), chat)
    score = score_message(part.text, part.told.of_score)
    if not isinstance(score, ScoreSaid) or score.score is None or stray_words(part.told.of_score):
        return None
    told = score.score
    return score if told.server is not None and told.we_serve is not None else None


def _asks_of_a_case(said: tuple[Understood, ...]) -> bool:
    return any(
        (isinstance(one, Question) and one.topic in _OF_A_CASE)
        or (isinstance(one, Unclear) and Topic.WIN_CHANCE in one.offers)
        for one in said
    )
