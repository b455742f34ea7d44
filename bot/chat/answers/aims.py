"""Our logged choices, where they may tell them what comes next."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

from bot.chat.answers.desk import Desk
from bot.chat.answers.record_read import logged_aims
from knowledge.mixing import MIXED_TOPICS
from knowledge.situation import Situation


def with_aims(desk: Desk, situation: Situation) -> Situation:
    """The situation with what we chose against this pair; nothing is read where nobody mixes."""
    topic = situation.topic
    if topic not in MIXED_TOPICS or len(situation.theirs) != 2:
        return situation
    logged = logged_aims(desk, topic, [one.player for one in situation.theirs])
    return replace(
        situation,
        recent_aims=MappingProxyType({topic: logged.options}),
        aims_won=MappingProxyType({topic: logged.won}),
    )
