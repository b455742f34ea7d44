"""The words of a message with names as "we" and "they", and what of them is no score."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import dataclass, replace
from functools import cached_property

from bot.chat.asking import asks
from bot.chat.ball_said import FoundBall, find_ball
from bot.chat.breaks_said import FoundBreaks, find_breaks
from bot.chat.cast import cast
from bot.chat.court_times import time_places
from bot.chat.dictated import as_numbers
from bot.chat.format_said import SaidFormat, format_parts, target_places
from bot.chat.games_said import FoundGames, find_games
from bot.chat.misheard_words import as_heard
from bot.chat.needs_said import FoundNeeds, find_needs
from bot.chat.rates_said import FoundRates, find_rates
from bot.chat.said import Mention
from bot.chat.short_forms import in_full
from bot.chat.spoken_line import SpokenLine, line_of
from bot.chat.words import Word
from knowledge.regex import regex

_TELLS = regex(
    r"^(?:(?:ok|so|and|but|hey|hi|now|today|btw|well|usually|lately) )*"
    r"(?:(?:on|when) (?:our|their|we|they) \w+ )?(?:we|weve|were|i|im|ive|they|theyve|theyre)\b"
)
"""How a clause opens that tells of our rallies, in a message that also asks."""

_SETS = regex(r"^(?:(?:ok|so|and|but|hey|now|just) )*(?:say|lets say|let us say|assume)\b")
"""How numbers are given to reckon with from now on, where nothing is asked beside them."""

_MARKS = frozenset(",;.!?()\n–—")

_USES = regex(
    r"\b(?:use|burn|call|spend|save|take|keep|bank) (?:it|one|both|them|now)\b"
    r"|\bor (?:not|wait|hold)\b"
)

_FIGURE = regex(
    r"^(?:chances?|odds|percentage)\b|^w (?:at|on)\b"
    r"|\d (?:win )?(?:chances?|odds|probability|percentage|risk)$"
    r"|^risk (?:at|on|now|of)\b|\brisk at \d"
    r"|\b(?:win|winning|our|match|game) (?:chances?|odds|probability|percentage)\b(?! are\b)"
    r"|^(?:(?!called|took|had)\w+ )?time ?outs? (?:at|here|now)\b"
)


@dataclass(frozen=True, kw_only=True)  # no slots: what is said of a ball is kept beside the fields
class Told:
    """`words` are all, `line` the same without rates; `of_score` may hold the current score.

    `typed` are the words as they stand in `text`; `ours` the names of our players, and `others`.

    In `of_score` the words of rates, games won, points needed, runs, what is played to and when
    are one comma each: their numbers are no score, and what stands on both sides is not one.
    """

    text: str
    typed: tuple[Word, ...]
    words: tuple[Word, ...]
    line: SpokenLine
    of_score: tuple[Word, ...]
    rates: FoundRates | None
    games: FoundGames | None
    needs: FoundNeeds | None
    breaks: FoundBreaks
    format: SaidFormat | None
    ours: tuple[Mention, ...]
    others: tuple[Mention, ...]

    @cached_property
    def ball(self) -> FoundBall:
        """What is said of one ball: read once somebody asks, as of most parts nobody does."""
        after = self.text[self.typed[-1].span[1] :] if self.typed else ""
        return find_ball(self.typed, (*self.ours, *self.others), self.ours, after=after)

    @property
    def weighs_a_break(self) -> bool:
        """ "One time-out left, 7-9, use it": it asks, though nothing of its form does."""
        return self.breaks.timeouts_left is not None and bool(_USES.search(self.line.text))

    @property
    def wants_a_figure(self) -> bool:
        """ "Win chance at 0-0", "timeout at 8-8": a figure is wanted, not the score told."""
        return bool(_FIGURE.search(self.line.text))

    @property
    def beside_times(self) -> tuple[Word, ...]:
        """The words that the clock times of a match leave: "three fifteen court four"."""
        places = time_places(self.words)
        return tuple(word for place, word in enumerate(self.words) if place not in places)

    @property
    def beside_rates(self) -> tuple[Word, ...]:
        """The words that the rates leave."""
        places = self.rates.places if self.rates else frozenset[int]()
        return tuple(word for place, word in enumerate(self.words) if place not in places)


def tell(
    text: str, said: Sequence[Word], ours: Sequence[Mention], others: Sequence[Mention]
) -> Told:
    names = [one.span for one in (*ours, *others)]
    words = tuple(as_numbers(cast(in_full(as_heard(said), names=names), ours, others)))
    rates = find_rates(text, words)
    line = line_of(words, without=rates.places if rates else ())
    if rates is not None:
        holds = _are_told(text, words, rates, line.text)
        rates = replace(rates, rates=replace(rates.rates, holds=holds))
    games, breaks, needs = find_games(line), find_breaks(line), find_needs(line)
    format = format_parts(words)
    places = breaks.places.union(
        games.places if games else (),
        needs.places if needs else (),
        rates.places if rates else (),
        target_places(line, format) if format else (),
        time_places(words),
    )
    return Told(
        text=text,
        typed=tuple(said),
        words=words,
        line=line,
        of_score=_without(words, places),
        rates=rates,
        games=games,
        needs=needs,
        breaks=breaks,
        format=format,
        ours=tuple(ours),
        others=tuple(others),
    )


def _are_told(text: str, words: Sequence[Word], found: FoundRates, line: str) -> bool:
    """Whether the rates are told of this match; in a question only by a clause of their own."""
    if found.is_all and "?" not in text and _SETS.match(" ".join(word.folded for word in words)):
        return True
    if found.is_supposed:
        return False
    if not _FIGURE.search(line) and not _asks(text, words, found):
        return True
    first, last = min(found.places), max(found.places)
    begins = max((at for at in range(first + 1) if _MARKS & set(words[at].gap)), default=0)
    ends = next((at for at in range(last + 1, len(words)) if _MARKS & set(words[at].gap)), None)
    clause = words[begins:ends]
    mark = words[ends].gap if ends is not None else text[words[-1].span[1] :]
    own = [word for at, word in enumerate(clause, begins) if at not in found.places]
    tells = _TELLS.match(" ".join(word.folded for word in clause)) is not None
    return tells and not asks("?" if "?" in mark else "", own)


def _asks(text: str, words: Sequence[Word], found: FoundRates) -> bool:
    """Whether the words beside the rates ask for something; "percent" alone asks nothing."""
    beside = [word for place, word in enumerate(words) if place not in found.places]
    return asks("?" if "?" in text else "", beside)


def _without(words: Sequence[Word], places: Set[int]) -> tuple[Word, ...]:
    kept: list[Word] = []
    for place, word in enumerate(words):
        if place not in places:
            kept.append(word)
        elif place - 1 not in places:
            kept.append(replace(word, folded=","))
    return tuple(kept)
