"""How the topic model fares on questions: answered at once, shown, misled."""

from __future__ import annotations

import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from topic_examples import TESTS, Example, utterance_of
from topic_training import ASKED_AT_MOST, Scored, calibrate

from bot.chat.topic_conditions import Said
from bot.chat.topic_model import (
    Band,
    Calibration,
    TopicGuess,
    TopicModel,
    chances_of,
    guess_of,
    recognise,
    signals_of,
)
from knowledge.vocabulary import Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """How a set of questions fared: shares of all its questions."""

    questions: int
    at_once: float
    shown: float
    misled: float
    asked: float
    either: float

    @property
    def shares(self) -> tuple[float, ...]:
        return self.at_once, self.shown, self.misled, self.asked, self.either

    def __str__(self) -> str:
        return f"{self.questions:5d} " + " ".join(f"{share:8.1%}" for share in self.shares)

    def row(self) -> str:
        """The figures as cells of a Markdown table."""
        return f"{self.questions} | " + " | ".join(f"{share:.1%}" for share in self.shares)


HEADER = "    n  at once    shown   misled    asked   either"


@cache
def either_pairs() -> frozenset[frozenset[Topic]]:
    data = tomllib.loads((TESTS / "cases" / "topics_either.toml").read_text(encoding="utf-8"))
    return frozenset(frozenset(map(Topic, pair["topics"])) for pair in data["pair"])


def figures(pairs: Sequence[tuple[Example, TopicGuess]]) -> Figures:
    """At once: answered rightly. Shown: right topic to be seen. Misled: answered, not shown."""
    answered = [(one, guess) for one, guess in pairs if guess.band is not Band.UNSURE]
    at_once = sum(guess.topic in one.right for one, guess in answered)
    filed_near = sum(_is_either(guess.topic, one) for one, guess in answered)
    misled = sum(not set(guess.shown) & one.right for one, guess in answered)
    count = len(pairs)
    return Figures(
        questions=count,
        at_once=at_once / count,
        shown=sum(bool(set(guess.shown) & one.right) for one, guess in pairs) / count,
        misled=misled / count,
        asked=1 - len(answered) / count,
        either=(at_once + filed_near) / count,
    )


def _is_either(topic: Topic, example: Example) -> bool:
    near = any(frozenset((topic, right)) in either_pairs() for right in example.right)
    return topic not in example.right and near


def out_of_voice_figures(
    found: dict[str, list[Scored]], *, asked: float = ASKED_AT_MOST
) -> dict[str, Figures]:
    """Each voice's figures, its chances calibrated on the other voices only."""
    return {voice: figures(guesses) for voice, guesses in _guesses_of(found, asked).items()}


def all_voices_figures(found: dict[str, list[Scored]], *, asked: float = ASKED_AT_MOST) -> Figures:
    """The figures of all voices' questions taken together."""
    return figures([one for each in _guesses_of(found, asked).values() for one in each])


def _guesses_of(
    found: dict[str, list[Scored]], asked: float
) -> dict[str, list[tuple[Example, TopicGuess]]]:
    return {
        voice: _guesses(
            scored, calibrate([x for v in found if v != voice for x in found[v]], asked=asked)
        )
        for voice, scored in found.items()
    }


def _guesses(
    scored: Sequence[Scored], calibration: Calibration
) -> list[tuple[Example, TopicGuess]]:
    found = []
    for one in scored:
        chances = chances_of(one.scores, calibration.sharpness)
        signals = signals_of(one.scores, chances, one.seen)
        said = Said(words=utterance_of(one.example.text).words, match_on=False)
        found.append((one.example, guess_of(calibration, one.scores, signals, said)))
    return found


def score(examples: Sequence[Example], model: TopicModel) -> Figures:
    """The figures of a finished model on questions it has not seen."""
    return figures(
        [
            (
                one,
                recognise(
                    utterance_of(one.text), context_topic=one.after, match_on=False, model=model
                ),
            )
            for one in examples
        ]
    )
