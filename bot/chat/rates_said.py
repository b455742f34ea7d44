"""Our chances of a rally as the user puts them: "we win 42% on serve, 63% returning".

Steps: 1. read every share of the message (bot.chat.shares); 2. find who wins it and on whose
serve, from the words beside it; 3. leave those that say something else ("drives 9 of 10");
4. turn what they win into what we win.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.numbers import number
from bot.chat.rate_line import RateLine, RateVerb, rate_line, verbs_of
from bot.chat.rate_words import (
    ANOTHER_SHARE,
    ASSUME,
    COUNTED,
    DOES_OTHER,
    EQUAL,
    FILLER,
    OF_ALL,
    OF_BALLS,
    SIDE,
    SUPPOSED,
    USUAL,
)
from bot.chat.said import SaidRates
from bot.chat.score_groups import HIGHEST_PAIR
from bot.chat.shares import FEWEST, Share, may_hold_shares, shares
from bot.chat.words import Word
from knowledge.dataclass import dataclass

NEAR = 4
"""Words that may stand between a share and what it is a share of."""

NEAR_BEFORE = 6
"""The same where the serve is named first: "on our serve I think we win about 42"."""

BARE_WORDS = 3
"""Other words of a message that says hardly anything but two shares."""

EVEN = 0.5
_LEVEL = frozenset(["equal", "equally", "even", "evenly"])


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundRates:
    """The rates said, the places of their words, and what of the message they leave.

    `is_supposed`: a case to look at ("if we win half on serve"), not told of this match.
    """

    rates: SaidRates
    places: frozenset[int]
    is_usual: bool
    is_all: bool
    is_supposed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Settled:
    """One share with our chance, on whose serve, and the places of the words that say so."""

    share: Share
    serving: bool | None
    chance: float
    places: frozenset[int]
    count: tuple[int, int] | None = None


def find_rates(text: str, said: Sequence[Word]) -> FoundRates | None:
    """What the message says of our chances of a rally; `said` has names as "we" and "they"."""
    if not (may_hold_shares(said) or "%" in text or _LEVEL.intersection(_folded(said))):
        return None
    found = [one for one in shares(text, said) if not _is_score_number(one, said)]
    line = rate_line(said, found)
    together = len(found) == 2 and _stand_together(line)
    settled = [] if together else _by_side(line, found)
    settled = settled or _even_or_paired(line, found, said)
    if not settled:
        return None
    places = frozenset(place for one in settled for place in one.places)
    chances = [replace(one, count=None) for one in settled]
    rest = [word.folded for place, word in enumerate(said) if place not in places]
    return FoundRates(
        rates=_together(settled if COUNTED.search(line.text) else chances),
        places=places,
        is_usual=USUAL.search(line.text) is not None,
        is_all=all(word in FILLER for word in rest),
        is_supposed=SUPPOSED.search(line.text) is not None,
    )


def _folded(said: Sequence[Word]) -> set[str]:
    return {word.folded for word in said}


def _is_score_number(one: Share, said: Sequence[Word]) -> bool:
    """A bare small number is nobody's share unless a verb of winning stands right before it."""
    if not one.is_plain or said[one.start].folded == "half":
        return False
    before = said[one.start - 1].folded if one.start else ""
    ahead = [word.folded for word in said[one.start + 1 : one.start + 3]]
    if len(ahead) > 1 and ahead[0] == "to" and ahead[1].isdigit():
        return True  # "winning 7 to 5"
    is_small = (number(said[one.start]) or FEWEST) < FEWEST and one.value < FEWEST / 100
    return is_small and re.fullmatch(r"win|winning|wins", before) is None


def _by_side(line: RateLine, found: Sequence[Share]) -> list[_Settled]:
    """The shares beside which it is said on whose serve they are."""
    sides = _sides(line)
    verbs = verbs_of(line)
    edges = [0, *line.share_at, len(line.text)]
    settled = []
    two = sum(side is not None for side in sides) > 1
    for at, share in enumerate(found):
        side, verb = sides[at], verbs[at]
        if side is None or not _may_be_rate(line, share, edges, at, side, verb, two=two):
            continue
        settled.append(_settle(line, share, line.share_at[at], side, verb))
    return settled


def _sides(line: RateLine) -> list[re.Match[str] | None]:
    """For every share the words that say on whose serve: those after it, or those before it."""
    edges = [0, *line.share_at, len(line.text)]
    segments = [list(SIDE.finditer(line.text, start, stop)) for start, stop in pairwise(edges)]
    if not line.share_at:
        return []
    comes_after = bool(segments[-1]) and _is_near(line, line.share_at[-1] + 1, segments[-1][0])
    chosen: list[re.Match[str] | None] = []
    for at in range(len(line.share_at)):
        before, after = segments[at], segments[at + 1]
        own = [
            one for one in before if one not in chosen and _is_before(line, one, line.share_at[at])
        ]
        first = after[0] if after and _is_near(line, line.share_at[at] + 1, after[0]) else None
        last = own[-1] if own else None
        chosen.append((first or last) if comes_after else (last or first))
    return chosen


def _is_before(line: RateLine, side: re.Match[str], share_at: int) -> bool:
    return len(line.text[side.end() : share_at].split()) <= NEAR_BEFORE


def _is_near(line: RateLine, stop: int, side: re.Match[str]) -> bool:
    return len(line.text[stop : side.start()].split()) <= NEAR


