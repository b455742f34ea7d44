"""When a probe is asked for, and what it costs: looks are free, balls at a light score cheap."""

from __future__ import annotations

from enum import StrEnum
from math import comb

from knowledge.chances import EndlessGameError
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics.risk_at_score import is_cheap_to_test
from knowledge.tactics.score_view import view_of


class Moment(StrEnum):
    """What can be done: look on, or hit a ball that counts."""

    LOOK = "look"
    PLAY = "play"


_LOOK = regex(
    r"\b(?:warm\w*|knock\w*|fence|wu|watch\w*|see them|look\w*|notic\w*|before (?:the|it|we|they)|"
    r"finishing|toss)\b"
)
_PLAY = regex(
    r"\b(?:first (?:\w+ )?(?:points?|pts?|rall\w+|shots?|balls?)|early|points?|pts|rall\w+|"
    r"started|at the start|throw at|feed|giving away|experiments?)\b"
)
_TRUST = regex(
    r"\b(?:how many (?:balls?|tries|times|points?|rall\w+|dinks?|looks?)|trust|sure enough|"
    r"how sure|before i (?:believe|know))\b"
)


def moment_of(situation: Situation) -> Moment:
    """By the words; where they don't say, by whether a game is on."""
    words = situation.asked.words.casefold()
    if _LOOK.search(words):
        return Moment.LOOK
    game = situation.game
    is_on = game is not None and game.ours + game.theirs > 0
    return Moment.PLAY if _PLAY.search(words) or is_on else Moment.LOOK


def asks_how_sure(situation: Situation) -> bool:
    """Whether the question is how often a thing must be seen to be believed."""
    return bool(_TRUST.search(situation.asked.words.casefold()))


def is_cheap_now(situation: Situation) -> bool | None:
    """Whether a try teaches more for later than this rally weighs; None without a running game."""
    if situation.game is None or situation.game.is_over:
        return None
    try:
        return is_cheap_to_test(view_of(situation))
    except EndlessGameError:
        return None


def more_often_than_not(seen: int, tries: int) -> float:
    """Chance that they do it more than half the time, having done it `seen` times of `tries`.

    Beforehand any share is as likely as another: P(Beta(k+1, n-k+1) > 1/2), which is the sum of
    C(n+1, j) / 2^(n+1) over j = 0..k (the beta and the binomial distribution, from memory).
    """
    ways: int = sum(comb(tries + 1, j) for j in range(seen + 1))
    return float(ways / 2 ** (tries + 1))
