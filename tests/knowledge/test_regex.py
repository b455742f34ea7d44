"""Expressions compiled at first use: they answer as compiled ones do, and all of them compile."""

from __future__ import annotations

import importlib
import pkgutil
import re
import threading

import pytest
from function_calls import compile_all

import bot
import knowledge
import scouting_db
from knowledge.regex import regex

LEFT_OUT = ("bot.__main__", "scouting_db.migrations")
"""What runs when it is imported."""


def test_it_answers_as_a_compiled_one_does() -> None:
    text = "Okafor, okafor and RUIZ"
    late = regex(r"\b(okafor|ruiz)\b", re.IGNORECASE)
    now = re.compile(r"\b(okafor|ruiz)\b", re.IGNORECASE)
    assert late.findall(text) == now.findall(text)
    assert [one.span() for one in late.finditer(text)] == [one.span() for one in now.finditer(text)]
    assert late.sub("X", text) == now.sub("X", text)
    assert late.split(text) == now.split(text)
    assert repr(late.match(text, 8)) == repr(now.match(text, 8))
    assert repr(late.search(text, 1)) == repr(now.search(text, 1))
    assert late.fullmatch(text) is now.fullmatch(text) is None
    assert (late.pattern, late.groups) == (now.pattern, now.groups)


def test_nothing_is_compiled_before_its_first_use(monkeypatch: pytest.MonkeyPatch) -> None:
    compiled: list[str] = []
    real = re.compile

    def watched(pattern: str, flags: int = 0) -> re.Pattern[str]:
        compiled.append(pattern)
        return real(pattern, flags)

    monkeypatch.setattr(re, "compile", watched)
    late = regex("a+")
    assert compiled == []
    assert [late.search("baa") is not None for _ in range(3)] == [True] * 3
    assert compiled == ["a+"]


def test_a_mistake_shows_at_the_first_use() -> None:
    late, is_told = regex("("), False
    try:
        late.search("x")
    except re.error:
        # Not pytest.raises, which would keep the faulty one alive for the test of all.
        is_told = True
    assert is_told


def test_many_threads_may_use_it_first_at_once() -> None:
    late = regex(r"(\w+) (\w+)")
    found: list[tuple[str, ...]] = []
    gate = threading.Barrier(8)

    def use() -> None:
        gate.wait()
        match = late.match("ana ruiz")
        assert match is not None
        found.append(match.groups())

    threads = [threading.Thread(target=use) for _ in range(8)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert found == [("ana", "ruiz")] * 8


def test_every_expression_of_ours_compiles() -> None:
    for package in (bot, knowledge, scouting_db):
        for module in pkgutil.walk_packages(package.__path__, f"{package.__name__}."):
            if not module.name.startswith(LEFT_OUT):
                importlib.import_module(module.name)
    # A mistake would raise here: re.error, with the pattern.
    assert len(compile_all()) > 400
