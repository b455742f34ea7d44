"""Who it was: "that was okafor who is slow", "it was not hale who lobs, it was okafor"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.said import Mention
from bot.chat.words import Word

_AT = frozenset(
    [("that", "was"), ("it", "was"), ("that", "is"), ("it", "is"), ("thats",), ("its",)]
)
_AWAY = frozenset([*((*one, "not") for one in _AT), ("it", "wasnt"), ("that", "wasnt"),
                   ("it", "isnt"), ("that", "isnt")])  # fmt: skip
_LONGEST = 3
"""Words that point: "it was not okafor"."""

_RELATIVES = frozenset(["who", "whos", "whose", "that"])
_ASKS_TOO = frozenset(["who", "whos", "whose"])


def points_at(line: Sequence[str]) -> int:
    """How many words point at whoever is named behind them, or away from them: two in "that was
    okafor"."""
    sizes = range(_LONGEST, 0, -1)
    return next((size for size in sizes if tuple(line[:size]) in _AT | _AWAY), 0)


def without_relatives(said: Sequence[Word], mentions: Sequence[Mention]) -> Sequence[Word]:
    """The words without the "who" that goes on telling of a name pointed at.

    A mark before it ("it was okafor, who is next?") or a name that nobody pointed at leaves it a
    question's.
    """
    pointed = [one.span[1] for one in mentions if _pointing(said, one)]
    return [
        word
        for at, word in enumerate(said)
        if word.folded not in _ASKS_TOO or not any(_goes_on(at, said, end) for end in pointed)
    ]


def pointed_elsewhere(
    said: Sequence[Word], mentions: Sequence[Mention]
) -> tuple[Sequence[Word], Sequence[Mention]]:
    """ "It was not hale who lobs, it was okafor" as "okafor who lobs": what is told of somebody
    pointed away from is true of whoever is named last."""
    named = sorted((one for one in mentions if not one.pronoun), key=lambda one: one.span)
    if len(named) < 2 or said[-1].span[0] >= named[-1].span[1]:
        return said, mentions
    away, right = _pointing(said, named[0]), _pointing(said, named[-1])
    first = _place(said, named[0].span[0])
    last = _place(said, named[-1].span[0]) - len(right)
    tells = any(_goes_on(at, said, named[0].span[1]) for at in range(first, last))
    if away not in _AWAY or right not in _AT or not tells:
        return said, mentions
    return said[first:last], (replace(named[-1], span=named[0].span), *named[1:-1])


def opens_away(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether the words begin by saying whom it was not: "not hale, ...", "it was not hale who"."""
    first = min((one.span for one in mentions if not one.pronoun), default=(0, 0))
    before = tuple(word.folded for word in said if word.span[1] <= first[0])
    return before == ("not",) or before in _AWAY


def _pointing(said: Sequence[Word], named: Mention) -> tuple[str, ...]:
    """The words right before the name that point at them or away."""
    before = [_in_full(word) for word in said if word.span[1] <= named.span[0]]
    tails = (tuple(before[-size:]) for size in range(_LONGEST, 0, -1))
    return () if named.pronoun else next((one for one in tails if one in _AT | _AWAY), ())


def _in_full(word: Word) -> str:
    """The "it's" of "it's okafor who is slow", whose 's reads as a possessive."""
    return f"{word.folded}s" if word.is_possessive else word.folded


def _goes_on(at: int, said: Sequence[Word], end: int) -> bool:
    """Whether a relative stands there right behind a name that ends there."""
    word = said[at]
    is_next = at > 0 and said[at - 1].span[1] <= end <= word.span[0] <= end + 1
    return word.folded in _RELATIVES and not word.gap.strip() and is_next


def _place(said: Sequence[Word], start: int) -> int:
    return next(at for at, word in enumerate(said) if word.span[0] >= start)
