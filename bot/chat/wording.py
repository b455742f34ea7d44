"""The sentences we say, loaded from data and checked at load time."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files

from knowledge.vocabulary import Topic


class WordingError(ValueError):
    """The wording file lacks a sentence, or has an empty one."""


def wording(key: str) -> str:
    """The sentence of a key such as `note.kept` or `topic.aim_dink`; KeyError for a typo."""
    return _sentences()[key]


@cache
def _sentences() -> dict[str, str]:
    text = files("bot.chat.data").joinpath("wording.toml").read_text(encoding="utf-8")
    sentences = dict(_flat(tomllib.loads(text)))
    missing = [topic for topic in Topic if f"topic.{topic}" not in sentences]
    empty = [key for key, sentence in sentences.items() if not sentence.strip()]
    if missing or empty:
        raise WordingError(f"wording.toml: no label for {missing}, empty {empty}")
    return sentences


def _flat(table: dict[str, object], prefix: str = "") -> list[tuple[str, str]]:
    flat: list[tuple[str, str]] = []
    for key, value in table.items():
        if isinstance(value, dict):
            flat += _flat(value, f"{prefix}{key}.")
        else:
            flat.append((f"{prefix}{key}", str(value)))
    return flat