def _may_be_rate(
    line: RateLine,
    share: Share,
    edges: Sequence[int],
    at: int,
    side: re.Match[str],
    verb: RateVerb,
    *,
    two: bool,
) -> bool:
    """Whether a share beside a serve or a return is one of rallies won, and not of balls in."""
    before = line.text[edges[at] : edges[at + 1]]
    after = line.text[edges[at + 1] + 1 : edges[at + 2]]
    is_of_balls = not verb.is_said and OF_BALLS.search(after + " ") is not None
    if is_of_balls or DOES_OTHER.search(before) or ANOTHER_SHARE.search(after + " "):
        return False
    if verb.is_said or two:
        return True
    return not share.is_plain and side.start() > edges[at + 1] and "of" not in after.split()[:1]


def _settle(
    line: RateLine, share: Share, share_at: int, side: re.Match[str], verb: RateVerb
) -> _Settled:
    if side["ours"] or side["theirs"]:
        we_serve = side["ours"] is not None
    else:
        we_serve = (side["serving"] is not None) is not verb.they
    is_ours = verb.they is verb.loses
    places = line.places(min(share_at, side.start()), max(share_at + 1, side.end()))
    places |= verb.places(line, share_at) | set(range(share.start, share.stop))
    return _Settled(
        share=share,
        serving=we_serve,
        chance=_of_us(share, is_ours=is_ours),
        places=frozenset(places),
        count=_won_by_us(share, is_ours=is_ours),
    )


def _of_us(share: Share, *, is_ours: bool) -> float:
    """Our chance, without the last digits that 1 - 0.58 leaves."""
    return share.value if is_ours else round(1 - share.value, 12)


def _won_by_us(share: Share, *, is_ours: bool) -> tuple[int, int] | None:
    """Rallies we won of those played, where both were counted."""
    if share.count is None or is_ours:
        return share.count
    won, played = share.count
    return played - won, played


def _even_or_paired(line: RateLine, found: Sequence[Share], said: Sequence[Word]) -> list[_Settled]:
    """What counts for every rally ("52% of rallies"), or two shares in a row ("42/63")."""
    equal = EQUAL.search(line.text)
    if equal is not None:
        places = frozenset(line.places(equal.start(), equal.end()))
        half = Share(value=EVEN, start=0, stop=0, typed=equal[0])
        return [_Settled(share=half, serving=None, chance=EVEN, places=places)]
    verbs = verbs_of(line)
    if len(found) == 1:
        of_all = OF_ALL.search(line.text) or _counts_rallies(found[0], said)
        if of_all and not DOES_OTHER.search(line.text) and _is_assumed(line, verbs[0]):
            share = found[0]
            chance = _of_us(share, is_ours=verbs[0].they is verbs[0].loses)
            verb_places = verbs[0].places(line, line.share_at[0])
            own = frozenset(verb_places.union(range(share.start, share.stop)))
            return [_Settled(share=share, serving=None, chance=chance, places=own)]
        return []
    if len(found) == 2 and _stand_together(line) and _may_be_pair(line, found):
        return [
            _Settled(share=one, serving=serving, chance=one.value, places=_own(found))
            for one, serving in zip(found, _order(line), strict=True)
        ]
    return []


def _order(line: RateLine) -> tuple[bool, bool]:
    """Serving first, as in "42/63", unless "on return and serve" follows."""
    after = SIDE.search(line.text, line.share_at[-1])
    returns_first = after is not None and bool(after["returning"])
    return (False, True) if returns_first else (True, False)


def _own(found: Sequence[Share]) -> frozenset[int]:
    return frozenset(range(found[0].start, found[-1].stop))


def _counts_rallies(share: Share, said: Sequence[Word]) -> bool:
    inside = [word.folded for word in said[share.start : share.stop]]
    return bool({"rallies", "points"} & set(inside))


def _is_assumed(line: RateLine, verb: RateVerb) -> bool:
    return verb.is_said or ASSUME.search(line.text) is not None


def _stand_together(line: RateLine) -> bool:
    return re.search(r"@ (?:and )?@", line.text) is not None


def _may_be_pair(line: RateLine, found: Sequence[Share]) -> bool:
    """`assume 50-50`, or hardly another word beside `42/63`."""
    if any(one.is_plain and one.value <= HIGHEST_PAIR / 100 for one in found):
        return False
    others = [word for word in line.text.split() if word not in {"@", "and"} | FILLER]
    both = list(SIDE.finditer(line.text, line.share_at[-1]))
    return (
        ASSUME.search(line.text) is not None
        or len(both) > 1
        or (len(line.text.split()) <= len(found) + BARE_WORDS and not others)
    )


def _together(settled: Sequence[_Settled]) -> SaidRates:
    """The two halves; with a fault where one can't be or two of the same serve clash."""
    fault = next((one.share.fault for one in settled if one.share.fault), None)
    rates = SaidRates()
    for one in settled:
        if one.share.fault:
            continue
        if one.serving is not False:
            fault = fault or _clash(rates.serving, one, "our serve")
            rates = replace(rates, serving=one.chance)
        if one.serving is not True:
            fault = fault or _clash(rates.receiving, one, "their serve")
            rates = replace(rates, receiving=one.chance)
    return replace(_counted(rates, settled), fault=fault)


def _counted(rates: SaidRates, settled: Sequence[_Settled]) -> SaidRates:
    """The halves that were counted as counts, in place of their chance."""
    for one in settled:
        if one.count is None or one.share.fault:
            continue
        if one.serving is True:
            rates = replace(rates, serving=None, serving_count=one.count)
        elif one.serving is False:
            rates = replace(rates, receiving=None, receiving_count=one.count)
    return rates


def _clash(known: float | None, new: _Settled, whose: str) -> str | None:
    if known is None or abs(known - new.chance) < 1e-9:
        return None
    both = f"{round(100 * known)}% and {round(100 * new.chance)}%"
    return f"That makes two chances for us on {whose}: {both}."
