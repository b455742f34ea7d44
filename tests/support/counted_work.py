"""How much work a message makes: counted, since a clock measures the machine and its load."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from rapidfuzz import process

from bot.chat import common_words, names, words
from bot.chat.asks_model import asking_score
from bot.chat.lexicon import Lexicon
from bot.chat.phrase import PhraseBook
from bot.chat.question_network import read_question
from bot.chat.utterance import Token
from scouting_db.names import NameIndex


@contextmanager
def counted_work(monkeypatch: pytest.MonkeyPatch) -> Iterator[Counter[str]]:
    """What is done inside: words and tokens read, likenesses weighed, phrases looked up.

    `letters` are those of everything compared, so that one huge word costs what it costs.
    What earlier messages left in memory is forgotten first.
    """
    done: Counter[str] = Counter()
    words.words.cache_clear()
    common_words.respelled.cache_clear()
    names._indexes.clear()
    Lexicon._nearest.cache_clear()
    asking_score.cache_clear()
    read_question.cache_clear()
    with monkeypatch.context() as patch:
        _count(patch, words, "Word", lambda *_, **__: {"words": 1}, done)
        _count(patch, Token, "__init__", lambda *_, **__: {"tokens": 1}, done)
        _count(patch, process, "extract", _likeness, done)
        _count(patch, NameIndex, "lookup", _name, done)
        _count(patch, NameIndex, "_near", lambda *_, **__: {"likenesses": 1}, done)
        _count(patch, PhraseBook, "find", lambda _, said: {"phrases": len(said)}, done)
        _count(patch, Lexicon, "find", lambda _, said: {"phrases": len(said)}, done)
        yield done


def _name(_: NameIndex, typed: str, **__: Any) -> dict[str, int]:
    return {"names": 1, "letters": len(typed)}


def _likeness(query: str, *_: Any, **__: Any) -> dict[str, int]:
    return {"likenesses": 1, "letters": len(query)}


def _count(
    patch: pytest.MonkeyPatch,
    owner: Any,
    name: str,
    tally: Callable[..., dict[str, int]],
    done: Counter[str],
) -> None:
    real = getattr(owner, name)

    def counting(*args: Any, **options: Any) -> Any:
        done.update(tally(*args, **options))
        return real(*args, **options)

    patch.setattr(owner, name, counting)
