"""A rally whose first words say whose it was, with what happened in it right behind, unmarked."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.rally_tense import tells_what_holds
from bot.chat.rally_words import rally_lexicon
from bot.chat.words import Word, folded_line
from knowledge.regex import regex

_STILL_WHOSE = frozenset(
    ["is", "to", "now", "again", "serve", "ball", "the", "serving", "and", "was"]
)
_IT = r"(?:that(?: one| rally| point)?|this one|it|the (?:rally|point))"
_WON_OR_LOST = regex(
    rf"^(?:(?:ok|so|and|ugh|nice|yes|no|damn|argh) )*(?:(?:we|they) )?(?:just )?"
    rf"(?:(?:lost|won) {_IT}|dropped that (?:one|rally|point))(?: again| too)?\b"
)
_BARE = regex(
    r"^(?:(?:ok|so|and|ugh|nice|yes|no|damn|argh) )*(?:we )?(?:just )?(?:lost|won)(?: again| too)?"
    r"(?: (?:ugh|argh|damn|dammit|man|shit|nice))*\b"
)
"""`lost i dumped the third`: no rally is named, so that what somebody did must follow at once."""

_WHO = regex(
    r" (?:i|we|they|he|she|my|our|their|his|her|hes|shes|theyre)\b(?! (?:$|too|again|now))"
)
"""`lost that one i popped it up`: who did it begins a clause of its own, "one i" is no score."""

_PLAY = ("nouns.", "verbs.", "endings.", "acts.")
_DEEDS = ("verbs.", "endings.", "acts.")
_FARTHEST_DEED = 4
"""Words behind whom it is said of: "i got doug at his feet" has it first. Our own bound."""

_NO_DEED = word_set("no_one_deed")
_GOES_ON = regex(r"\b(?:and|then|but|so)\b")


def opened_by(said: Sequence[Word]) -> int:
    """How many words at the beginning only say whose the rally was; 0 where more belongs there."""
    if said[0].folded in ("ours", "theirs"):
        return int(len(said) > 1 and said[1].folded not in _STILL_WHOSE)
    line = folded_line(said)
    found = _WON_OR_LOST.match(line)
    if found is None:
        return _opened_bare(said, line)
    opened = len(found[0].split())
    begins = _WHO.match(line, found.end()) is not None or _is_play(line.split()[opened:])
    return opened if begins else 0


def _opened_bare(said: Sequence[Word], line: str) -> int:
    """ "Won they netted it": as many as say whose it was, where one deed in the past follows.

    A question, a game or several rallies have no such deed: "won what now", "lost two in a row".
    """
    found = _BARE.match(line)
    if found is None or _WHO.match(line, found.end()) is None:
        return 0
    opened = len(found[0].split())
    rest = line.split()[opened:]
    is_always = rest[1:] != [] and rest[1].endswith("s") and not rest[1].endswith("ss")
    if is_always or _NO_DEED.intersection(rest) or tells_what_holds(said[opened:], ()):
        return 0
    hits = rally_lexicon().find(rest)
    is_told = any(one.concept.startswith(_DEEDS) and one.start <= _FARTHEST_DEED for one in hits)
    return opened if is_told else 0


def _is_play(line: Sequence[str]) -> bool:
    """Whether play begins right there: "lost it popped up my reset", and not "lost it to a lob"."""
    first = {hit.concept for hit in rally_lexicon().find(line) if hit.start == 0}
    is_told = any(one.startswith(_PLAY) for one in first)
    return is_told and not any(one.startswith("skipped.") for one in first)


def point_by_deed(clauses: Sequence[str]) -> bool | None:
    """Whose "point" it is by who did the one thing told behind it: "pt, we poached their third".

    None where more is told: the last to act would have to be known.
    """
    if len(clauses) != 2 or clauses[0] not in ("point", "pt") or _GOES_ON.search(clauses[1]):
        return None
    who, *did = clauses[1].split()
    is_done = did != [] and who in ("we", "i", "they") and _is_play(did)
    return who != "they" if is_done else None
