"""What the engine is told about a question, and what it says to that."""

from __future__ import annotations

from bot.chat.answers.aims import with_aims
from bot.chat.answers.desk import Desk
from bot.chat.answers.evidence_read import with_profiles
from bot.chat.answers.jammed_hips import with_jammed_hips
from bot.chat.answers.notes_naming import with_kept_words
from bot.chat.answers.own_rates import base_rates
from bot.chat.answers.plan_book import with_plan_memory
from bot.chat.answers.record_read import meetings_before, rallies_today
from bot.chat.answers.standing import Standing
from bot.chat.context import Asked
from bot.chat.example_people import with_example
from bot.chat.gather import gather, people_of
from bot.chat.supposed import supposing
from knowledge.advice import Advice
from knowledge.situation import Situation
from knowledge.tactics import advise, advise_traced
from knowledge.vocabulary import Topic

SCORE_TOPICS = frozenset(
    {
        Topic.WIN_CHANCE,
        Topic.RISK_AT_SCORE,
        Topic.TIMEOUT_NOW,
        Topic.CHOOSE_END_OR_SERVE,
    }
)
"""Topics that weigh rallies, and so need the book's base rates and the rallies logged."""


def advice_on(
    desk: Desk, asked: Asked, where: Standing, *, traced: bool = False
) -> tuple[Advice, Situation]:
    """What the engine says, and what it was told."""
    situation = situation_for(desk, asked, where)
    return advised(desk, situation, traced=traced), situation


def advised(desk: Desk, situation: Situation, *, traced: bool) -> Advice:
    """What the engine says: an equal situation is not weighed again."""
    weigh = advise_traced if traced else advise
    key = (traced, situation.topic, situation.asked)
    return desk.views.advice.recall(key, (situation,), lambda: weigh(situation))


def situation_for(desk: Desk, asked: Asked, where: Standing) -> Situation:
    """Everything known that the answer may use."""
    asked = with_example(asked, desk.context, desk.view)
    situation = gather(
        asked,
        desk.context,
        with_profiles(desk, people_of(asked, desk.context, desk.view)),
        game=where.game,
        agreements=desk.agreements(),
        format=where.format if where.is_format_known else None,
        match=where.match,
        played=where.played,
        score_said=where.score_said,
        base_rates=base_rates(desk) if asked.topic in SCORE_TOPICS else None,
        rallies_today=rallies_today(desk) if asked.topic in SCORE_TOPICS else None,
        meetings=meetings_before(desk) if asked.topic in SCORE_TOPICS else None,
        today=desk.day,
    )
    situation = with_jammed_hips(desk, with_kept_words(desk, situation))
    return with_plan_memory(desk, with_aims(desk, supposing(situation, asked.hands)))
