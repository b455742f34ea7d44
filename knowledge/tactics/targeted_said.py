"""Which of us they play at, or freeze out, and with what, by the words of the question."""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.conditions import other_of
from knowledge.tactics.targeted_helper import asks_to_squeeze, gets_them
from knowledge.vocabulary import BallKind


class HitWith(StrEnum):
    """What they play at one of us with."""

    ANYTHING = "anything"
    DINKS = "dinks"
    DRIVES = "drives"
    SPEED_UPS = "speed-ups"
    LOBS = "lobs"
    RETURNS = "returns"


@dataclass(frozen=True, slots=True, kw_only=True)
class Targeted:
    """Who gets the balls and who helps; a player is None where the words don't say which of us.

    `is_me` tells whether the one who gets the balls writes, where no name says it. `frozen`:
    the question is put for the one who gets no balls. `asks_poach` asks whether to poach,
    `burnt` says that they hit behind the helper. `asks_helper`: the helper is asked about and does
    not write ("what does noor do"); `asks_squeeze`: whether that one, by name, steps in.
    """

    targeted: OnCourt | None
    helper: OnCourt | None
    is_me: bool
    frozen: bool
    hit_with: HitWith
    asks_poach: bool
    burnt: bool
    asks_helper: bool = False
    asks_squeeze: bool = False

    @property
    def name(self) -> str:
        if self.targeted is not None:
            return self.targeted.name
        return "You" if self.is_me else "Partner"

    @property
    def helper_name(self) -> str:
        if self.helper is not None:
            return self.helper.name
        return "Partner" if self.is_me else "You"


_FROZEN = regex(
    r"\b(?:fr[eo]ez\w*|froz\w*|froze|ic(?:ed|ing)(?: \w+)? out|ice (?:me|us|him|her|out|my)|"
    r"keep ?away|keeps? (?:it|the ball|the balls) away|avoid\w*|(?:no|zero) balls|"
    r"(?:dont|never|havent|doesnt|hasnt|wont let \w+|cant) (?:even )?(?:get|gets|touch\w*|see|hit)|"
    r"(?:never|dont|wont) (?:hit|play|dink|come)(?: \w+){0,3} (?:to|at|on)|"
    r"stand\w* there|nothing to (?:me|him|her)|im cold|cold partner|starv\w*|ignor\w*)\b"
)
_ME = regex(r"\b(?:i|im|ive|me|mine|my|myself)\b")
_MINE = regex(r"\b(?:my (?:back|fore|bh|fh|feet|body|hip|shoulder|left|right|side)\w*|me)\b")
_SPOKEN_OF = regex(r"\b(?:he|she|hes|shes|him|her|his|partner\w*)\b")
_PARTNER = regex(r"\b(?:partner\w*|her|she|shes|him|he|hes|his|wife|husband|lady|girl|one of us)\b")
_MY_PARTNER = regex(r"\bmy (?:partner\w*|wife|husband|girlfriend|boyfriend)\b")
_NAMES_PARTNER = regex(
    r"\b(?:partner\w*|wife|husband|lady|girl|one of us|(?:to|at|on|target\w*) (?:him|her))\b"
)
_HELPING = regex(
    r"\b(?:should i|can i|how (?:do|can|should) i|do i)(?: \w+){0,2} (?:help|poach|slide|squeeze|"
    r"take more|cover|step|participate)"
)
_FREEZES_ME = regex(
    r"\b(?:fr[eo]ez\w*|froz\w*|froze|ic(?:e|ed|ing)|avoid\w*|ignor\w*|nothing to|never to) me\b"
)
_TO_ME = regex(r"(?<!not )(?<!never )(?<!nothing )(?<!none )\b(?:to|at|on|target\w*) me\b")
_THEY_FIND_ME = regex(
    r"\b(?:they|theyre|everything|every ball|balls|opponents|all)"
    r"(?: (?!him|her|them|not|never|nothing|nobody|and|but|he|she|if|when|that)\w+){1,4} me\b"
)
"""`still they find me`: whoever else is spoken of, the balls come to the one who writes."""
_POACH = regex(r"\b(?:poach\w*|cross over|jump in|take more balls|slide over|squeeze over)\b")
_BURNT = regex(
    r"(?<!we are )(?<!were )(?<!we )\bbehind\b(?! by| in| \d)|\bburn\w*|\bdown my line\b"
)

_WITH: Mapping[HitWith, re.Pattern[str]] = MappingProxyType(
    {
        HitWith.LOBS: regex(r"\blob\w*\b"),
        HitWith.SPEED_UPS: regex(
            r"\b(?:speed\w* ?(?:it )?ups?|speeds|body|hip|chest|shoulder|jam\w*|attack\w*)\b"
        ),
        HitWith.DINKS: regex(r"\bdink\w*\b|\bsoft (?:balls?|ones?)\b"),
        HitWith.DRIVES: regex(r"\b(?:driv\w*|bang\w*|hammer\w*|hard|pace|slam\w*)\b"),
        HitWith.RETURNS: regex(r"\b(?:returns?|returning|third|thirds|3rds?)\b"),
    }
)

