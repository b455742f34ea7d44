"""What a button settles of one ball: how high, how deep, how it comes, where everybody stands."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.asked import Asked
from bot.chat.payload import BadPayloadError
from knowledge.advice import MatchFact
from knowledge.ball_facts import NOTHING_SAID
from knowledge.tactics.ball_words import with_fact


def with_ball_fact(asked: Asked, fact: MatchFact, value: str) -> Asked:
    """The ball with that settled; what was wrong with the words before is said already."""
    facts = replace(asked.facts or NOTHING_SAID, fault=None)
    try:
        facts = with_fact(facts, fact, value)
    except ValueError as error:
        raise BadPayloadError(str(error)) from None
    ball = None if fact is MatchFact.HEIGHT else asked.ball
    return replace(asked, facts=facts, ball=ball)
