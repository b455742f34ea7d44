"""Weather and bodies: emergencies, then complaints, then what wind, heat and sun change."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Advice, Choice, MatchFact
from knowledge.cautions import DEFERS, HEAT_DEFERS, HeatLevel, heat_level
from knowledge.complaints import complains
from knowledge.emergencies import emergency_of, without_denied
from knowledge.regex import regex
from knowledge.situation import Situation, Wind
from knowledge.tactics import (
    braces,
    contact,
    heat_answer,
    hurt_opponent,
    knocked,
    plays_on,
    undrunk,
    wind_answer,
)
from knowledge.tactics.beside_complaint import (
    NO_ALARM,
    asks_for_substitute,
    cannot_move,
    no_alarm,
    substitute,
    unmoving,
    with_what_is_asked,
)
from knowledge.tactics.first_aid import FIRST_AID, stop
from knowledge.tactics.goes_on import asks_to_play_on, goes_on_anyway, told_before_what_now
from knowledge.tactics.weather_entries import (
    BODY,
    SKY,
    Entry,
    entry_by_words,
    entry_named,
    mended,
    picks,
    tells_of_a_body,
)
from knowledge.tactics.weather_finding import LIGHTNING, FoundEntry, entries_of, find_entry
from knowledge.tactics.weather_length import to_one_screen
from knowledge.tactics.weather_said import HeatSaid, folded, heat_said, minutes_said, wind_said
from knowledge.vocabulary import Topic

OTHERS_SHOWN = 2
MOST_CHOICES = 3
"""Buttons of what else may be meant, and of all."""

ANYTHING, HEAT, COLD, WIND, DRINK = "anything", "heat", "cold", "wind", "drink_eat"

LONG_GAP_MIN = 90
SHORT_GAP_MIN = 45
"""Until the next match: time for a small meal, a snack, or sips only; common practice."""


def advise(situation: Situation) -> Advice:
    """The emergency, else the complaint, else what the weather that is said changes."""
    return to_one_screen(_advice(situation))


def _advice(situation: Situation) -> Advice:
    words = situation.asked.words
    emergency = emergency_of(words) or emergency_of(mended(folded(words)))
    if emergency is not None:
        return stop(emergency)
    told = told_before_what_now(situation)
    if told is not None:
        return _advice(_asking(told, situation))
    undenied = without_denied(words)
    if undenied is not None:
        return _of_denied(undenied, situation)
    ours = [one.name for one in situation.ours]
    if contact.tells_of_contact(words, ours=ours):
        return contact.advise()
    if hurt_opponent.goes_at_injury(words, ours=ours):
        return hurt_opponent.advise()
    if braces.asks_for_brace(words):
        return braces.advise()
    if knocked.hurts_from_a_knock(words):
        return knocked.advise()
    leaves = plays_on.asks_of_leaving(words)
    if leaves or asks_to_play_on(situation) or goes_on_anyway(situation):
        return plays_on.advise(words, situation.asked.before)
    heat = heat_said(words)
    if (drink := undrunk.thirsty(words, situation.asked.before, heat)) is not None:
        return drink
    index = heat_answer.felt(heat) if heat_answer.asks_if_another(words) else None
    if index is not None and not complains(words):
        return heat_answer.another(heat, index)
    found = _heat_first(entries_of(words), words, heat)
    entry = _meant(found, situation, heat)
    if cannot_move(words) and not complains(words):
        return unmoving()
    all_told = f"{words}\n{situation.asked.before}"
    if asks_for_substitute(words) and not picks(entry, all_told):
        return substitute()
    if entry.kind != BODY and undrunk.tells_undrunk(words):
        return undrunk.advise(heat)
    advice = _of_entry(entry, situation, heat)
    if entry.kind == BODY:
        advice = with_what_is_asked(advice, words)
    return _with_others(advice, found)


def _of_denied(rest: str, situation: Situation) -> Advice:
    """What else is told beside a denied alarm, now or before, and the way to help kept open."""
    asked = situation.asked
    before = asked.before.splitlines()[::-1]
    if any(emergency_of(line) for line in before):
        return plays_on.advise(rest, asked.before)
    told = next((line for line in (rest, *before) if complains(line)), None)
    if told is None and plays_on.goes_on(rest):
        return plays_on.advise(rest, asked.before)
    if told is None and entry_by_words(rest) is None:
        return no_alarm()
    return replace(_advice(_asking(told or rest, situation)), unless=NO_ALARM)


def _asking(words: str, situation: Situation) -> Situation:
    return replace(situation, asked=replace(situation.asked, words=words, before=""))


def _heat_first(found: FoundEntry, words: str, heat: HeatSaid) -> FoundEntry:
    """Heat that can kill goes before a harmless line that only the model read in its words."""
    index, entry, picked = heat_answer.felt(heat), found.entry, entry_by_words(words)
    is_harmless = entry is not None and entry.kind == SKY and entry.id not in (HEAT, LIGHTNING)
    if index is None or not is_harmless or picked is None or picked.id != HEAT:
        return found
    if heat_level(index.index_f) not in (HeatLevel.DANGER, HeatLevel.EXTREME_DANGER):
        return found
    return FoundEntry(entry=picked, others=(entry, *found.others) if entry else found.others)


def _meant(found: FoundEntry, situation: Situation, heat: HeatSaid) -> Entry:
    """The entry found; what went before and what is known go before a guess about the weather, and
    a body told of before goes before one that no word here names."""
    entry = found.entry
    if _is_of_the_wind_told(situation):
        return entry_named(WIND)
    if entry is not None and entry.kind == BODY and not tells_of_a_body(situation.asked.words):
        told = _gone_on(situation)
        return entry if told is None or told.kind != BODY else told
    if entry is not None and not (found.is_guess and entry.kind == SKY):
        return entry
    otherwise = _gone_on(situation) or _otherwise(situation, heat)
    return otherwise if entry is None or otherwise.id != ANYTHING else entry


_ONLY_A_STROKE = regex(
    r"(?:(?:and|so|ok|but|then|what|how|about|for|on|with|in|if|do|should|can|i|we|it|the|my|our|a"
    r"|hit|play|then|now|still) )*(?:high |deep |third |soft )?(?:lobs?|lob|drops?|drives?|dinks?"
    r"|serves?|returns?|thirds?|overheads?|smashe?s?|shots?|balls?)"
    r"(?: (?:then|now|too|in it|or not))*"
)
"""`and for the lob?`: nothing but a stroke is named, and no fall in it."""


def _is_of_the_wind_told(situation: Situation) -> bool:
    """ "And for the lob?", after the wind: the stroke in that wind, whatever body a model hears."""
    words, before = folded(situation.asked.words), situation.asked.before.splitlines()
    if not before or _ONLY_A_STROKE.fullmatch(words.rstrip(" ?!.")) is None:
        return False
    if tells_of_a_body(before[-1]) or not wind_said(words).strokes:
        return False
    last = find_entry(before[-1])
    return last is not None and last.id == WIND


def _of_entry(entry: Entry, situation: Situation, heat: HeatSaid) -> Advice:
    index = heat_answer.felt(heat)
    if entry.id == WIND:
        return wind_answer.advise(situation)
    if entry.id == HEAT and index is not None:
        return heat_answer.advise(heat, index)
    return _from_entry(entry, situation, heat, index)


def _with_others(advice: Advice, found: FoundEntry) -> Advice:
    """The advice with what else may be meant on its buttons."""
    if not found.others:
        return advice
    others = tuple(
        Choice(
            label=entry.label,
            topic=Topic.WEATHER_OR_BODY,
            fact=MatchFact.WEATHER.value,
            value=entry.id,
        )
        for entry in found.others[:OTHERS_SHOWN]
    )
    return replace(advice, choices=(*others, *advice.choices)[:MOST_CHOICES])


def _gone_on(situation: Situation) -> Entry | None:
    """The wind, where words that name nothing follow a question about it: "and my lobs?"; or the
    complaint told before, whatever is asked with it."""
    lines = situation.asked.before.splitlines()
    told = [find_entry(line) for line in lines[::-1] if tells_of_a_body(line)]
    found = [*told, *(find_entry(line) for line in lines)]
    goes_on = (one for one in found if one is not None and (one.id == WIND or one.kind == BODY))
    return next(goes_on, None)


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
        reasons=heat_answer.in_units(found.reasons, celsius=heat.celsius),
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
        return FIRST_AID[emergency][0], DEFERS
    if knocked.hurts_from_a_knock(words):
        return knocked.advise().call, DEFERS
    entry = find_entry(words)
    rule = (entry if entry is not None and entry.kind == BODY else entry_named("pain")).rule
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
        return entry_named(HEAT)
    if degrees is not None and degrees < heat_answer.COLD_BELOW_F:
        return entry_named(COLD)
    if situation.wind not in (None, Wind.NONE):
        return entry_named(WIND)
    if situation.asked.sun:
        return entry_named("sun")
    if situation.asked.tired:
        return entry_named("tired")
    return entry_named(HEAT if situation.asked.hot else ANYTHING)
