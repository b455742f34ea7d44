"""Weather and bodies: emergencies, then complaints, then what wind, heat and sun change."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.cautions import DEFERS, HEAT_DEFERS
from knowledge.complaints import complains
from knowledge.emergencies import Emergency, emergency_of
from knowledge.general_rule import (
    GeneralRule,
    RuleDataError,
    groups_said,
    load_entries,
    overlap,
    read_rule,
)
from knowledge.situation import Situation, Wind
from knowledge.sources import COMMON_PRACTICE, rule
from knowledge.tactics import heat_answer, wind_answer
from knowledge.tactics.weather_guess import likest_entry
from knowledge.tactics.weather_length import to_one_screen
from knowledge.tactics.weather_said import HeatSaid, folded, heat_said, minutes_said
from knowledge.vocabulary import Topic

ANYTHING, HEAT, COLD, WIND, DRINK = "anything", "heat", "cold", "wind", "drink_eat"
BODY, SKY = "body", "sky"

SAYINGS = re.compile(
    r"\b(?:(?:knee|hip|chest|shoulder|head|belt|waist|eye) (?:high|height|level)"
    r"|cold feet|at our backs?|behind (?:my|our) backs?|on the other side|from (?:the )?left side"
    r"|(?:off|at|on) (?:my|his|her|their) (?:hip|shoulder|feet|chest)|breath of (?:wind|air)"
    r"|hot hand|hot streak|hot as heck|heart says|on (?:the )?(?:paddle|other) hand"
    r"|(?:shak\w+|trembl\w+) (?:\w+ ){0,4}(?:nerves|nervous|pressure)"
    r"|balance of|mother in law|paint(?:s|ed)?)\b"
)
"""Bodies in these are figures of speech, or no complaint."""

LONG_GAP_MIN = 90
SHORT_GAP_MIN = 45
"""Until the next match: time for a small meal, a snack, or sips only; common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A rule with a name and whether it answers a body's complaint or the weather."""

    id: str
    kind: str
    rule: GeneralRule


def advise(situation: Situation) -> Advice:
    """The emergency, else the complaint, else what the weather that is said changes."""
    return to_one_screen(_advice(situation))


def _advice(situation: Situation) -> Advice:
    words = situation.asked.words
    emergency = emergency_of(words) or emergency_of(mended(folded(words)))
    if emergency is not None:
        return _stop(emergency)
    heat = heat_said(words)
    entry = find_entry(words) or _gone_on(situation) or _otherwise(situation, heat)
    if entry.id == ANYTHING:
        entry = _likest(words) or entry
    index = heat_answer.felt(heat)
    if entry.id == WIND:
        return wind_answer.advise(situation)
    if entry.id == HEAT and index is not None:
        return heat_answer.advise(heat, index)
    return _from_entry(entry, situation, heat, index)


def _likest(words: str) -> Entry | None:
    """The entry that the words are likest to; for a complaint never one about the weather."""
    known = {one.id: (*one.rule.words, *sum(one.rule.together, ())) for one in entries()}
    name = likest_entry(words, known)
    found = None if name is None else entry_of(name)
    if complains(words) and (found is None or found.kind != BODY):
        return entry_of("pain")
    return found


def _gone_on(situation: Situation) -> Entry | None:
    """The wind, where words that name nothing follow a question about it: "and my lobs?"."""
    before = situation.asked.before
    found = [find_entry(line) for line in before.splitlines()]
    return next((one for one in found if one is not None and one.id == WIND), None)


def _from_entry(
    entry: Entry, situation: Situation, heat: HeatSaid, index: heat_answer.Felt | None
) -> Advice:
    """The entry as it stands, with the heat that was said and the time there is."""
    found = entry.rule
    is_hot = index is not None and index.index_f >= heat_answer.HOT_FROM_F
    shown = index if is_hot else None
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=_call(entry, situation.asked.words),
        reasons=found.reasons,
        number=None if shown is None else heat_answer.heat_line(shown, celsius=heat.celsius),
        unless=found.unless,
        assumed=None if shown is None else heat_answer.assumed_line(heat, shown),
        caution=found.caution or (HEAT_DEFERS if shown else None),
        numbers={} if shown is None else {"heat_index_f": shown.index_f},
        choices=_choices(entry),
    )


def first_care(words: str) -> tuple[str, str]:
    """What to do first and the caution, for a complaint that is not what is asked about.

    Never a harmless line: words that fit no complaint get the one that fits any.
    """
    emergency = emergency_of(words)
    if emergency is not None:
        return _FIRST_AID[emergency][0], DEFERS
    entry = find_entry(words)
    rule = (entry if entry is not None and entry.kind == BODY else entry_of("pain")).rule
    return rule.call, rule.caution or DEFERS


def _call(entry: Entry, words: str) -> str:
    minutes = minutes_said(words) if entry.id == DRINK else None
    if minutes is None:
        return entry.rule.call
    if minutes >= LONG_GAP_MIN:
        return "Eat small now, familiar and salty; then sip."
    if minutes >= SHORT_GAP_MIN:
        return "Have a small salty snack now; then only sip."
    return "Only sip now, with something salty."


