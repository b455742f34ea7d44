"""Undo in words, and corrections: "scratch that", "no, the other one", "not Tom, Mira"."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.said import CorrectionSaid, Mention, UndoSaid
from bot.chat.slip_words import EVERYTHING
from bot.chat.words import Word, folded_line
from knowledge.regex import regex

LONGEST_CORRECTION = 8
"""Words of a correction; a longer message says something of its own."""

_UNDO = regex(
    r"^(?:please |ok |oops |whoops |no |wait |wrong )*(?:undo|take (?:that|it) back"
    r"|(?:scratch|scrub|scrap|bin) (?:that|it)|delete (?:that|it|the last(?: one| note)?)"
    r"|remove (?:that|it|the last(?: one)?)|cancel that"
    r"|forget (?:that|i said that|it)|never ?mind that|strike that"
    r"|(?:undo|scratch|delete|remove|forget|drop|take back) (?:(?:that|the|my) )?(?:very )?last"
    r" (?:thing|one|note|bit|line|message)(?: back| out)?)"
    r"(?: (?:that|it|please|last|one|the last one|last note|note|everything|all|again"
    r"|once more|after all))*$"
)

_WAS_ASKED = regex(
    r"^(?:please |ok |oops |whoops |no |wait |wrong )*"
    r"(?:undo|take (?:that|it) back|scratch|delete|remove|cancel|forget|drop|strike)"
    r"(?: (?:that|it|this|the)(?: \w+){0,3}?)?"
    r"(?: (?:because|cause|cos|bc|since))? (?:(?:it|that|this) (?:was|is)|its|thats|i was|i)"
    r" (?:just |only |meant (?:it |that )?(?:as )?)*"
    r"(?:a question|asking|asked|no note|not a note|not meant as a note)(?: not a note)?$"
)
"""`undo that middle thing it was a question`: of a note just made of what was asked."""

_CORRECTION = regex(
    r"^(?:no|nope|sorry|oops|wait|actually|correction|not that|wrong|scratch that|i mean|i meant"
    r"|make that|that was|that should)\b"
)
_CORRECTION_BODY = regex(
    r"\b(?:the other (?:one|guy|player|ana|anna)|i mean|i meant|i said|meant|wrong (?:one"
    r"|player|guy)"
    r"|not (?:him|her|that one|them)|should be|instead|correction|make that|that was)\b"
)


_STARRED = regex(r"\s*(?:\*\s*[\w' -]+|[\w' -]+\*)\s*")
"""`*lindqvist`: how a slip in the line before is put right among people who type."""


def undo_said(text: str, said: Sequence[Word]) -> UndoSaid | None:
    line = folded_line(said)
    if not (_UNDO.match(line) or _WAS_ASKED.match(line)):
        return None
    is_of_note = _UNDO.match(line) is not None and "note" in line.split()
    everything = EVERYTHING.fullmatch(line) is not None
    return UndoSaid(text=text, of_note=is_of_note, everything=everything)


def correction_said(
    text: str, said: Sequence[Word], mentions: Sequence[Mention], *, replying: bool
) -> CorrectionSaid | None:
    """A correction of what was last understood; `replying` to a note needs less of a hint."""
    line = folded_line(said)
    if "?" in text or len(said) > LONGEST_CORRECTION:
        return None
    denied = _denied(said, mentions)
    if denied:
        meant = tuple(one for one in mentions if one not in denied)
        return CorrectionSaid(text=text, mentions=meant, denied=denied)
    if _BOTH.fullmatch(line):
        return CorrectionSaid(text=text, both=True)
    if _NOT_THIS_ONE.fullmatch(line):
        return CorrectionSaid(text=text)
    begins = _CORRECTION.match(line) is not None
    names_other = not begins or mentions or not _NAMES_A_THING.search(line)
    if begins and names_other and (_CORRECTION_BODY.search(line) or mentions):
        return CorrectionSaid(text=text, mentions=tuple(mentions))
    bare_name = (replying or _STARRED.fullmatch(text)) and mentions and len(said) <= 3
    return CorrectionSaid(text=text, mentions=tuple(mentions)) if bare_name else None


_BOTH = regex(
    r"(?:(?:no|sorry|oops|wait|actually|i mean|it was|its|thats|that is|that goes for|and|so|do"
    r"|well|true (?:of|for)|same (?:for|with|goes for)|in fact|make that|they|the two) )*both"
    r"(?: (?:of (?:them|em)|do|does|did|are|is|can|cant|they|them|actually|tbh|really|in fact))*"
)
"""The last note is true of two: "actually both", "they both do"."""

_NOT_THIS_ONE = regex(
    r"(?:(?:no|nope|sorry) )*not (?:him|her|them|that one|this one)"
    r"(?: (?:but )?(?:him|her|them|the other(?: one| guy| player)?))?"
)
_NAMES_A_THING = regex(
    r"\b(?:i mean|i meant|i said|make that) (?:(?:the|my|their|a|about|where|what|who|how) )*"
    r"(?!other\b|wrong\b|him\b|her\b|them\b|that\b|it\b|instead\b|one\b)\w+"
)
"""What was meant is said, and is nobody: "I meant the third shot"."""

_OF_NAMES_ONLY = frozenset(
    [
        "no",
        "nope",
        "not",
        "but",
        "and",
        "sorry",
        "oops",
        "wait",
        "actually",
        "i",
        "mean",
        "meant",
        "said",
        "it",
        "was",
        "its",
        "is",
        "about",
        "thats",
        "that",
        "the",
        "this",
        "one",
        "rather",
        "instead",
        "for",
        "asked",
        "asking",
    ]
)


def _denied(said: Sequence[Word], mentions: Sequence[Mention]) -> tuple[Mention, ...]:
    """Tom of "not Tom, Mira" and of "Mira, not Tom"; nobody where anything else is said."""
    named = [one for one in mentions if not one.pronoun]
    if not named:
        return ()
    rest = [
        (at, word)
        for at, word in enumerate(said)
        if not any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    ]
    if not all(word.folded in _OF_NAMES_ONLY for _, word in rest):
        return ()
    after_not = {said[at + 1].span[0] for at, _ in rest if _denies(said, at)}
    return tuple(one for one in named if one.span[0] in after_not)


def _denies(said: Sequence[Word], at: int) -> bool:
    return said[at].folded == "not" and at + 1 < len(said)
