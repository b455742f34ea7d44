"""Whom each word of a note is about, and which clauses advise us instead of describing them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.clauses import NOT_TO_DO
from bot.chat.forms import word_set
from bot.chat.said import Certainty, Mention
from bot.chat.words import Word
from knowledge.vocabulary import PlayerId

_BEFORE_AN_OBJECT = frozenset(
    ["vs", "to", "at", "than", "against", "over", "from", "for", "behind", "beside", "past", "like"]
)
_BETWEEN_TWO = frozenset(["and", "n", "or", "nor", "with", "plus", "s"])

_ADVICE = word_set("advice")
_ADVICE_BEFORE_A_PLACE = frozenset(
    ["serve", "return", "lob", "drive", "dink", "speed", "drop", "play", "aim", "move"]
)
_PLACES = frozenset(["to", "at", "him", "her", "them", "it", "on", "over", "up", "deep", "wide"])
_DONT = frozenset(["dont", "never"])
_BEFORE_ADVICE = frozenset(
    ["so", "just", "then", "and", "but", "please", "maybe", "also", "no", "nope", "sorry"]
)


_ASIDE = frozenset(["with", "w", "alongside"])
_MARKS = frozenset(",;.\n")
_GOES_ON_OF_THEM = frozenset(["who", "whos", "whose", "which", "and", "both", "they"])

_US = frozenset(["i", "im", "ive", "ill", "id", "we", "weve", "well", "you", "youd"])
_OPINIONS = word_set("opinions")
_THEY = frozenset(["they", "both", "theyre", "these", "those"])


class Subjects:
    """The players whom the words are about, place by place."""

    def __init__(
        self,
        said: Sequence[Word],
        mentions: Sequence[Mention],
        ourselves: Mapping[int, tuple[Mention, ...]],
    ) -> None:
        self._said = said
        self._from: list[tuple[int, tuple[Mention, ...]]] = []
        self._passed: dict[tuple[int, int], int] = {}
        for mention in mentions:
            self._add(mention)
        self._others = tuple(self._from)
        self._from = sorted([*self._from, *ourselves.items()], key=lambda each: each[0])

    def at(self, place: int) -> tuple[PlayerId, ...]:
        """Whom the word at `place` is about; before any name, whom the first name means."""
        current = self._before_any_name()
        for start, subject in self._from:
            if start <= place:
                current = subject
        sure = [one for one in current if one.certainty is Certainty.SURE]
        return tuple(dict.fromkeys(player for one in sure for player in one.players))

    def _before_any_name(self) -> tuple[Mention, ...]:
        """The first name; after an early "they", everybody named later."""
        if not self._others:
            return ()
        start, first = self._others[0]
        if any(word.folded in _THEY for word in self._said[:start]):
            return tuple(dict.fromkeys(one for _, subject in self._others for one in subject))
        return first

    def _add(self, mention: Mention) -> None:
        start = self._place_of(mention)
        last = self._from[-1] if self._from else None
        if last is None:
            self._from.append((start, (mention,)))
        elif mention.span == last[1][-1].span or (
            self._is_joined(last[1][-1], start) and not _is_among(mention, last[1])
        ):
            self._from.append((start, (*last[1], mention)))
        elif not self._is_object(mention, start):
            self._from.append((start, (mention,)))
            if start and self._said[start - 1].folded in _ASIDE:
                self._go_back(start, last[1])

    def _go_back(self, start: int, subject: tuple[Mention, ...]) -> None:
        """ "Lindqvist stacks with Okafor on the right, lobs a lot": behind the comma it is told of
        the first again."""
        behind = range(start + 1, len(self._said))
        back = next((at for at in behind if set(self._said[at].gap) & _MARKS), None)
        if back is not None and self._said[back].folded not in _GOES_ON_OF_THEM:
            self._from.append((back, subject))
            self._passed[self._from[-2][1][-1].span] = back

    def is_passed(self, mention: Mention, place: int) -> bool:
        """Whether somebody was named in passing only, and the place is behind that."""
        return mention.span in self._passed and self._passed[mention.span] <= place

    def _place_of(self, mention: Mention) -> int:
        return next(
            (at for at, word in enumerate(self._said) if word.span[0] >= mention.span[0]), 0
        )

    def _is_joined(self, before: Mention, start: int) -> bool:
        """`Okafor and Lindqvist`, `hale/ruiz`."""
        between = [word.folded for word in self._said[:start] if word.span[0] >= before.span[1]]
        gap = self._said[start].gap if start < len(self._said) else ""
        if not between:
            return "/" in gap or "&" in gap or "+" in gap or "," in gap
        return len(between) == 1 and between[0] in _BETWEEN_TWO

    def _is_object(self, mention: Mention, start: int) -> bool:
        if mention.typed.lower() in {"him", "them"}:
            return True
        return bool(start) and self._said[start - 1].folded in _BEFORE_AN_OBJECT


def _is_among(mention: Mention, joined: Sequence[Mention]) -> bool:
    """Whether one of those joined is named again, so told of apart: "hale + ruiz, hale tall"."""
    return any(mention.players == one.players != () for one in joined)


def is_advice(line: Sequence[str]) -> bool:
    """Whether a clause tells us what to do; what it names is then no claim about anybody."""
    place = 0
    while place < len(line) and line[place] in _BEFORE_ADVICE:
        place += 1
    first = line[place] if place < len(line) else ""
    ahead = line[place + 1] if place + 1 < len(line) else ""
    if (first, ahead) == ("do", "not"):
        return place + 2 < len(line) and line[place + 2] in NOT_TO_DO
    if first in _DONT:
        return ahead in NOT_TO_DO
    if first in _US:
        return ahead not in _OPINIONS and not ahead.startswith("@")
    return first in _ADVICE or (first in _ADVICE_BEFORE_A_PLACE and ahead in _PLACES)