def _choices(entry: Entry) -> tuple[Choice, ...]:
    if entry.id == "sun":
        return (Choice(label="which end?", topic=Topic.CHOOSE_END_OR_SERVE),)
    return ()


def _otherwise(situation: Situation, heat: HeatSaid) -> Entry:
    """What a question is taken for whose words name nothing in particular."""
    degrees = heat.temperature_f
    if heat.feels_like_f is not None or (degrees or 0) >= heat_answer.HOT_FROM_F:
        return entry_of(HEAT)
    if degrees is not None and degrees < heat_answer.COLD_BELOW_F:
        return entry_of(COLD)
    if situation.wind not in (None, Wind.NONE):
        return entry_of(WIND)
    if situation.asked.sun:
        return entry_of("sun")
    if situation.asked.tired:
        return entry_of("tired")
    return entry_of(HEAT if situation.asked.hot else ANYTHING)


_FIRST_AID = {
    Emergency.LIFE: (
        "Stop. Call emergency help and medical staff now.",
        ("Sit or lie down; don't stay alone", "Not breathing: start CPR, send for the AED"),
    ),
    Emergency.SUGAR: (
        "Stop now. Sit down; get medical staff.",
        (
            "Own plan first: the sugar you carry; not alone",
            "Drowsy or odd: emergency number, no food",
        ),
    ),
    Emergency.THINNER: (
        "Stop now. Get medical staff, even if you feel fine.",
        (
            "Thinner and a knock: a bleed can stay hidden",
            "Headache, sick, sleepy: emergency number",
        ),
    ),
    Emergency.HEAT: (
        "Stop now. Get medical staff; shade, cool down.",
        ("Lie down, feet up; don't stay alone", "Confused or not sweating: emergency number"),
    ),
    Emergency.HEAD: (
        "Stop now. Get medical staff: it may be the head.",
        ("No more play today, even if it passes", "Worse, sick or sleepy: emergency number"),
    ),
    Emergency.EYE: (
        "Stop now. Get medical staff: an eye can't wait.",
        ("Don't rub or press; cover it loosely", "Sight changed: emergency number"),
    ),
    Emergency.INJURY: (
        "Stop now. Get medical staff; don't play on it.",
        ("Keep it still; press a clean cloth on bleeding", "Heavy bleeding: emergency number"),
    ),
}
"""What to do first, in the words of general first-aid teaching (from memory)."""


def _stop(emergency: Emergency) -> Advice:
    call, first_aid = _FIRST_AID[emergency]
    return Advice(
        topic=Topic.WEATHER_OR_BODY,
        call=call,
        reasons=(
            *(Reason(text=text, source=COMMON_PRACTICE) for text in first_aid),
            Reason(text="Medical time-out: up to 15 minutes", source=rule("10.B")),
        ),
        caution=DEFERS,
        confidence=Confidence.GENERAL_RULE,
    )


def find_entry(words: str) -> Entry | None:
    """The gravest complaint that is told; without one the entry that covers most of the words."""
    text = re.sub(r"\bhr:? ?(?=\d{3}\b)", "heart rate ", mended(folded(words)))
    said = SAYINGS.sub(" ~ ", text)
    for entry in entries():
        if entry.kind == BODY and (
            overlap(entry.rule.words, said) or groups_said(entry.rule, said)
        ):
            return entry
    sky = [entry for entry in entries() if entry.kind == SKY]
    best = max(sky, key=lambda entry: overlap(entry.rule.words, text))
    return best if overlap(best.rule.words, text) else None


REAL_WORDS = frozenset({"does", "tried", "slat", "clod", "sings"})
"""English by themselves, though a swap of two letters makes each a word of ours."""


def mended(text: str) -> str:
    """The text with two swapped letters put right where that makes a word of ours."""
    return re.sub(r"[a-z]{4,}", lambda found: _unswapped(found[0]), text)


def _unswapped(token: str) -> str:
    ours = _long_words()
    if token in ours or token in REAL_WORDS:
        return token
    swaps = (token[:n] + token[n + 1] + token[n] + token[n + 2 :] for n in range(len(token) - 1))
    return next((swap for swap in swaps if swap in ours), token)


@cache
def _long_words() -> frozenset[str]:
    """Single words that pick an entry, long enough to be known with two letters swapped."""
    rules = [entry.rule for entry in entries()]
    said = [word for rule in rules for word in (*rule.words, *sum(rule.together, ()))]
    return frozenset(one for word in said for one in word.split() if len(one) >= 4)


def entry_of(name: str) -> Entry:
    """The entry of that name."""
    return next(entry for entry in entries() if entry.id == name)


@cache
def entries() -> tuple[Entry, ...]:
    """All entries, gravest first; RuleDataError if one does not fit."""
    return tuple(_read_entry(row) for row in load_entries("knowledge.tactics", "weather.toml"))


def _read_entry(row: Mapping[str, object]) -> Entry:
    found = Entry(id=str(row.get("id")), kind=str(row.get("kind")), rule=read_rule(row))
    if found.kind not in (BODY, SKY) or (found.kind == BODY and not found.rule.caution):
        raise RuleDataError(f"an entry is of body, with a caution, or of sky: {row}")
    return found
