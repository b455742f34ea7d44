"""Hands that a question itself tells: "both lefties", "lefty on the right", "I'm left-handed"."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.evidence import FactEstimate, Profile
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import Hand, PlayerId, Side, Trait, Value, Wing

_LEFTY = r"(?:lefty|lefties|leftys|southpaws?|left ?hand(?:ed|er|ers)?)"
_RIGHTY = r"(?:righty|righties|rightys|right ?hand(?:ed|er|ers)?)"
_HANDED = {Hand.LEFT: _LEFTY, Hand.RIGHT: _RIGHTY}
_ALL = r"(?:both|two|2|all)(?: of us)?(?: are| being| play)? "
_PLACE = (
    r"(?: player)?(?: is| plays| playing| stands| standing)?(?: on)?(?: the| our)? (left|right)\b"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidHands:
    """Hands by court as said, how a reply repeats them, and whether they are known to be ours."""

    by_side: Mapping[Side, Hand]
    words: str
    fits_us: bool


def said_hands(situation: Situation) -> SaidHands | None:
    """What the words say of our hands; None if they say nothing."""
    words = " ".join(re.findall(r"[a-z0-9]+", situation.asked.words.casefold().replace("'", "")))
    both = None if _names_them(words, situation) else _for_both(words)
    told = both or _by_place(words) or _by_person(words, situation)
    found = told or _one_of_each(words)
    if not found:
        return None
    known = {one.side: one.hand for one in situation.ours if one.side is not None}
    fits = all(known.get(side) in (None, hand) for side, hand in found.items())
    is_told = told is not None or wing_in_middle(words) is not None
    said = _repeated(found) if is_told else SIDES_TAKEN
    return SaidHands(by_side=MappingProxyType(found), words=said, fits_us=fits)


SIDES_TAKEN = "lefty and righty (taken: forehands in)"


def _names_them(words: str, situation: Situation) -> bool:
    """Whether one of them is named: "noor vs saskia both lefty" tells of one of ours, not two."""
    said = words.split()
    names = (part for one in situation.theirs for part in one.name.casefold().split())
    return any(name in said for name in names)


def _for_both(words: str) -> dict[Side, Hand] | None:
    for hand, how in _HANDED.items():
        if re.search(rf"\b{_ALL}(?:{how})", words):
            return dict.fromkeys(Side, hand)
    return None


def _by_place(words: str) -> dict[Side, Hand] | None:
    found = {
        Side(place[1]): hand
        for hand, how in _HANDED.items()
        for place in re.finditer(rf"\b{how}{_PLACE}", words)
    }
    return found or None


_MIDDLE = r"(?: (?:in|into|to|at|on|are|is|the|our))* (?:mid|middle|center|centre)\b"
_BOTH = r"\b(?:both|two|2)(?: (?:our|have|has|had|got|with|of us|the|their|your))*"
_BACKHANDS_IN = regex(rf"{_BOTH} (?:bhs?|backhands?){_MIDDLE}")
_FOREHANDS_IN = regex(rf"{_BOTH} (?:fhs?|forehands?){_MIDDLE}")


def wing_in_middle(words: str) -> Wing | None:
    """The wing that words bring to the middle twice: "we both have forehands in the middle"."""
    if _BACKHANDS_IN.search(words):
        return Wing.BACKHAND
    return Wing.FOREHAND if _FOREHANDS_IN.search(words) else None


def _one_of_each(words: str) -> dict[Side, Hand] | None:
    """ "A lefty and a righty": both forehands in the middle, as such a pair stands, or the
    backhands where that is said."""
    if not all(re.search(rf"\b{how}\b", words) for how in _HANDED.values()):
        return None
    if wing_in_middle(words) is Wing.BACKHAND:
        return {Side.LEFT: Hand.LEFT, Side.RIGHT: Hand.RIGHT}
    return {Side.LEFT: Hand.RIGHT, Side.RIGHT: Hand.LEFT}


def _by_person(words: str, situation: Situation) -> dict[Side, Hand] | None:
    """ "I'm a lefty", "my partner is left-handed", "Tom is a lefty", where their side is known."""
    found: dict[Side, Hand] = {}
    for one in situation.ours:
        names = [re.escape(one.name.casefold())] if one.name else []
        if situation.asker is not None:
            mine = one.player == situation.asker
            names.append("(?:im|i am)" if mine else "(?:my partner|partner|he|she)")
        for hand, how in _HANDED.items():
            said = re.search(rf"\b(?:{'|'.join(names)})(?: is| are)?(?: a| the)? {how}", words)
            if said and names and one.side is not None:
                found[one.side] = hand
    return found or None


def _repeated(found: Mapping[Side, Hand]) -> str:
    if len(found) == len(Side) and len(set(found.values())) == 1:
        hand = next(iter(found.values()))
        return "both left-handed" if hand is Hand.LEFT else "both right-handed"
    handed = {Hand.LEFT: "lefty", Hand.RIGHT: "righty"}
    return ", ".join(f"{handed[hand]} on the {side}" for side, hand in found.items())


def supposing(situation: Situation, said: SaidHands) -> Situation:
    """Our pair with the hands as said; two unnamed players where our own two are not like that."""
    named = {one.side: one for one in situation.ours if one.side is not None}
    if not said.fits_us or len(named) < len(Side):
        named = {side: _someone(side) for side in Side}
    ours = tuple(_with_hand(one, said.by_side.get(side)) for side, one in named.items() if side)
    if said.fits_us:
        return replace(situation, ours=ours)
    return replace(situation, ours=ours, agreements=MappingProxyType({}))


def _someone(side: Side) -> OnCourt:
    number = -1 if side is Side.LEFT else -2
    return OnCourt(profile=Profile(player=PlayerId(number), name=f"{side} player"), side=side)


def _with_hand(one: OnCourt, hand: Hand | None) -> OnCourt:
    if hand is None:
        return one
    fact = FactEstimate(
        value=Value(hand.value), chance=1.0, evidence=(), contradicted=False, newest_day=0
    )
    facts = MappingProxyType({**one.profile.facts, Trait.HAND: fact})
    return replace(one, profile=replace(one.profile, facts=facts))