_OF_BALL: Mapping[BallKind, HitWith] = MappingProxyType(
    {
        BallKind.DINK: HitWith.DINKS,
        BallKind.DRIVE: HitWith.DRIVES,
        BallKind.SPEED_UP: HitWith.SPEED_UPS,
        BallKind.LOB: HitWith.LOBS,
    }
)


def targeted_said(situation: Situation) -> Targeted:
    """Read the words; where they don't say who, the one who writes gets the balls."""
    said = _words_of(situation.asked.words)
    frozen = bool(_FROZEN.search(said))
    named = [one for one in situation.ours if one.player in situation.asked.about]
    if _MINE.search(said) and not _SPOKEN_OF.search(said):
        # Of whoever writes; somebody else stands there only as the one spoken of before.
        named = [one for one in named if one.name.casefold() in said]
    if not frozen and named:
        before = "\n".join(_words_of(line) for line in situation.asked.before.splitlines())
        told = gets_them(situation, named, said, before)
        if told is not None:
            return _beside_the_helper(situation, told, said)
    is_me, subject = _subject(situation, said, named, frozen=frozen)
    gets_balls = _other(situation, subject) if frozen else subject
    gets_me = is_me is not frozen
    return Targeted(
        targeted=gets_balls,
        helper=_other(situation, gets_balls),
        is_me=gets_me,
        frozen=frozen,
        hit_with=_hit_with(situation, said),
        asks_poach=bool(_POACH.search(said)),
        burnt=bool(_BURNT.search(said)),
    )


def _beside_the_helper(situation: Situation, gets_balls: OnCourt, said: str) -> Targeted:
    helper = _other(situation, gets_balls)
    is_named = helper is not None and helper.player in situation.asked.about
    return Targeted(
        targeted=gets_balls,
        helper=helper,
        is_me=situation.asker is not None and gets_balls.player == situation.asker,
        frozen=False,
        hit_with=_hit_with(situation, said),
        asks_poach=bool(_POACH.search(said)),
        burnt=bool(_BURNT.search(said)),
        asks_helper=is_named or (helper is not None and helper.player != situation.asker),
        asks_squeeze=is_named and asks_to_squeeze(said),
    )


def _words_of(line: str) -> str:
    return " ".join(re.findall(r"[^\W_]+", _plain(line)))


def _plain(words: str) -> str:
    return words.casefold().replace("'", "").replace("’", "")


def _subject(
    situation: Situation, said: str, named: list[OnCourt], *, frozen: bool
) -> tuple[bool, OnCourt | None]:
    """Whether the one spoken of writes, and who it is where that is known.

    A name beside an "at me" is the helper's, or one spoken of before.
    """
    known = None if situation.asker is None else situation.find(situation.asker)
    asker = known or _writer(situation)
    if len(named) == 1:
        is_me = _FREEZES_ME.search(said) if frozen else _gets_me(said)
        if asker is not None and is_me:
            return True, asker
        return asker is not None and named[0].player == asker.player, named[0]
    spoken = _MY_PARTNER.sub("partner", said)
    if _told_of_me(situation) and not _NAMES_PARTNER.search(spoken) and not frozen:
        return True, known  # "if she goes line": one of them, who was told to play at me
    is_partner = bool(_PARTNER.search(spoken)) and (
        not _ME.search(spoken) or bool(_HELPING.search(said)) or not _at_me(spoken)
    )
    if is_partner:
        return False, None if asker is None else other_of(asker, situation.ours)
    return True, known


def _told_of_me(situation: Situation) -> bool:
    """Whether the line before told that they play at whoever writes, and nobody else of us."""
    before = _words_of(situation.asked.before)
    return bool(_TO_ME.search(before)) and not _NAMES_PARTNER.search(before)


def _writer(situation: Situation) -> OnCourt | None:
    """Who writes, where one of ours was spoken of by name: nobody speaks of themselves so."""
    told = _words_of(situation.asked.before).split()
    named = [one for one in situation.ours if one.name.casefold() in told]
    return other_of(named[0], situation.ours) if len(named) == 1 else None


def _gets_me(said: str) -> bool:
    return bool(_TO_ME.search(said) or _THEY_FIND_ME.search(said))


def _at_me(said: str) -> bool:
    """Whether the words put the writer at the end of it: "at me", "I get no balls"."""
    return bool(
        _THEY_FIND_ME.search(said)
        or re.search(
            r"(?<!not )(?<!never )\b(?:to|at|on|target\w*|avoid\w*|out|freez\w*|ice|isolate) me\b",
            said,
        )
        or re.search(
            r"\bme out\b|\bi (?:get|dont|never|havent|stand)\b|\bim\b|\bmy \w*hand\b", said
        )
    )


def _other(situation: Situation, one: OnCourt | None) -> OnCourt | None:
    return None if one is None else other_of(one, situation.ours)


def _hit_with(situation: Situation, said: str) -> HitWith:
    found = next((kind for kind, pattern in _WITH.items() if pattern.search(said)), None)
    if found is not None:
        return found
    kind = situation.asked.ball_kind
    return HitWith.ANYTHING if kind is None else _OF_BALL.get(kind, HitWith.ANYTHING)
