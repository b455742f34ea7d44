"""The phrases we wrote ourselves, one file a topic: what the topic model learns first from."""

from __future__ import annotations

import hashlib
import tomllib
from importlib.resources import files

from knowledge.dataclass import dataclass
from knowledge.vocabulary import Topic

FEWEST_PHRASES = 12
_AFTER = " > "


@dataclass(frozen=True, slots=True, kw_only=True)
class Phrase:
    """One thing a player may type; `after` is the topic spoken of before it."""

    text: str
    topic: Topic
    after: Topic | None = None


class PhraseFileError(ValueError):
    """A phrase file that does not say what it must; the message names file and fault."""


def phrases_of(topic: Topic) -> tuple[Phrase, ...]:
    """The topic's phrases, then its follow-ups."""
    return parse_phrases(_text(topic), topic)


def parse_phrases(text: str, topic: Topic) -> tuple[Phrase, ...]:
    """A phrase file's text: one phrase a line; a follow-up line is "topic before > text".

    Raises PhraseFileError for another topic's file, too few phrases or a bad follow-up.
    """
    data = tomllib.loads(text)
    name = f"{topic.value}.toml"
    if data.get("topic") != topic.value:
        raise PhraseFileError(f"{name}: topic is {data.get('topic')!r}, expected {topic.value!r}")
    plain = [Phrase(text=line, topic=topic) for line in _lines(data.get("phrases", ""))]
    if len(plain) < FEWEST_PHRASES:
        raise PhraseFileError(f"{name}: {len(plain)} phrases, expected {FEWEST_PHRASES} or more")
    follow_ups = [_follow_up(line, topic, name) for line in _lines(data.get("follow_ups", ""))]
    return (*plain, *follow_ups)


def all_phrases() -> tuple[Phrase, ...]:
    return tuple(phrase for topic in Topic for phrase in phrases_of(topic))


def sources_digest() -> str:
    """A hash of the phrase files and the lexicon: a model trained on others is stale."""
    digest = hashlib.sha256()
    for topic in Topic:
        digest.update(_text(topic).encode())
    lexicon = files("bot.chat").joinpath("data/lexicon.toml").read_text(encoding="utf-8")
    digest.update(lexicon.encode())
    return digest.hexdigest()


def _text(topic: Topic) -> str:
    place = files("bot.chat").joinpath(f"data/phrases/{topic.value}.toml")
    return place.read_text(encoding="utf-8")


def _lines(block: str) -> list[str]:
    return [line.strip() for line in block.splitlines() if line.strip()]


def _follow_up(line: str, topic: Topic, name: str) -> Phrase:
    after, arrow, text = line.partition(_AFTER)
    if not arrow or after not in set(Topic) or not text.strip():
        raise PhraseFileError(f"{name}: {line!r} is not 'topic > text'")
    return Phrase(text=text.strip(), topic=topic, after=Topic(after))
