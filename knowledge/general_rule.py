"""Rules kept as data: a call with reasons, checked at load, picked by a question's words."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from importlib.resources import files

from knowledge.advice import CALL_LIMIT, MAX_REASONS, Reason
from knowledge.dataclass import dataclass
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind, computed, rule

LINE_LIMIT = 50
"""Characters of a reason or another line: about a line and a bit on a phone."""

STEM_LETTERS = 4
"""A keyword from this length on also matches longer forms: bang, bangs, banging."""


class RuleDataError(ValueError):
    """A data file lacks something, or has a line too long for a phone; the message says what."""


_UNTELLING_WORDS = (
    "a an and at be by do for from he her him his i in is it its me my of off on our out she so "
    "that the their them they this to up us was we with you your"
)
UNTELLING = frozenset(_UNTELLING_WORDS.split())
"""Words that tell nothing by themselves; a phrase may still need them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GeneralRule:
    """What holds where nothing about these people is used. `words` pick it, if several could.

    `together` picks it before any `words` do: one of each group must be said.
    """

    call: str
    reasons: tuple[Reason, ...]
    unless: str | None = None
    caution: str | None = None
    words: tuple[str, ...] = ()
    together: tuple[tuple[str, ...], ...] = ()


def load_table(package: str, name: str) -> dict[str, object]:
    """A data file beside its loader."""
    return tomllib.loads(files(package).joinpath(name).read_text(encoding="utf-8"))


def read_forms(name: str) -> dict[str, tuple[str, ...]]:
    """The ways of telling of a data file; RuleDataError where they are no lists."""
    table = load_table("knowledge.tactics", name)
    read = {id: tuple(said) for id, said in table.items() if isinstance(said, list)}
    if len(read) != len(table):
        raise RuleDataError(f"{name} has a list of texts for each entry")
    return read


def load_entries(package: str, name: str) -> tuple[Mapping[str, object], ...]:
    """The `[[entry]]` rows of a data file."""
    rows = load_table(package, name).get("entry")
    if not isinstance(rows, list) or not rows:
        raise RuleDataError(f"{name} has no [[entry]]")
    return tuple(rows)


def read_rule(row: Mapping[str, object]) -> GeneralRule:
    """A rule from its data; RuleDataError for one that does not fit a phone."""
    reasons = row.get("reasons", [])
    if not isinstance(reasons, list) or len(reasons) > MAX_REASONS:
        raise RuleDataError(f"at most {MAX_REASONS} reasons, not {reasons}")
    return GeneralRule(
        call=fitting(row.get("call"), CALL_LIMIT),
        reasons=tuple(read_reason(reason) for reason in reasons),
        unless=optional_line(row, "unless"),
        caution=optional_line(row, "caution"),
        words=read_words(row) if "words" in row else (),
        together=_groups(row.get("together", [])),
    )


def _groups(said: object) -> tuple[tuple[str, ...], ...]:
    if not isinstance(said, list) or not all(isinstance(group, list) and group for group in said):
        raise RuleDataError(f"together is a list of groups of words, not {said!r}")
    return tuple(tuple(str(word) for word in group) for group in said)


def read_words(row: Mapping[str, object]) -> tuple[str, ...]:
    """The keywords that pick an entry; RuleDataError for none."""
    words = row.get("words")
    if not isinstance(words, list) or not words:
        raise RuleDataError(f"an entry needs words: {row}")
    return tuple(str(word) for word in words)


def read_reason(said: object) -> Reason:
    """A reason from its data: a text of common practice, or a text with its source."""
    if isinstance(said, dict) and {"text", "source"} == set(said):
        text = fitting(said["text"], LINE_LIMIT)
        return Reason(text=text, source=read_source(str(said["source"])))
    return Reason(text=fitting(said, LINE_LIMIT), source=COMMON_PRACTICE)


def read_source(said: str) -> Source:
    """A source from its data: "rule 5.B", "computed MODEL" or "published CITATION"."""
    kind, _, citation = said.partition(" ")
    if kind == "rule" and citation:
        return rule(citation)
    if kind == "computed" and citation:
        return computed(citation)
    if kind == "published" and citation:
        return Source(kind=SourceKind.PUBLISHED, citation=citation)
    raise RuleDataError(f"a source is rule, computed or published, not {said!r}")


def fitting(text: object, limit: int) -> str:
    """The text if it is one and fits; RuleDataError otherwise."""
    if not isinstance(text, str) or not 0 < len(text) <= limit:
        raise RuleDataError(f"expected 1 to {limit} characters: {text!r}")
    return text


def optional_line(row: Mapping[str, object], key: str) -> str | None:
    """A line that may be missing; RuleDataError if it does not fit."""
    return fitting(row[key], LINE_LIMIT) if key in row else None


def groups_said(rule: GeneralRule, said: str) -> int:
    """How many groups of words stand together in a question; 0 unless all of them do."""
    tokens = _tokens(said)
    stands = all(any(_covered(word.split(), tokens) for word in group) for group in rule.together)
    return len(rule.together) if stands else 0


def _tokens(said: str) -> list[str]:
    return re.findall(r"[a-z0-9]+", said.lower().replace("'", "").replace("’", ""))


def overlap(keywords: Iterable[str], said: str) -> int:
    """How many telling words of a question the keywords cover; a phrase must stand whole."""
    tokens = _tokens(said)
    line = " ".join(tokens)
    covered: set[int] = set()
    for keyword in keywords:
        stems = keyword.split()
        if stems[0] in line:  # or no word begins with it
            covered |= _covered(stems, tokens)
    return sum(tokens[place] not in UNTELLING for place in covered)


def _covered(keyword: Sequence[str], tokens: Sequence[str]) -> set[int]:
    for place in range(len(tokens) - len(keyword) + 1):
        if all(_matches(stem, tokens[place + n]) for n, stem in enumerate(keyword)):
            return set(range(place, place + len(keyword)))
    return set()


def _matches(stem: str, token: str) -> bool:
    return token == stem or (len(stem) >= STEM_LETTERS and token.startswith(stem))
