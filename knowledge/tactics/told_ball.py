"""One ball as it was told: its words, who of ours meets it, and conditions on it."""

from __future__ import annotations

import re

from knowledge.ball_facts import Footing
from knowledge.effects import Condition, FactId, Truth
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import BallQuality

IN_BALANCE = 0.7
"""How often a ball of this kind is met in balance, where nobody says. Common practice."""


def plain_words(text: str) -> str:
    """In small letters, without apostrophes and other marks: "he’s" is "hes", "50%" stays."""
    return " ".join(re.findall(r"[\w%]+", re.sub(r"['’]", "", text.casefold())))


def striker_of(situation: Situation) -> OnCourt | None:
    """Who of ours it is about: named, the striker, or whoever asks."""
    about = [one for one in situation.ours if one.player in situation.asked.about]
    who = about[0].player if about else situation.striker or situation.asker
    return next((one for one in situation.ours if one.player == who), None)


def told(name: str, known: bool | None, *, usual: float, fact: str = "") -> Condition:
    """A condition of this name that was told, or not (None): then it holds with `usual`."""
    truth = Truth.of(known)
    return Condition(
        name=name, fact=FactId(fact or name), prevalence=usual, test=lambda _situation: truth
    )


def is_balanced(situation: Situation) -> bool | None:
    """Whether our player meets the ball in balance: by the feet, else by the ball's quality."""
    footing = situation.asked.facts.footing
    if footing is not None:
        return footing in (Footing.STILL, Footing.FORWARD)
    ball = situation.asked.ball
    return None if ball in (None, BallQuality.NEUTRAL) else ball is BallQuality.EASY


def balanced(situation: Situation) -> Condition:
    return told("we are in balance", is_balanced(situation), usual=IN_BALANCE, fact="ball")
