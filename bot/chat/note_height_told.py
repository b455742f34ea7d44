"""Heights in metres, and the "little" that measures nobody: "is 1m95", "has a little fear"."""

from __future__ import annotations

from collections.abc import Iterator

from bot.chat.note_line import NoteLine
from bot.chat.note_manner import weight
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

TALL_CM, SHORT_CM = 185, 165
"""From here up, and from here down, somebody is told tall or short. Common practice."""

LEAST_CM, MOST_CM = 140, 215
"""What grown people measure."""

_OF_A_BALL = frozenset(
    ["short", "long", "wide", "out", "in", "inside", "behind", "back", "deep", "off", "from",
     "over", "above", "past", "high"]
)  # fmt: skip
"""Behind a distance."""

_METRES = regex(r"(?<![\d.,])(?:(?P<m>[12])(?: ?m ?|[.,])(?P<cm>\d\d)(?! ?(?:%|of|in|out)\b)"
                r"(?: ?m(?:eters?|etres?)?\b)?|(?P<all>1[4-9]\d|2[01]\d) ?cm\b)(?!\d)")  # fmt: skip
_WITH_UNIT = regex(r"\dm\d|m\b|\bcm\b|m(?:eter|etre)s?\b|\d ?cm\b")
_LITTLE = frozenset(["little", "bit"])
_PEOPLE = frozenset(
    ["guy", "lady", "girl", "man", "woman", "one", "fella", "player", "dude", "lad", "person"]
)


def of_little(claim: Claim, note: NoteLine) -> Claim | None:
    """Nobody is short for "a little" of something, nor for a height that is none."""
    if claim.trait is not Trait.HEIGHT or claim.denied:
        return claim
    told = next((cm for _, cm in _told(note)), None)
    if told is not None:
        return None  # the measure says it
    start, stop = claim.span
    own = [at for at, word in enumerate(note.said) if start <= word.span[0] < stop]
    little = next((at for at in own if note.said[at].folded in _LITTLE), None)
    if little is None or not little or note.said[little - 1].folded != "a":
        return claim
    behind = [word.folded for word in note.said[little + 1 : little + 5]]
    is_somebody = behind[:3] == ["bit", "of", "a"] or bool(_PEOPLE & {*behind[:2]})
    return claim if not behind or is_somebody else None


def height_told(note: NoteLine) -> Iterator[Claim]:
    """Who is tall or short by a measure in metres."""
    for (at, last), cm in _told(note):
        value = Value.TALL if cm >= TALL_CM else Value.SHORT if cm <= SHORT_CM else None
        if value is None:
            continue
        span = (note.said[at].span[0], note.said[last].span[1])
        for player in note.subjects.at(at):
            yield Claim(
                player=player, trait=Trait.HEIGHT, value=value, weight=weight(note.hits), span=span
            )


def _told(note: NoteLine) -> Iterator[tuple[tuple[int, int], int]]:
    """The first and last words of heights told in metres, and how many centimetres they are."""
    line, places = "", list[int]()
    for at, word in enumerate(note.said):
        line += (" " if word.gap.isspace() else word.gap) + word.typed.lower()
        places += [at] * (len(line) - len(places))
    for found in _METRES.finditer(line):
        last = places[found.end() - 1]
        ahead = {word.folded for word in note.said[last + 1 : last + 2]}
        cm = int(found["all"] or 100 * int(found["m"]) + int(found["cm"]))
        if _WITH_UNIT.search(found[0]) and LEAST_CM <= cm <= MOST_CM and not ahead & _OF_A_BALL:
            yield (places[found.start()], last), cm
