"""Who calls a ball and does not take it: "says mine and then it's not his" praises no calling."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.said import Claim
from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value

_THEN = r"(?:then |but |and |just |still |he |she |they )*"
_TAKES_NOT = (
    r"(?:never|doesnt|does not|dont|do not|wont|didnt|did not) (?:even |actually |really )?"
    r"(?:go|goes|move|moves|take|takes|hit|hits|come|comes|run|runs|play|plays"
    r"|(?:get|gets) (?:there|it|to it))\b"
)
_LEAVES = (
    r"(?:leaves|lets) (?:it|them|the ball|me)\b|(?:stops|freezes|watches|stands there|backs off"
    r"|pulls out|bails)\b|misses(?: (?:it|them|the ball|all|every|half))"
)
_IN_VAIN = regex(
    rf"\b(?:(?:its|it is|it was|thats|that is|it isnt|it wasnt) (?:often |always |mostly )?"
    r"(?:not |never |isnt )?(?:really |even )?(?:his|hers|theirs|mine|ours)"
    rf"|{_TAKES_NOT}|{_THEN}(?:{_LEAVES}))"
)
_DENIED = regex(r"\b(?:never|doesnt|does not|wont|not|rarely|hardly)(?: \w+)?$")
_IT = frozenset(["it", "that"])
_IT_IS = ("its ", "it ", "thats", "that ")
_OWN = regex(r"\b(?:his|hers|theirs)$")
_NOT_OWN = regex(r"\b(?:not|never|isnt|wasnt)\b")


def called_in_vain(claim: Claim, note: NoteLine) -> Claim | None:
    """ "Calls mine all the time but never goes": their calling is weak, however much they call."""
    is_praised = claim.value is Value.STRENGTH and not claim.denied
    if claim.trait is not Trait.COMMUNICATION or not is_praised:
        return claim
    begins = next((at for at, one in enumerate(note.said) if one.span[0] >= claim.span[0]), 0)
    behind = " ".join(map(_in_full, note.said[begins:]))
    is_vain = any(
        _is_vain(found[0].strip(), behind[: found.start()]) for found in _IN_VAIN.finditer(behind)
    )
    return replace(claim, value=Value.WEAKNESS) if is_vain else claim


def _in_full(word: Word) -> str:
    """The "it's" of "it's not his", whose 's reads as a possessive."""
    return f"{word.folded}s" if word.is_possessive and word.folded in _IT else word.folded


def _is_vain(told: str, before: str) -> bool:
    """ "It's his" and "never leaves it" are as it should be."""
    if told.startswith(_IT_IS) and _OWN.search(told):
        return _NOT_OWN.search(told) is not None
    if told.startswith(_IT_IS):
        return _NOT_OWN.search(told) is None
    return _DENIED.search(before.strip()) is None
