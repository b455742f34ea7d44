"""The questions the topic model learns from and is tried on, read as the bot reads them."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from bot.chat.features import Seen, extract
from bot.chat.lexicon import the_lexicon
from bot.chat.names import mentions_of
from bot.chat.phrases import all_phrases
from bot.chat.utterance import Mask, SlotToken, Utterance, read
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId, Topic
from scouting_db.values import PlayerRow

TESTS = Path(__file__).parents[1]
VOICES = TESTS / "cases" / "voices"
SECOND_LABELS = TESTS / "cases" / "second_labels"
WRITERS = TESTS / "train" / "writers"
OPEN_VOICES = ("nova", "gaffer", "walt", "rex", "dot", "sid")
HELD_OUT = ("ilse", "kay", "roz", "teun")


# The people every voice was told to use (tests/cases/voices/BRIEF.md); all invented.
_OURS = ("Mira", "Tom")
_THEIRS = (
    "Chidi Okafor",
    "Sven Lindqvist",
    "Ana Ruiz",
    "Ben Hale",
    "Brandt",
    "Castellano",
    "Nguyen-Brandt",
    "O'Dell",
    "van der Meer",
    "Szymanski",
)
VIEW = ChatView(
    book=1,
    version=1,
    roster=tuple(
        PlayerRow(player=PlayerId(at), name=name, ours=name in _OURS)
        for at, name in enumerate((*_OURS, *_THEIRS))
    ),
    ours=(PlayerId(0), PlayerId(1)),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A question with its topic, others that serve it as well, and the topic before it."""

    text: str
    topic: Topic
    also: frozenset[Topic] = frozenset()
    after: Topic | None = None

    @property
    def right(self) -> frozenset[Topic]:
        return self.also | {self.topic}


def our_examples() -> list[Example]:
    """The phrases, each `<score>` filled in with a score that changes from line to line."""
    return [
        Example(text=_with_score(phrase.text, at), topic=phrase.topic, after=phrase.after)
        for at, phrase in enumerate(all_phrases())
    ]


def _with_score(text: str, at: int) -> str:
    return text.replace("<score>", f"{at % 11}-{(at * 7 + 3) % 11}")


def voice_examples(voice: str) -> list[Example]:
    """A voice's questions, each right under either label where its two labellers differ.

    Where `after` is a question's words, its topic is looked up.
    """
    rows = _rows(VOICES / f"{voice}.questions.jsonl")
    topic_of = {row["text"]: row["topic"] for row in rows}
    second = _rows(SECOND_LABELS / f"{voice}.jsonl")
    return [
        _under_either(_example(row, topic_of), Topic(other["topic"]))
        for row, other in zip(rows, second, strict=True)
    ]


def _under_either(example: Example, second: Topic) -> Example:
    return replace(example, also=(example.right | {second}) - {example.topic})


def scored_questions() -> list[str]:
    """The words of all questions that figures are taken from, held out or not."""
    voices = (*OPEN_VOICES, *HELD_OUT)
    return [row["text"] for voice in voices for row in _rows(VOICES / f"{voice}.questions.jsonl")]


def writer_examples() -> list[Example]:
    """What the practice writers typed: for training only, never scored."""
    return [_example(row, {}) for path in writer_files() for row in _rows(path)]


def writer_files() -> list[Path]:
    return sorted(WRITERS.glob("*.jsonl"))


def _rows(path: Path) -> list[dict[str, Any]]:
    lines = path.read_text(encoding="utf-8").splitlines()
    return [json.loads(line) for line in lines if line.strip()]


def _example(row: dict[str, Any], topic_of: dict[str, str]) -> Example:
    after = row.get("after")
    if after and after not in set(Topic):
        after = topic_of.get(after, row["topic"])  # a follow-up stays with its topic
    also = row.get("also") or []
    return Example(
        text=row["text"],
        topic=Topic(row["topic"]),
        also=frozenset(map(Topic, [also] if isinstance(also, str) else also)),
        after=Topic(after) if after else None,
    )


@cache
def utterance_of(text: str) -> Utterance:
    """The text read as in a chat whose roster holds the people that voices write of."""
    masks = [
        Mask(
            span=mention.span,
            token=SlotToken.OURS
            if mention.players and all(player in VIEW.ours for player in mention.players)
            else SlotToken.NAME,
        )
        for mention in mentions_of(text, VIEW)
        if not mention.pronoun
    ]
    return read(text, masks)


@cache
def _common_words() -> frozenset[str]:
    text = files("bot.chat").joinpath("data/common_words.txt").read_text(encoding="utf-8")
    return frozenset(
        word for line in text.splitlines() if not line.startswith("#") for word in line.split()
    )


@cache
def known_words() -> frozenset[str]:
    """Words that are never repaired: everyday English and those of our phrases."""
    ours = (word for one in our_examples() for word in utterance_of(one.text).words)
    return _common_words() | frozenset(ours)


def see(examples: Iterable[Example], known: frozenset[str]) -> list[Seen]:
    lexicon = the_lexicon()
    return [
        extract(utterance_of(one.text), lexicon, known=known, context_topic=one.after)
        for one in examples
    ]


def lines_digest() -> str:
    """A hash of all lines trained on beside our phrases: the open voices' and the writers'."""
    digest = hashlib.sha256()
    for path in [*(VOICES / f"{voice}.questions.jsonl" for voice in OPEN_VOICES), *writer_files()]:
        digest.update(path.read_bytes())
    return digest.hexdigest()
