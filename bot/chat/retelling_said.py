"""How the last answer is wanted again: "tell me more", "shorter", "once more", "exact mix",
"how sure are you".
"""

from __future__ import annotations

from bot.chat.said import Retelling
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_RETELL = {
    Retelling.MORE: frozenset(
        {
            "more",
            "more detail",
            "more details",
            "more info",
            "tell me more",
            "say more",
            "give me more",
            "show me more",
            "anything else",
            "what else",
            "is there more",
            "is that all",
            "go on",
            "and then",
            "in full",
            "the long version",
            "in detail",
            "elaborate",
            "the full answer",
        }
    ),
    Retelling.SHORTER: frozenset(
        {
            "shorter",
            "short",
            "make it shorter",
            "make it short",
            "keep it short",
            "in short",
            "short version",
            "the short version",
            "too long",
            "thats too long",
            "tldr",
            "tl dr",
            "too much",
            "too much text",
            "briefly",
            "less",
        }
    ),
    Retelling.CALL: frozenset(
        f"{only} {the}{what}"
        for only in ("only", "just", "give me only", "give me just", "just give me", "only give me")
        for the in ("the ", "your ", "")
        for what in ("call", "first line", "top line", "headline", "first sentence")
    ).union({"first line only", "the first line only", "first line", "the first line"}),
    Retelling.AGAIN: frozenset(
        {
            "again",
            "once more",
            "one more time",
            "repeat",
            "repeat that",
            "repeat it",
            "say that again",
            "say it again",
            "come again",
            "tell me again",
            "what was that",
            "what did you say",
            "pardon",
            "sorry what",
            "huh",
        }
    ),
    Retelling.MIX: frozenset(
        {
            "mix",
            "the mix",
            "exact mix",
            "the exact mix",
            "show me the mix",
            "show the mix",
            "show me the exact mix",
            "give me the mix",
            "give me the exact mix",
            "what the mix",
            "whats the mix",
            "what is the mix",
            "what the exact mix",
            "whats the exact mix",
            "what is the exact mix",
        }
    ),
    Retelling.PICK: frozenset(
        {
            "pick",
            "pick one",
            "pick one for me",
            "pick one for us",
            "pick for me",
            "pick for us",
            "pick another",
            "pick another one",
            "pick again",
            "you pick",
            "you pick one",
            "choose one",
            "choose one for me",
            "choose for me",
            "choose for us",
            "you choose",
        }
    ),
}

_THE_ANSWER = (
    r"(?:you|u|we|i|that|it|this|(?:is )?(?:that|your|the|this) (?:call|answer|advice|one|pick))"
)
_KNOWN_TO_BE = r"(?:sure|certain|confident|positive|reliable|solid)"
_OF_THAT = rf"(?: (?:of|about|abt|bout|on|in|with|here|now|then|really|{_THE_ANSWER}))*"
_SCALE = (
    r"(?:(?:on|in) (?:a |the )?scale )?(?:(?:of|from|between) )?"
    r"(?:0|1|zero|one) (?:(?:to|and|through) )?(?:5|10|100|five|ten|a hundred)"
    r"|out of (?:5|10|100|five|ten|a hundred)|in (?:percent|pct|%)"
)
"""`1 to 10` asks how sure the call is, and is no score."""

_HOW_SURE = regex(
    rf"(?:(?:ok|okay|hm|hmm|so|and|but|wait|well|yeah|hey|{_SCALE}) )*"
    rf"(?:how {_KNOWN_TO_BE}(?: (?:is|are|r|am|would|can))?(?: {_THE_ANSWER})?(?: be)?{_OF_THAT}"
    rf"|(?:(?:are|r|is) {_THE_ANSWER}|you|u) (?:really |that |so |quite )*{_KNOWN_TO_BE}{_OF_THAT}"
    rf"|{_KNOWN_TO_BE} (?:about|abt|bout|of) (?:that|it|this)"
    rf"|how (?:much|far) (?:can|do|should) (?:i|we|you) (?:trust|believe|rely on|count on)"
    rf" {_THE_ANSWER}{_OF_THAT}"
    r"|how (?:likely|probable) is (?:that|it|this)(?: call| one)? (?:right|correct|best|the best"
    r"|the best (?:call|one|option|choice))"
    r"|(?:whats|what|what is) (?:the|your) (?:confidence|certainty)(?: (?:of|in|on) (?:that|it))?)"
    rf"(?: (?:{_SCALE}))?"
)
"""How likely the call is the best one: "how sure", "are you sure about that"."""

_LEAD = r"(?:(?:ok|okay|hm|hmm|so|and|but|wait|well|yeah|hey) )*"
_YOUR_MIND = (
    r"(?:(?:your|ur|yr|you) (?:mind|call|answer|advice|opinion|view)"
    r"|(?:that|this|the) (?:call|answer|advice|one)|that|this|it)"
)
_THEN = r"(?: (?:then|here|now|at all|for you|please|pls))*"
_FLIPS = regex(
    rf"{_LEAD}(?:(?:what|which (?:note|thing)|anything)(?: else)?(?: (?:would|could|might|will|can"
    rf"|does|do|d|it|take|takes|to|that|make|makes|you|u))* (?:change|flip|turn|sway|overturn"
    rf"|reverse|shift|changes|flips) {_YOUR_MIND}"
    r"|when (?:would|do|will|should) (?:you|u|that|it|the call|this)"
    rf" (?:change|flip|turn)(?: {_YOUR_MIND})?"
    rf"|what would (?:make )?(?:you|u) (?:need|want|have) to (?:see|know|hear)(?: to"
    rf" (?:change|flip) {_YOUR_MIND})?){_THEN}"
)
"""`what would change your mind`: of the call that stands, not what to change in the match."""

