"""A new partner: eight things to settle, in five lines that both of the pair keep."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.dataclass import dataclass
from knowledge.planning.names import first_that_fits
from knowledge.regex import regex
from knowledge.situation import Agreement, Situation, Wind
from knowledge.sources import COMMON_PRACTICE, Source, SourceKind
from knowledge.tactics.lob_lanes import said_in_the_wind
from knowledge.tactics.pair_up_asked import call_instead
from knowledge.tactics.pair_up_items import Item, Pair, items_of
from knowledge.tactics.stack_answer import NAMELESS, pair_of
from knowledge.tactics.standing_words import capital
from knowledge.vocabulary import AgreementKey, Topic

LINE_LIMIT: Final = 80
"""Two lines of a phone: what a pair agreed in its own words is not cut sooner."""

AGREED: Final = Source(kind=SourceKind.AGREED, citation="")

_RECALLS: Final = regex(
    r"\b(?:did we (?:agree|say|settle|decide)|(?:have )?we agreed|weve agreed|agreed on|"
    r"our (?:agreements?|deal|rules)|what(?: is|s) agreed)\b"
)

_NOBODY: Final = 'Say "we are Ana and Bo" and I keep it for you.'


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """Our two, the eight items with their defaults, and what they agreed so far."""

    pair: Pair
    items: tuple[Item, ...]
    agreements: Mapping[AgreementKey, Agreement]

    @property
    def open(self) -> tuple[Item, ...]:
        """What is not agreed yet, in the order in which it is asked."""
        return tuple(item for item in self.items if item.key not in self.agreements)

    def first_to_ask(self, asked: AgreementKey | None) -> Item | None:
        """What was asked about, else the first that is open; None when all is agreed."""
        about = next((item for item in self.items if item.key is asked), None)
        return about or next(iter(self.open), None)

    @property
    def settled(self) -> int:
        return len(self.items) - len(self.open)

    def words(self, key: AgreementKey) -> str:
        """What counts: the pair's own words, else our default."""
        agreed = self.agreements.get(key)
        if agreed is not None:
            return words_of(agreed)
        return next(item for item in self.items if item.key is key).default.words


def card_of(situation: Situation) -> Card:
    pair = pair_of(situation)
    return Card(pair=pair, items=items_of(situation, pair), agreements=situation.agreements)


_LABEL: Final = regex(r"^(?:lobs?|middle|sides?|stack|signals?|time-?outs?|out)\s*:\s*", re.I)


def words_of(agreement: Agreement) -> str:
    """An agreement in a line: its value where that says enough alone, else its words."""
    said = agreement.value if len(agreement.value.split()) > 1 else agreement.words
    return _LABEL.sub("", said or agreement.value).strip().rstrip(".")


def advise(situation: Situation) -> Advice:
    """Five lines: what is agreed, and our default for the rest."""
    card = card_of(situation)
    is_known = card.pair != NAMELESS
    return Advice(
        topic=Topic.PAIR_UP,
        call=_call(situation, card),
        lines=lines_of(card),
        number=_number(card) if is_known else None,
        unless=_in_the_wind(situation) or _other_partner(situation),
        assumed=None if is_known else _NOBODY,
        confidence=Confidence.GENERAL_RULE if card.settled == 0 else Confidence.CLEAR,
        numbers=MappingProxyType({"settled": float(card.settled), "open": float(len(card.open))}),
        choices=(Choice(label="stack?", topic=Topic.STACK_OR_NOT),),
        more=_more(card, asked_about(situation.asked.words)),
    )


_ABOUT: Final = (
    (
        AgreementKey.FIRST_SERVER,
        r"serv\w* first|first serv\w*|starts? (?:with )?(?:the )?serv\w*"
        r"|serv\w* order|order (?:\w+ ){0,2}serv\w*",
    ),
    (AgreementKey.TIMEOUT_CALLER, r"time ?outs?"),
    (
        AgreementKey.OUT_CALLER,
        r"(?:says?|calls?|shouts?) (?:the )?(?:out|bounce|lines?|balls? out)",
    ),
    (AgreementKey.POACH_SIGNAL, r"signals?|poach\w*|fist"),
    (AgreementKey.LOBS, r"lobs?"),
    (AgreementKey.MIDDLE, r"middle"),
    (AgreementKey.SIDES, r"(?:which|what) sides?|(?:on|play\w*|the) (?:the )?(?:left|right)"),
)
"""Words of a question about one of the eight alone."""


def asked_about(words: str) -> AgreementKey | None:
    """The one thing that a question is about; None for all of them, or for several."""
    spoken = words.casefold()
    found = [key for key, said in _ABOUT if re.search(rf"\b(?:{said})\b", spoken)]
    return found[0] if len(found) == 1 else None


