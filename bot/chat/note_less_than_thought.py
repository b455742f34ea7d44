"""Less than was thought: "not so quick as i thought" unsays that they are quick, and no more."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.note_opinions import found_in
from bot.chat.said import Claim
from knowledge.regex import regex
from knowledge.vocabulary import Value

_WHO = r"(?:i|we|you|he|she|they|everyone|everybody|people|it)"
_THOUGHT = (
    r"(?:(?:first |had |have |all |would |used to |d )*"
    r"(?:thought|think|expect|expected|feared|said|say|says|told|noted|wrote|remember(?:ed)?"
    r"|believed|assumed|reckoned|figured|guessed|looks?|looked|seems?|seemed|was|were|be)"
    r"|made (?:him|her|them) out)"
)
_LESS = regex(
    r"\b(?:not|isnt|arent|aint|wasnt|werent|doesnt|dont|didnt)(?: \w+){0,3}?"
    rf" (?:as|so|that|nearly|quite)(?: as)? \w+(?: \w+){{0,4}}? (?:as|like|than) {_WHO} {_THOUGHT}"
    r"(?![^ ])"
)
_ONLY_LESS = {Value.WEAKNESS: Value.STRENGTH, Value.RARELY: Value.OFTEN}


def less_than_thought(claim: Claim, note: NoteLine) -> Claim | None:
    """The praise or the habit denied, where the words only take it down a peg."""
    instead = _ONLY_LESS.get(claim.value)
    if instead is None or claim.denied:
        return claim
    start, stop = claim.span
    typed = [word.folded for word in note.said]
    own = {at for at, word in enumerate(note.said) if start <= word.span[0] < stop}
    less = (range(begin, end) for begin, end in found_in(typed, _LESS))
    if any(own & set(one) for one in less):
        return replace(claim, value=instead, denied=True)
    return claim
