"""Numbers as dictation writes them ("for too us"), where all the rest is a score's."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from bot.chat.forms import word_set
from bot.chat.numbers import number
from bot.chat.words import Word

SOUNDS_LIKE: Mapping[str, int] = {
    "oh": 0, "o": 0, "won": 1, "to": 2, "too": 2, "tree": 3, "for": 4, "fore": 4, "sicks": 6,
    "ate": 8,
}  # fmt: skip
"""What dictation writes for a number. From memory."""

_PREPOSITIONS = frozenset(["to", "for"])
_SIDES = frozenset(["us", "them", "we", "they", "the", "our", "their", "my"])
_ALL = frozenset(["all", "apiece", "each"])
_LEADS = word_set("before_dictated")
_SERVERS = (1, 2)
_PAIR, _CALL = 2, 3
STRAY_WORDS_ALLOWED = 2
"""Beside the numbers, that no score has ("i think")."""


def as_numbers(said: Sequence[Word]) -> list[Word]:
    """The words, with what only sounds like a number as one where it can be nothing else."""
    start = _behind_side_out(said)
    start = next(
        (at for at, word in enumerate(said) if at >= start and word.folded not in _LEADS),
        len(said),
    )
    stop = start
    while stop < len(said) and _value(said[stop]) is not None and _is_near(said, start, stop):
        stop += 1
    run = _without_preposition(said, start, stop)
    if all(number(word) is not None for word in run) or not _is_beside_a_score(said, start, stop):
        return list(said)
    numbers = _numbers(run, alone=len(run) + start == len(said))
    if numbers is None and not _is_level(said, start, run):
        return list(said)
    kept = numbers if numbers is not None else [0]
    heard = {start + at: str(_value(run[at])) for at in kept}
    return [replace(word, folded=heard.get(at, word.folded)) for at, word in enumerate(said)]


def _behind_side_out(said: Sequence[Word]) -> int:
    """`we got the side out to zero won`: who has the serve now may be said before the call."""
    line = [word.folded for word in said]
    ends = (
        at + 1
        for at, word in enumerate(line)
        if word == "sideout" or line[at - 1 : at + 1] == ["side", "out"]
    )
    return next(ends, 0)


def _value(word: Word) -> int | None:
    known = number(word)
    return SOUNDS_LIKE.get(word.folded) if known is None else known


def _is_near(said: Sequence[Word], start: int, at: int) -> bool:
    return at == start or said[at].gap.strip() in ("", ",")


def _without_preposition(said: Sequence[Word], start: int, stop: int) -> Sequence[Word]:
    """`ate for for them`: the last of it only leads over to the side."""
    run = said[start:stop]
    if stop < len(said) and len(run) > 1 and run[-1].folded in _PREPOSITIONS:
        is_led_over = said[stop].folded in _SIDES and not said[stop].gap.strip()
        return run[:-1] if is_led_over else run
    return run


def _is_beside_a_score(said: Sequence[Word], start: int, stop: int) -> bool:
    beside = [*said[:start], *said[stop:]]
    stray = sum(word.folded not in word_set("score") | _LEADS for word in beside)
    return stray <= STRAY_WORDS_ALLOWED


def _numbers(run: Sequence[Word], *, alone: bool) -> list[int] | None:
    """The places of the run's numbers: two sides', and the server's if one can be meant.

    "To" between two is no number unless the whole message reads as a call by it: "five to won".
    """
    every = list(range(len(run)))
    joined = [at for at in every if at != 1 or run[at].folded != "to"]
    if len(run) == _PAIR:
        is_adverb = run[1].folded == "too" and number(run[0]) is not None
        return None if is_adverb or run[0].folded in ("won", "to") else every
    if _is_call(run, every) and (alone or run[1].folded != "to") and run[-1].folded != "to":
        return every
    if len(run) == _CALL and _is_call(run, every) and run[1].folded != "to":
        return every
    if len(joined) == _PAIR or _is_call(run, joined):
        return joined if len(joined) < len(run) else None
    return None


def _is_call(run: Sequence[Word], places: Sequence[int]) -> bool:
    return len(places) == _CALL and _value(run[places[2]]) in _SERVERS


def _is_level(said: Sequence[Word], start: int, run: Sequence[Word]) -> bool:
    """`to all`, `for all and they have the ball`."""
    after = said[start + 1].folded if start + 1 < len(said) else ""
    return len(run) == 1 and after in _ALL and run[0].folded != "oh"