def _call(situation: Situation, card: Card) -> str:
    instead = call_instead(situation.asked.words)
    if instead is not None:
        return instead
    key = asked_about(situation.asked.words)
    if key is not None:
        verb = "Do as agreed" if key in card.agreements else "Agree"
        calls = (f"{verb}: {card.words(key)}.", f"{verb}: {key.label} as below.")
        return first_that_fits(calls)
    if not card.open:
        return "Play as agreed: all eight are settled."
    if len(card.open) == 1:
        return "Play as agreed; settle the last one."
    if card.settled:
        return f"Play as agreed; settle the other {len(card.open)}."
    spoken = re.sub(r"['’]", "", situation.asked.words.casefold())
    if _RECALLS.search(spoken):
        return "Settle it now: nothing is agreed yet."
    return "Agree these five lines before you start."


def lines_of(card: Card) -> tuple[Reason, ...]:
    """Eight items in five lines; a line is agreed when all that stands in it is."""
    key = AgreementKey
    sides, stack = card.words(key.SIDES), card.words(key.STACK)
    first, timeouts = card.words(key.FIRST_SERVER), card.words(key.TIMEOUT_CALLER)
    poach, out = card.words(key.POACH_SIGNAL), card.words(key.OUT_CALLER)
    return (
        _line(card, f"{capital(sides)}; {stack}", key.SIDES, key.STACK),
        _line(card, f"Middle: {card.words(key.MIDDLE)}", key.MIDDLE),
        _line(card, f"Lobs: {card.words(key.LOBS)}", key.LOBS),
        _line(
            card, f"{capital(first)}; time-outs: {timeouts}", key.FIRST_SERVER, key.TIMEOUT_CALLER
        ),
        _line(card, f"Poach: {poach}; out: {out}", key.POACH_SIGNAL, key.OUT_CALLER),
    )


def _line(card: Card, text: str, *keys: AgreementKey) -> Reason:
    agreed = [key for key in keys if key in card.agreements]
    source = COMMON_PRACTICE
    if agreed:
        citation = "" if len(agreed) == len(keys) else agreed[0].label
        source = replace(AGREED, citation=citation)
    return Reason(text=first_that_fits((text,), limit=LINE_LIMIT), source=source)


def _in_the_wind(situation: Situation) -> str | None:
    """Of lobs alone: wind changes where they come down and not who runs."""
    is_of_lobs = asked_about(situation.asked.words) is AgreementKey.LOBS
    is_windy = situation.wind not in (None, Wind.NONE)
    return said_in_the_wind() if is_of_lobs and is_windy else None


def _number(card: Card) -> str:
    if not card.open:
        return f"Forward it to {card.pair[1].name}, so that both have it."
    return f"{card.settled} of {len(card.items)} agreed; the rest is common practice."


def _other_partner(situation: Situation) -> str | None:
    """Somebody named who is not of our pair: another partner, or an opponent by the book."""
    ours = {one.player for one in situation.ours}
    others = [
        one
        for one in situation.theirs
        if one.player in situation.asked.about and one.player not in ours
    ]
    if len(others) != 1 or not situation.ours:
        return None  # "they" are two: nobody plays with both
    other = others[0]
    asker = next(
        (one for one in situation.ours if one.player == situation.asker), situation.ours[0]
    )
    return first_that_fits(
        (f'{other.name} is your partner? Say "we are {asker.name} and {other.name}".',),
        limit=LINE_LIMIT,
    )


_CROSS: Final = "The cross player moves into a slow ball and sees it longer."
_BETTER_LOOK: Final = 'The one not hitting has the better look: "out", "bounce", "mine", "yours".'
_RIGHT_FIRST: Final = "Right serves first: at 0 that one stands right anyway."
_WHY: Final = MappingProxyType(
    {
        AgreementKey.MIDDLE: _CROSS,
        AgreementKey.LOBS: _CROSS,
        AgreementKey.OUT_CALLER: _BETTER_LOOK,
        AgreementKey.FIRST_SERVER: _RIGHT_FIRST,
    }
)


def _more(card: Card, asked: AgreementKey | None) -> tuple[str, ...]:
    """Why these, and what else could be agreed; of the one thing asked about, that alone."""
    items = [item for item in card.items if asked in (None, item.key)]
    whys = (_CROSS, _BETTER_LOOK, _RIGHT_FIRST)
    why = whys if asked is None else tuple(filter(None, [_WHY.get(asked)]))
    others = (
        f"{item.asks} {' / '.join(answer.words for answer in item.answers)}" for item in items
    )
    beforehand = "Decided beforehand beats decided right: no ball falls between you."
    return (beforehand, *why, *others)
