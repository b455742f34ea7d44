"""A ball in the face, as it is told: "hit the ball in my face", "took one on the nose".

Whoever gets "in my face" with words has hit nobody, and a paddle has a face too.
"""

from __future__ import annotations

from typing import Final

_HIT = (
    r"(?:hit(?:s|ting)?|struck|smash(?:e[sd])?|smack(?:s|ed)?|slam(?:s|med)?|whack(?:s|ed)?|"
    r"drove|drives?|fire[sd]?|blast(?:s|ed)?|bang(?:s|ed)?|nail(?:s|ed)?|drill(?:s|ed)?|"
    r"peg(?:s|ged)?|tag(?:s|ged)?|pop(?:s|ped)?|beaned|clocked|caught|took|takes|taken|sped|"
    r"speeds?|shoots?|bounce[sd]?|deflect(?:s|ed)|ricochet\w*|threw|flew|came|went|lands?|landed|"
    r"got (?:hit|struck|it|one|a ball|the ball))"
)
_WHOSE = r"(?:my|his|her|their|your|me|him|the|partners?|\w+ s|(?!paddles|rackets)\w+s)"
_FACE = (
    r"(?:(?:left|right|whole) )?(?:face|cheek(?: ?bone)?|nose|mouth|teeth|upper lip|lips?|jaw)s?\b"
    r"(?! (?:of|level|height|high)\b)"
)

FACE_HIT_SIGNS: Final = (
    rf"{_HIT} (?:\w+ ){{0,5}}(?:in|into|to|on|onto) {_WHOSE} {_FACE}",
    rf"(?:{_HIT}|balls?|paddle) (?:(?!at\b)\w+ )?(?:hits? |got )?"
    rf"(?:my|his|her|partners?|\w+ s) {_FACE}",
    rf"(?:balls?|one|drive|smash|paddle|overhead) (?:straight |right |full )?"
    rf"(?:in|into|to|on) (?:{_WHOSE} )?{_FACE}",
)
"""Forms of folded words, as `knowledge.emergencies` reads them."""

NO_FACE_HIT_SAYING: Final = (
    r"(?:should|can|could|shall|may|wants? to|wanted to|wanna|gonna|going to|like to|never|dont|"
    r"not to) (?:i |we |u |you )?(?:just |ever )?(?:hit|smash|drive|speed|play|go|aim|attack)"
    r" (?:\w+ ){0,5}faces?\b"
    r"|(?:fault|legal|illegal|allowed|what happens|what if|rule|rules) (?:\w+ ){0,2}?"
    r"(?:if|when|to|a) (?:\w+ ){0,6}faces?\b"
    r"|(?:\w+ ){1,8}?faces? (?:\w+ ){0,6}?last (?:week|weekend|month|year|season)\b"
)
"""Where somebody thinks of hitting, or asks for the rule: nobody is hit now."""
