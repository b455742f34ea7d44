"""Which entry on weather or bodies a message asks for: a model and the words that pick, together.

A body that is heard of by either is never answered with the weather: a chest or a head sent to a
harmless line is the worst fault. What the model takes for weather is then offered beside it.
"""

from __future__ import annotations

from knowledge.complaints import complains, names_a_part
from knowledge.dataclass import dataclass
from knowledge.reading.entry_model import Band, EntryModel, Kind, Likely, entry_model
from knowledge.regex import regex
from knowledge.struck import is_struck_badly
from knowledge.tactics.weather_entries import (
    BODY,
    SAYINGS,
    Entry,
    entry_by_words,
    entry_named,
    entry_of,
    picks,
)
from knowledge.tactics.weather_said import folded

WORD_VOTE = 1.0
"""Nats that the words that pick an entry add to it (by writers left out, .5 to 1.5 alike)."""

A_BODY_FROM = 0.35
"""Chance of all complaints together from which one is answered, though weather is likelier."""

GRAVE = frozenset({"heart", "heat_illness", "head", "eye", "breath"})
OVER_GRAVE_FROM = 0.9
OVER_WORDS_FROM = 0.87
"""Chances from which another complaint is answered than the one whose words stand there, where
that is a grave one and where not."""

CRAMP, STRAINS = "cramp", frozenset({"pain", "ankle_knee"})
"""A cramp is stretched, a pulled calf must not be (first aid as it is taught, from memory): no
cramp is guessed where the words tell of pain and none of a cramp."""

LIGHTNING = "lightning"
"""The one weather that kills: no complaint is guessed where its words stand."""


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


_AFTER_A_BLOW = "heart"
"""What a blow to chest, throat or belly is answered by: staff look before anybody plays on."""


def entries_of(words: str, *, model: EntryModel | None = None) -> FoundEntry:
    """What words and the model find together; `model` is the shipped one unless one is given."""
    tapped = entry_of(words.strip().replace(" ", "_"))
    if tapped is not None:
        return FoundEntry(entry=tapped)
    if is_struck_badly(words):
        return FoundEntry(entry=entry_named(_AFTER_A_BLOW))  # whatever part the model knows
    picked = entry_by_words(words)
    votes = {} if picked is None else {picked.id: WORD_VOTE}
    said = SAYINGS.sub(" ", folded(words))
    likely = (model or entry_model(Kind.WEATHER)).likely(said, votes)
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
    if picked is not None and picked.kind == BODY:
        if first.id == CRAMP and picked.id in STRAINS and not picks(first, words):
            return picked
        enough = OVER_GRAVE_FROM if picked.id in GRAVE else OVER_WORDS_FROM
        is_grave = first.id in GRAVE and not _is_of_another_part(first, words)
        is_other = first.kind == BODY and (is_grave or chance >= enough)
        return first if is_other else picked
    if complains(words):
        return _likeliest_body(likely)
    if picked is not None and likely.band is not Band.SURE and _asks_only_of_them(words):
        return picked
    if likely.is_none or (picked is not None and picked.id == LIGHTNING):
        return picked
    if likely.band is not Band.SURE and SAYINGS.search(folded(words)):
        return picked  # "knee high": what is left of it tells of no body
    if first.kind == BODY or _share_of_bodies(likely) >= A_BODY_FROM:
        return _likeliest_body(likely)
    if picked is None:
        return first
    # A half-sure guess whose words don't stand there is no match for weather whose words do.
    is_weak = likely.band is Band.UNSURE or (
        likely.band is Band.HALF_SURE and not picks(first, words)
    )
    return picked if is_weak else first


_OF_THEM = regex(
    r"(?:(?:so|ok|and|but|hey|then) )*(?:what|wat|how|where|when|why|who)\b.* (?:they|them|theyre|"
    r"these two|opponents?)\b.*"
)
_OF_US = regex(
    r"\b(?:i|im|ive|ill|id|me|my|mine|myself|we|were|weve|us|our|ours|partners?|mate|he|she|hes|shes"
    r"|him|his|her|hers|guy|girl|lady|man|woman|player|someone|somebody|anyone|one|feel\w*|felt|sick"
    r"|ill|pain\w*|hurt\w*|sore|tired|help|doctor|medic\w*|ambulance)\b"
)


def _asks_only_of_them(words: str) -> bool:
    """Whether it is asked what they do, and nobody else, no part of a body and no ailment stands
    there: with weather told in words, a body that only the model hears is nobody's."""
    said = folded(words)
    is_of_them = _OF_THEM.fullmatch(said) is not None and _OF_US.search(said) is None
    return is_of_them and not names_a_part(words)


_OWN_PARTS = {
    "head": regex(r"\b(?:head|skull|face|forehead|temple|nose|jaw|chin|teeth|brow|ear|neck)\b"),
    "eye": regex(r"\b(?:eye|eyes|face|sight|vision|see|socket|glasses|goggles|brow)\b"),
}


def _is_of_another_part(entry: Entry, words: str) -> bool:
    """Whether it is of a part that the words don't name, while they name one that hurts: who ran
    into the fence with a wrist has not hit the head."""
    own = _OWN_PARTS.get(entry.id)
    return own is not None and complains(words) and own.search(folded(words)) is None


def _share_of_bodies(likely: Likely) -> float:
    return sum(chance for id, chance in likely.ranked if entry_named(id).kind == BODY)


def _likeliest_body(likely: Likely) -> Entry:
    return next(entry for id, _ in likely.ranked if (entry := entry_named(id)).kind == BODY)
