"""What stands behind an answer's numbers: the notes and rallies, each in a short line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.answers.desk import Desk
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.odds_words import of_hundred
from knowledge.planning.aged import age
from knowledge.sources import counted
from knowledge.vocabulary import EvidenceId
from scouting_db.values import ToldNote, ToldRally, Winner

MOST_LINES = 8
"""Notes and rallies shown one by one; how many more there are is said."""

LONGEST_QUOTE = 48
"""Characters of a note's own words that a line shows."""

_KINDS = ("note", "match", "rally")
"""Notes are shown first: they say the most in a line."""


def behind_lines(desk: Desk, advice: Advice) -> tuple[str, ...]:
    """What the reasons name before what else was looked at, then how many more.

    Of either the newest, notes first; led by how likely the call is the best, where it is known.
    """
    evidence = advice.evidence
    if not evidence:
        return chance_of_being_best(advice)
    named = set(advice.named_evidence)
    shown = sorted(evidence, key=lambda each: (each not in named, *_place(each)))[:MOST_LINES]
    lines = [*_notes(desk, shown), *_matches(desk, shown), *_rallies(desk, shown)]
    more = len(evidence) - len(shown)
    rest = [wording("behind.more").format(count=more)] if more > 0 else []
    best = chance_of_being_best(advice)
    return (*best, wording("behind.title"), *(f"· {line}" for line in lines), *rest)


P_BEST = "p_best"
"""The name under which an answer's numbers hold the chance that its call is the best one."""


def chance_of_being_best(advice: Advice) -> tuple[str, ...]:
    """How likely the call is the best, in a line; nothing where no call was weighed."""
    chance = advice.numbers.get(P_BEST)
    if chance is None:
        return ()
    return (wording("behind.best").format(count=of_hundred(chance)),)


def _place(evidence: EvidenceId) -> tuple[int, list[int]]:
    kind, *numbers = evidence.split(":")
    return _KINDS.index(kind), [-int(number) for number in numbers]


def _notes(desk: Desk, shown: Sequence[EvidenceId]) -> Iterator[str]:
    told = desk.book.told_notes(shown)
    for at, one in enumerate(told):
        if any(_is_part_of(one, other, before=n < at) for n, other in enumerate(told) if n != at):
            continue
        name = desk.view.short_name(one.player)
        yield f"{name}: " + ", ".join((_quoted(one.words), *_of_note(desk, one)))


def _is_part_of(one: ToldNote, other: ToldNote, *, before: bool) -> bool:
    """Whether the other's words say it whole, of the same player, by the same and on that day; of
    two alike the second is part of the first."""
    whose = (one.player, one.author, one.day, one.heard)
    if whose != (other.player, other.author, other.day, other.heard):
        return False
    return one.words in other.words and (one.words != other.words or before)


def _of_note(desk: Desk, one: ToldNote) -> Iterator[str]:
    if one.author:
        yield wording("behind.heard_by" if one.heard else "behind.by").format(name=one.author)
    yield _when(desk, one.day)


def _matches(desk: Desk, shown: Sequence[EvidenceId]) -> Iterator[str]:
    for one in desk.book.told_matches(shown):
        against = "/".join(desk.names(one.theirs)) or wording("behind.someone")
        yield wording("behind.match").format(
            rallies=counted(one.rallies, "rally", "rallies"),
            names=against,
            when=_when(desk, one.day),
        )


def _rallies(desk: Desk, shown: Sequence[EvidenceId]) -> Iterator[str]:
    for one in desk.book.told_rallies(shown):
        when = one.clock if one.day == desk.day else _when(desk, one.day)
        yield wording("behind.rally").format(when=when, what=_ended(desk, one))


def _ended(desk: Desk, one: ToldRally) -> str:
    """How it ended in the words typed, else in ours, else only who won it."""
    if one.words:
        return _quoted(one.words)
    who = desk.view.short_name(one.by_player) if one.by_player is not None else ""
    told = (who, *(each.replace("_", " ") for each in (one.stroke, one.ending) if each))
    said = " ".join(each for each in told if each)
    return said or wording("behind.ours" if one.won_by is Winner.US else "behind.theirs")


def _quoted(words: str) -> str:
    plain = " ".join(words.split())
    cut = plain if len(plain) <= LONGEST_QUOTE else plain[: LONGEST_QUOTE - 1].rstrip() + "…"
    return f"“{cut}”"


def _when(desk: Desk, day: int) -> str:
    return age(desk.day - day).replace(" old", " ago")
