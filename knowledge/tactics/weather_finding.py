"""Which entry on weather or bodies a message asks for: a model and the words that pick, together.

A body that is heard of by either is hardly ever answered with the weather, and a grave complaint
that words pick stands against a lesser one: a chest or a head sent to a harmless line is the worst
fault.
"""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.complaints import complains
from knowledge.reading.entry_model import Band, EntryModel, Kind, Likely, entry_model
from knowledge.tactics.weather_entries import BODY, Entry, entry_by_words, entry_named, entry_of

WORD_VOTE = 1.0
"""Nats that the words that pick an entry add to it (by writers left out, .5 to 1.5 alike)."""

A_BODY_FROM = 0.35
"""Chance of all complaints together from which one is answered, though weather is likelier."""

WEATHER_FROM = 0.97
"""Chance from which weather is answered though a word of a body stands there: "sun in my eyes"."""

GRAVE = frozenset({"heart", "heat_illness", "head", "eye", "breath"})
"""Complaints that are answered wherever they are likeliest."""

OVER_WORDS_FROM = 0.9
"""Chance from which another complaint is answered than the one whose words stand there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FoundEntry:
    """The entry meant, if any is, and others that may be; `others` are the likeliest first.

    `is_guess`: neither words that pick it nor the model make it sure.
    """

    entry: Entry | None
    others: tuple[Entry, ...] = ()
    is_guess: bool = False


def find_entry(words: str) -> Entry | None:
    """The entry meant, if any is."""
    return entries_of(words).entry


def entries_of(words: str, *, model: EntryModel | None = None) -> FoundEntry:
    """What words and the model find together; `model` is the shipped one unless one is given."""
    tapped = entry_of(words.strip().replace(" ", "_"))
    if tapped is not None:
        return FoundEntry(entry=tapped)
    picked = entry_by_words(words)
    votes = {} if picked is None else {picked.id: WORD_VOTE}
    likely = (model or entry_model(Kind.WEATHER)).likely(words, votes)
    if likely is None:
        return FoundEntry(entry=picked)
    entry = _settled(words, picked, likely)
    is_sure = likely.band is Band.SURE and entry is not None and entry.id == likely.ids[0]
    others = () if is_sure else [id for id in likely.ids if entry is None or id != entry.id]
    return FoundEntry(
        entry=entry,
        others=tuple(entry_named(id) for id in others),
        is_guess=not is_sure and picked is None,
    )


def _settled(words: str, picked: Entry | None, likely: Likely) -> Entry | None:
    first, chance = entry_named(likely.ranked[0][0]), likely.ranked[0][1]
    of_body = picked is not None and picked.kind == BODY
    hears_of_body = of_body or complains(words)
    if likely.is_none and not hears_of_body:
        return picked
    if first.kind != BODY and not _hides_a_body(likely, hears_of_body):
        return picked if likely.band is Band.UNSURE and picked is not None else first
    body = _likeliest_body(likely)
    if picked is None or picked.kind != BODY:
        return body
    return body if first is body and (body.id in GRAVE or chance >= OVER_WORDS_FROM) else picked


def _hides_a_body(likely: Likely, hears_of_body: bool) -> bool:
    """Whether weather comes first though it may well be a body that is meant."""
    share = sum(chance for id, chance in likely.ranked if entry_named(id).kind == BODY)
    return share >= A_BODY_FROM or (hears_of_body and likely.ranked[0][1] < WEATHER_FROM)


def _likeliest_body(likely: Likely) -> Entry:
    return next(entry for id, _ in likely.ranked if (entry := entry_named(id)).kind == BODY)
