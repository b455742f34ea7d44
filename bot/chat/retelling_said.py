"""How the last answer is wanted again: "tell me more", "shorter", "once more", "exact mix"."""

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

_POLITE = frozenset({"ok", "okay", "please", "pls", "can", "could", "you", "hm", "hmm", "and"})
"""Words before such a wish that change nothing of it."""


def retelling_in(spoken: str) -> Retelling | None:
    """How the last answer is wanted, "ok" and "can you" before it and "please" after left out."""
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
