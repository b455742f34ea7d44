"""A knock on the head in the few words that pain leaves: "hit head", "head first into the fence".

Whose head it was may go unsaid. What is hit at a head or head high tells of no knock: a bare head
stands right behind its verb, and "in the head" behind what was done to somebody already.
"""

from __future__ import annotations

from typing import Final

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