_MINE = r"(?:(?:my|our|the|your|ur) )?(?:own )?(?:notes?|book|numbers|scouting|log|data|rallies)"
_DEFAULT = (
    r"(?:(?:a|an|the|just|only|your|ur|some|from) )*(?:defaults?|general rule|generic|general"
    r"|common practice|standard|guess(?:es)?|assumption|generic advice|rule of thumb|made up|maths"
    r"|textbook)"
)
_IS_IT = (
    r"(?:(?:is|was|are|were) )?(?:that|this|it|those|these)(?: (?:call|answer|advice|one))?"
    r"(?: (?:just|only|all|really|coming|based))*"
)
_FROM = regex(
    rf"{_LEAD}(?:{_IS_IT} (?:from|off|on|by|out of|of) {_MINE}(?: or {_DEFAULT})?"
    rf"|{_IS_IT} {_DEFAULT}(?: or (?:(?:is it|from|off|based on) )*{_MINE})?"
    rf"|(?:from|off) {_MINE} or {_DEFAULT}|{_DEFAULT} or (?:from )?{_MINE}"
    r"|where (?:does|did|do) (?:that|this|it) come from"
    r"|where (?:do|did) (?:you|u) (?:get|have|take) (?:that|this|it)(?: from)?"
    r"|(?:what|which notes?) (?:is|s|are)? ?(?:that|this|it) (?:based|resting) on"
    rf"|(?:did|do) (?:you|u) use {_MINE}(?: for (?:that|this|it))?)"
    r"(?: (?:then|now|here|please|pls))*"
)
"""`is that from my notes or a default?`: of the answer that stands."""

_WHY_SO_OFTEN = regex(
    r"(?:(?:ok|okay|so|and|but|wait) )*(?:why|how come)(?: (?:is|it|that|its|only|just|the|a|not))*"
    r"(?: \w+)? \d+(?: times)? (?:of|in|out of|from) (?:10|100|ten|a hundred)"
)
"""What stands behind a figure of the last answer: "why 3 of 10"."""

_POLITE = frozenset({"ok", "okay", "please", "pls", "can", "could", "you", "hm", "hmm", "and"})
"""Words before such a wish that change nothing of it."""

_SURE = frozenset({"sure", "really sure", "certain", "confident"})
"""With a question mark only: "sure" agrees."""


def retelling_in(spoken: str, *, asks: bool) -> Retelling | None:
    """How the last answer is wanted, "ok" and "can you" before it and "please" after left out.

    `asks`: it has a question mark.
    """
    if _HOW_SURE.fullmatch(spoken) is not None or (asks and spoken in _SURE):
        return Retelling.SURE
    if _FLIPS.fullmatch(spoken) is not None:
        return Retelling.FLIPS
    if _FROM.fullmatch(spoken) is not None:
        return Retelling.FROM
    if _WHY_SO_OFTEN.fullmatch(spoken) is not None:
        return Retelling.FIGURE
    words = spoken.removesuffix(" please").split()
    spoken = " ".join(words)
    while words and words[0] in _POLITE and spoken not in _RETELL[Retelling.MORE]:
        words = words[1:]
        spoken = " ".join(words)
    return next((how for how, forms in _RETELL.items() if spoken in forms), None)


OF_THE_TWO = frozenset(
    {Topic.COVER_MIDDLE, Topic.STACK_OR_NOT, Topic.WHERE_TO_STAND, Topic.PAIR_UP, Topic.TRANSITION}
)
"""Topics that the two of us agree on: what one asks then, the other has to be told."""

_TO = r"(?:her|him|them|(?:my |our )?(?:partner|pard|mate|teammate))"
_SO_THAT_I_SAY = regex(
    r"(?:(?:no|ok|so|but|and|sorry|i mean|i meant|i want|i need|just|give me|then) )*"
    r"(?:what (?:should|can|do|could|would|shall) i (?:tell|say to)"
    r"|(?:one|a|1|any) (?:\w+ )?(?:sentence|line|phrase|thing|word)(?: (?:that|which|i|to|can|could"
    rf"|should|may))* (?:say to|tell|for|give)) {_TO}"
    r"(?: (?:at the net|now|then|quickly|please|pls|out there|before (?:this|the|that) \w+"
    r"|in (?:one|a) (?:line|sentence|word)))*"
    r"(?: (?:hes|shes|he|she|because|cause|cos|who|whos) (?:\w+ ?){1,8})?"
)


def is_for_partner(spoken: str) -> bool:
    """ "What should i tell her, shes the one who hesitates", of an answer that both must know."""
    return _SO_THAT_I_SAY.fullmatch(spoken) is not None
