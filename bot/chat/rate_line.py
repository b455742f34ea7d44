"""A message as one line with @ for every share, and who wins or loses each share."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.rate_words import VERB, WHO
from bot.chat.shares import Share
from bot.chat.words import Word
from knowledge.dataclass import dataclass

VERB_NEAR = 4
"""Words between a verb and its share that belong to both."""

SUBJECT_NEAR = 3
"""Words before a verb among which its subject stands."""

_PAUSES = frozenset(",;.!?()")


@dataclass(frozen=True, slots=True, kw_only=True)
class RateLine:
    """The words as one line with @ for a share, and the word each character belongs to.

    `pauses` are where a comma or a stop stands before a word.
    """

    text: str
    word_at: tuple[int, ...]
    share_at: tuple[int, ...]
    pauses: tuple[int, ...]

    def places(self, start: int, stop: int) -> set[int]:
        return set(self.word_at[start:stop])


def rate_line(said: Sequence[Word], found: Sequence[Share]) -> RateLine:
    text, word_at, share_at, pauses = "", list[int](), list[int](), list[int]()
    starts = {one.start: one for one in found}
    inside = {place for one in found for place in range(one.start + 1, one.stop)}
    for place, word in enumerate(said):
        if place in inside:
            continue
        if place in starts:
            share_at.append(len(text))
        if _PAUSES & set(word.gap):
            pauses.append(len(text))
        token = "@" if place in starts else word.folded
        text += f"{token} "
        word_at += [place] * (len(token) + 1)
    return RateLine(
        text=text.rstrip(),
        word_at=tuple(word_at),
        share_at=tuple(share_at),
        pauses=tuple(pauses),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class RateVerb:
    """Who wins or loses the share, and whether that is said right before it."""

    they: bool = False
    loses: bool = False
    is_said: bool = False
    at: int | None = None

    def places(self, line: RateLine, share_at: int) -> set[int]:
        """The words from the verb to its share, where they stand near."""
        if self.at is None or len(line.text[self.at : share_at].split()) > VERB_NEAR:
            return set()
        if any(self.at < pause <= share_at for pause in line.pauses):
            return set()
        return line.places(self.at, share_at)


def verbs_of(line: RateLine) -> list[RateVerb]:
    """For every share the verb before it; a share without one goes on with the last."""
    edges = [0, *line.share_at]
    verbs: list[RateVerb] = []
    for start, stop in pairwise(edges):
        own = list(VERB.finditer(line.text, start, stop))
        if own:
            verbs.append(_verb(line, start, own[-1]))
        else:
            verbs.append(replace(verbs[-1], at=None) if verbs else RateVerb())
    return verbs


def _verb(line: RateLine, start: int, found: re.Match[str]) -> RateVerb:
    begins = max([one for one in line.pauses if one <= found.start()] + [start])
    return RateVerb(
        they=_is_theirs(line.text[begins : found.start()]),
        loses=found["loses"] is not None,
        is_said=True,
        at=found.start(),
    )


def _is_theirs(before: str) -> bool:
    """Whether the words before a verb end in "they": it is they who win or lose."""
    last = [WHO.match(word) for word in before.split()[-SUBJECT_NEAR:]]
    named = [one for one in last if one]
    return bool(named) and named[-1]["they"] is not None
