"""What the question network learns from: phrases, practice writers, and what only tells.

Never the voices that figures are taken from, so that one network serves every voice left out.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from claim_examples import rows_of, writer_files
from claim_examples import sources_digest as notes_digest
from line_writers import LEARNED_FROM, digest_of, lines_of
from near_duplicates import near_duplicates
from topic_examples import (
    Example,
    known_words,
    lines_digest,
    our_examples,
    scored_questions,
    utterance_of,
    writer_examples,
)

from bot.chat.features import spelled
from bot.chat.lexicon import the_lexicon
from bot.chat.phrases import sources_digest
from bot.chat.question_network import TOPICS
from bot.chat.question_words import QuestionWord, see_question
from knowledge.vocabulary import Topic

NOTES_LEARNED = 15_000  # of 34,000, so that questions are not outnumbered by more than they are
PHRASE_WEIGHT, TYPED_WEIGHT, HARD_ASKED_WEIGHT, HARD_TOLD_WEIGHT = 1.0, 3.0, 2.0, 6.0
"""What a line counts: our own phrase, what was typed, a hard question, a hard note or score."""

HARD_KINDS = ("asked", "noted", "scores")


@dataclass(frozen=True, slots=True, kw_only=True)
class TaughtLine:
    """A line as the network sees it, with its topics; none where it only tells."""

    seen: tuple[QuestionWord, ...]
    topics: tuple[int, ...]
    weight: float


def taught_lines(chance: random.Random) -> list[TaughtLine]:
    """Everything the network learns from, but what nearly repeats a question that is scored."""
    phrases, typed = our_examples(), writer_examples()
    lines = [
        *_asked(_apart(phrases), PHRASE_WEIGHT),
        *_asked(_apart(typed), TYPED_WEIGHT),
        *_asked(_hard_asked(), HARD_ASKED_WEIGHT),
    ]
    notes = [row["text"] for path in writer_files() for row in rows_of(path)]
    hard = [row["text"] for kind in ("noted", "scores") for row in _hard(kind)]
    return [
        *lines,
        *_told(hard, HARD_TOLD_WEIGHT),
        *_told(chance.sample(notes, NOTES_LEARNED), TYPED_WEIGHT),
    ]


def _apart(examples: Sequence[Example]) -> list[Example]:
    repeats = near_duplicates([one.text for one in examples], scored_questions())
    return [one for one, is_repeat in zip(examples, repeats, strict=True) if not is_repeat]


def _hard(kind: str) -> list[Any]:
    return [row for name in LEARNED_FROM for row in lines_of(name, kind)]


def _hard_asked() -> list[Example]:
    return [
        Example(
            text=row["text"],
            topic=Topic(row["topic"]),
            also=frozenset(map(Topic, row.get("also") or ())),
        )
        for row in _hard("asked")
    ]


def _asked(examples: Iterable[Example], weight: float) -> list[TaughtLine]:
    return [
        TaughtLine(
            seen=_see(one.text, one.after),
            topics=tuple(sorted(TOPICS.index(topic) for topic in one.right)),
            weight=weight,
        )
        for one in examples
    ]


def _told(texts: Iterable[str], weight: float) -> list[TaughtLine]:
    return [TaughtLine(seen=_see(text, None), topics=(), weight=weight) for text in texts]


def _see(text: str, after: Topic | None) -> tuple[QuestionWord, ...]:
    utterance = utterance_of(text)
    return see_question(utterance, spelled(utterance, the_lexicon(), known_words()), after)


def sources() -> dict[str, str]:
    """Hashes of all that it learns from: a network trained on others is stale."""
    return {
        "sources": sources_digest(),
        "lines": lines_digest(),
        "notes": notes_digest(),
        "hard": digest_of(*HARD_KINDS),
    }
