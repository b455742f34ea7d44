"""The words of a note that no claim covers, shown so that nothing seems to be lost."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.note_hits import JUDGEMENTS, Hits
from bot.chat.trait_lexicon import NAME, Role
from bot.chat.words import Word

MANNER = (
    Role.NOT,
    Role.NO_NEGATION,
    Role.FORMER,
    Role.MORE,
    Role.LESS,
    Role.OFTEN,
    Role.RARELY,
    Role.HEDGE,
    Role.HEARSAY,
)
"""How something is said; without the thing itself such words tell nothing."""

_ENDS = ".;:!?\n,()"
_CASES = frozenset(["if", "when", "once", "whenever"])
_EMPTY_WORDS = word_set("empty")


def places_of_manner(hits: Hits) -> set[int]:
    """Where words of manner stand that judge nothing themselves, as "trash" does."""
    judging = {at for hit in hits.having(*JUDGEMENTS) for at in range(hit.start, hit.stop)}
    return {at for hit in hits.having(*MANNER) for at in range(hit.start, hit.stop)} - judging


def negations(hits: Hits) -> set[int]:
    """Where words stand that deny: "not", "never"."""
    return {at for hit in hits.having(Role.NOT) for at in range(hit.start, hit.stop)}


def kept_words(
    text: str,
    said: Sequence[Word],
    line: Sequence[str],
    used: set[int],
    *,
    manner: set[int],
    denying: set[int],
) -> tuple[str, ...]:
    """Stretches of unclaimed words without the small words at their ends.

    A stretch of small words and words of manner alone is left out. What denies the words right
    behind it is theirs, whatever claim it was counted to as well: "not bad at the net" must not be
    quoted as "bad at the net".
    """
    used = used - _denying_what_is_kept(said, used, denying)
    kept: list[str] = []
    run: list[int] = []
    case = _case_of_another(said, line)
    for place in range(len(said) + 1):
        is_told = place in used or (place < len(said) and line[place] == NAME)
        ends = place == len(said) or (is_told and place not in case)
        broken = not ends and place and set(said[place].gap) & set(_ENDS)
        if ends or broken:
            kept += _trimmed(text, said, run, manner)
            run = []
        if not ends:
            run.append(place)
    return tuple(kept)


def _denying_what_is_kept(said: Sequence[Word], used: set[int], denying: set[int]) -> set[int]:
    kept: set[int] = set()
    for place in sorted(denying & used, reverse=True):
        behind = place + 1
        is_left = behind < len(said) and (behind not in used or behind in kept)
        if is_left and not set(said[behind].gap) & set(_ENDS):
            kept.add(place)
    return kept


def _case_of_another(said: Sequence[Word], line: Sequence[str]) -> range:
    """ "Poaches if Okafor is wide": the words of a case that is somebody else's, whom no condition
    of the claim tells of; empty without one."""
    start = next((at for at, word in enumerate(line) if at and word in _CASES), len(line))
    marks = (at for at in range(start + 1, len(line)) if set(said[at].gap) & set(_ENDS))
    case = range(start, next(marks, len(line)))
    named = line[start + 1 : start + 2] == [NAME]
    return case if named and NAME in line[:start] else range(0)


def _trimmed(text: str, said: Sequence[Word], run: Sequence[int], manner: set[int]) -> list[str]:
    full = [place for place in run if said[place].folded not in _EMPTY_WORDS]
    telling = [place for place in full if place not in manner]
    if not telling:
        return []
    return [text[said[full[0]].span[0] : said[telling[-1]].span[1]]]
