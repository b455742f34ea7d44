"""A knock on the head in the few words that pain leaves: "hit head", "head first into the fence".

Whose head it was may go unsaid. What is hit at a head or head high tells of no knock: a bare head
stands right behind its verb, and "in the head" behind what was done to somebody already.
"""

from __future__ import annotations

from typing import Final

from knowledge.regex import regex

_HIT = (
    r"(?:hits?|hitting|struck|(?:smack|bang|bump|crack|knock|whack|bonk|conk|clonk|clunk|thump|"
    r"clock)(?:s|ed|in|ing)?|(?:smash|bash)(?:es|ed|in|ing)?|split|bust(?:ed)?)"
)
_STRUCK = (
    r"(?:clocked|pegged|drilled|beaned|clipped|walloped|clobbered|tagged|smoked|plunked|popped|"
    r"conked|bonked|thumped|bashed|caught|blasted)"
)
_TOOK = (
    r"(?:took|taken) (?:it|one|(?:a|the) (?:\w+ ){0,2}"
    r"(?:ball|shot|smash|overhead|drive|paddle|hit|knock|blow))"
)
_HEAD = r"(?:head|skull|temple|noggin|forehead)"
_WHOSE = r"(?:my|the|his|her|their|your|our|partners|\w+ s)"
_NO_KNOCK = (
    r"(?! (?:high|height|level|up|down|fakes?|hunt\w*|shots?|start|about|on (?:at|every|with)|"
    r"to head)\b)"
)
"""What makes of a head a height, a manner or a figure of speech, right behind it."""

_INTO = r"(?:ran|running|crash\w*|flew|fell|dove|dived|slid|landed|slammed)"
_HARD = r"(?:fence|wall|post|net|court|ground|floor|concrete|bench|pole|chair)"

HEAD_HIT_SIGNS: Final = (
    rf"{_HIT} (?:{_WHOSE} )?(?:{_HEAD}|heads){_NO_KNOCK}",
    rf"(?:{_STRUCK}|{_TOOK}) (?:\w+ ){{0,2}}(?:in|on|to|off|upside) "
    rf"(?:{_WHOSE} )?{_HEAD}{_NO_KNOCK}",
    rf"(?:knock|blow|bang|bump|whack|smack|crack|lump|egg|cut|gash) (?:on|to) "
    rf"(?:{_WHOSE} )?{_HEAD}{_NO_KNOCK}",
    rf"{_INTO} (?:\w+ ){{0,5}}(?:head|face) ?first",
    rf"(?:head|face) ?first (?:into|onto|on) (?:\w+ ){{0,2}}{_HARD}",
    rf"(?:fell|falls?|landed|landing|went down) (?:\w+ )?on (?:{_WHOSE} )?(?:{_HEAD}|face)",
)
"""Forms of folded words, as `knowledge.emergencies` reads them."""

_HEIGHT = (
    r"(?:bleachers?|stands?|grandstand|stairs?|staircase|steps|ladder|bench|chair|table|wall|fence"
    r"|balcony|ledge|platform|tower|seats?|railing|bike|scooter|golf cart|cart)"
)

_KNOCKED = regex(
    r"(?<!sun )(?<!heat )\b(?:"
    + "|".join(
        (
            *HEAD_HIT_SIGNS,
            rf"(?:fell|falls?|fallen|tumbled|slipped|dropped) (?:right |straight |head ?first )?"
            rf"(?:off|from|down|over)(?: of)? (?:\w+ ){{0,2}}{_HEIGHT}",
            rf"(?:{_HIT}|{_STRUCK}) (?:\w+ ){{0,4}}(?:in|on|to) (?:{_WHOSE} )?(?:head|temple|face)",
            rf"{_WHOSE} head (?:\w+ )?(?:hit|struck|bounced|banged|smacked|cracked)",
            r"(?:head injury|knocked out|concuss\w*|heads? (?:collided|clashed|knocked))",
        )
    )
    + r")\b"
)
"""A head that was hit, or a fall from a height, which hits it unseen; a headache is none."""

_SHOWS = regex(
    r"\b(?:(?:sick|sleepy|drowsy|dazed|slurr\w+)"
    r"|(?:doesn ?t|don ?t|didn ?t|can ?t|not) (?:know|remember)"
    r"|(?:keeps|kept|keep) (?:asking|saying)|same question|(?:out cold|knocked out)"
    r"|(?:pupils|blood|fluid) (?:\w+ ){0,3}(?:ears?|nose|uneven|different|big))\b"
)
"""What a head shows beside sickness and dizziness, as first aid is taught (from memory)."""


_FELL = regex(
    r"\b(?:fell|falls|fallen|tripped|tumbled|slipped|knocked over)\b"
    r"(?! (?:behind|apart|short|for|asleep|back|away|in love|to|into)\b)"
)
_MIND = regex(r"\b(?:confused|disoriented|gibberish|nonsense|no sense|any sense|double|blurr\w+)\b")
_OF_HEAT = regex(r"\b(?:hot|heat|sun|sunny|humid|sweat\w*)\b")

_FROM_A_HEIGHT = regex(
    r"(?<!ball )(?<!balls )(?<!it )(?<!paddle )\b(?:fell|fallen|tumbled) (?:right )?"
    r"(?:off|from|down)(?: of)? (?:the|a|some|those|these|our|her|his) (?:\w+ )?"
    r"(?:bleachers?|grandstand|stands?|stairs?|staircase|steps|ladder|balcony|platform)\b"
)
_LONG_AGO = regex(
    r"\b(?:last (?!point|rally|game)\w+|ago|yesterday|years?|months?|weeks?"
    r"|when (?:he|she|i) was)\b"
)


def fell_from_a_height(said: str) -> bool:
    """Whether the folded words tell of such a fall just now: staff look, however it seems."""
    return _FROM_A_HEIGHT.search(said) is not None and _LONG_AGO.search(said) is None


def shows_a_knock(said: str, *, is_unwell: bool) -> bool:
    """Whether the folded words tell of a head that was hit, or of a fall from a height, and of how
    it shows: `is_unwell` where they tell of dizziness, sickness or a mind that is not clear. From
    the blow that is no heat: nobody is laid feet up, and the neck is kept still."""
    if _KNOCKED.search(said) is not None:
        return is_unwell or _SHOWS.search(said) is not None
    is_muddled = _FELL.search(said) is not None and _MIND.search(said) is not None
    return is_unwell and is_muddled and _OF_HEAT.search(said) is None
