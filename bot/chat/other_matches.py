"""Numbers told of another match or moment: "next door is 9-9", "at 9-9 ruiz went for it"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import any_of, word_set
from bot.chat.numbers import Group
from bot.chat.words import Word
from knowledge.regex import regex

_US = regex(r"\b(?:we|us|our|ours|my|mine|were|weve|i|im|me)\b")
_THEM = regex(r"\b(?:they|them|he|she|his|her)\b")
_HEARD = regex(r"\bi (?:just )?(?:saw|heard|read|watched|was)\b")
"""Who saw a match has not played it."""

_AT_A_MOMENT = frozenset(["at", "after", "from", "since", "till", "until", "around", "about", "by"])
_OPENS_AS_PLAY = regex(r"^they (?!up\b|down\b|ahead\b|lead|serve at|serving|serves? at)\w+ ")
_SHARE_WORDS = frozenset(["for", "of", "/"])
_RUNNING = regex(r"\b(?:serv\w+|receiv\w+|up|down|ahead|behind|leading|trailing)\b")
"""Words of the score that is on: nobody tells them of a match of strangers."""

_STROKES = frozenset(["bh", "fh", "backhand", "backhands", "forehand", "forehands", "aces"])
"""After numbers without any mark: what was counted."""

STRAY_WORDS_OF_PLAY = 2
"""Beside "at 9-9": with so many the message tells what somebody did then."""


def is_elsewhere(line: str) -> bool:
    """Whether a line tells of another court or another pair's match."""
    return any_of("other_matches.elsewhere").search(line) is not None


def is_of_others(line: str) -> bool:
    """Whether a line of a result tells of a match without us: "hale lost 4-11 to some kids"."""
    if is_elsewhere(line):
        return True
    told = any_of("other_matches.pair").search(line) or any_of("other_matches.time").search(line)
    beside = _HEARD.sub(" ", line)
    return told is not None and _THEM.search(line) is not None and _US.search(beside) is None


def is_of_play(said: Sequence[Word], group: Group) -> bool:
    """Whether the numbers only say when something happened, or how often out of how many."""
    words = [word.folded for word in said]
    line, beside = " ".join(words), words[: group.start] + words[group.stop :]
    stray = sum(word not in word_set("score") for word in beside if not word.isdigit())
    if is_elsewhere(line) or (is_of_others(line) and not _RUNNING.search(line)):
        return True
    if any_of("other_matches.time").search(line) and _THEM.search(line):
        return True
    if stray and _is_share(said, group):
        return True
    before, after = words[: group.start][-1:], words[group.stop :]
    stands = words[: group.start][-2:-1]
    is_moment = bool(before) and before[0] in _AT_A_MOMENT and bool(_THEM.search(line))
    is_now = bool(set(stands) & _STANDING) or bool(set(after[:1]) & _OURSELVES)
    if is_moment and not is_now and stray >= STRAY_WORDS_OF_PLAY:
        return True
    is_standing = bool(set(stands) & (_STANDING - {"serve", "serves"}))
    if before == ["at"] and stray and not (after or is_standing) and _OPENS_AS_PLAY.match(line):
        return True
    if set(after[:1]) & _STROKES and _THEM.search(line):
        return True
    acts = len(after) > 1 and after[0] == "they" and after[1] not in word_set("score") | _PUNCTUATED
    return acts and _US.search(line) is None


_PUNCTUATED = frozenset(
    [",", "call", "calling", "called", "start", "starts", "starting", "begin", "begins", "open",
     "keep", "hold", "take", "got", "had", "return", "returns", "first", "only", "won", "lost"]
)  # fmt: skip
"""After "9-7 they": words of the score itself."""

_STANDING = frozenset(
    ["are", "is", "re", "theyre", "stands", "stand", "were", "them", "serve", "serves"]
)
"""Before "at 9-7": that is the score now."""

_OURSELVES = frozenset(["i", "im", "we", "were"])
"""After it, who tells of themselves and mostly asks something."""


def _is_share(said: Sequence[Word], group: Group) -> bool:
    """`9/10`, `0 for 6`: so many out of as many or more."""
    inside = said[group.start : group.stop]
    is_counted = any(word.folded == "for" for word in inside) and inside[-1].folded.isdigit()
    is_slashed = len(inside) == len(group.numbers) == 2 and inside[1].gap.strip() == "/"
    return (is_counted or is_slashed) and group.numbers[0] <= group.numbers[-1]
