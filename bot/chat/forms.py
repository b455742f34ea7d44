"""Forms and word sets that understanding looks for, loaded from data and checked at load time."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files
from typing import Any

from knowledge.regex import regex

_PART = regex(r"<(\w+)>")


class FormsError(ValueError):
    """A form that is no regular expression, or a list without anything in it."""


def patterns(key: str) -> tuple[str, ...]:
    """The alternatives listed under a key such as `asking_first` or `ball.easy`."""
    table: Any = _data()["patterns"]
    for part in key.split("."):
        table = table[part]
    return tuple(table)


@cache
def any_of(key: str, *, first: bool = False, last: bool = False) -> re.Pattern[str]:
    """Any of the alternatives as whole words, at the line's start or end where so said."""
    return _joined(patterns(key), "^" if first else r"\b", "$" if last else r"\b")


def branches(key: str) -> tuple[str, ...]:
    """The keys below a key: `ball` has `easy`, `neutral`, `stretched`, in the file's order."""
    return tuple(_data()["patterns"][key])


def short_forms() -> Mapping[str, str]:
    """Words typed short or misspelt, each with the word meant."""
    forms: Mapping[str, str] = _data()["short_forms"]
    return forms


def court_shorthand() -> Mapping[str, str]:
    """What players type short for a whole word or two, beside slips: "tgt", "dtl", "su"."""
    shorthand: Mapping[str, str] = _data()["court_shorthand"]
    return shorthand


@cache
def readings(key: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    """What may be read under a key: every branch with its forms, in the file's order."""
    return tuple((name, any_of(f"{key}.{name}")) for name in branches(key))


def yes_or_no(key: str, line: str) -> bool | None:
    """Whether it is said to be so; what is denied is denied whatever else stands there."""
    said = [name for name, form in readings(key) if form.search(line)]
    return None if not said else "false" not in said


def word_set(key: str) -> frozenset[str]:
    return frozenset(_data()["words"][key])


def _joined(alternatives: Sequence[str], start: str, end: str) -> re.Pattern[str]:
    try:
        return re.compile(f"{start}(?:{'|'.join(alternatives)}){end}")
    except re.error as error:
        raise FormsError(f"forms.toml: {error} in {alternatives}") from error


@cache
def _data() -> dict[str, Any]:
    text = files("bot.chat.data").joinpath("forms.toml").read_text(encoding="utf-8")
    data = tomllib.loads(text)
    data["patterns"] = _with_parts(data["patterns"], data["parts"])
    empty = [key for key, words in data["words"].items() if not words]
    if empty:
        raise FormsError(f"forms.toml: nothing under {empty}")
    return data


def _with_parts(forms: Any, parts: Mapping[str, str]) -> Any:
    """The forms, or tables of them, with every `<part>` written out; a part may hold others."""
    if isinstance(forms, Mapping):
        return {key: _with_parts(below, parts) for key, below in forms.items()}
    if not isinstance(forms, str):
        return [_with_parts(form, parts) for form in forms]
    written = _PART.sub(lambda found: parts.get(found[1], found[0]), forms)
    return forms if written == forms else _with_parts(written, parts)
