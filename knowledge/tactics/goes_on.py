"""Whether a message after a complaint is about going on: then the complaint answers it."""

from __future__ import annotations

from knowledge.complaints import complains
from knowledge.emergencies import emergency_of
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics import plays_on
from knowledge.tactics.explained_away import explains_away
from knowledge.tactics.weather_entries import BODY, entry_by_words
from knowledge.tactics.weather_said import folded

_WHAT_NOW = regex(
    r"(?:(?:ok|okay|so|and|but|pls|please|help|then|now) )*"
    r"(?:what (?:must|should|shall|do|can|could) (?:i|we) do|what (?:to do|now|next))"
    r"(?: (?:now|first|then|next|about (?:it|this|that)))*"
)


def told_before_what_now(situation: Situation) -> str | None:
    """The complaint told last, where "what must i do" is all that is asked of it."""
    if _WHAT_NOW.fullmatch(folded(situation.asked.words).rstrip(" ?!.")) is None:
        return None
    lines = situation.asked.before.splitlines()[::-1]
    return next((one for one in lines if emergency_of(one) or complains(one)), None)


def asks_to_play_on(situation: Situation) -> bool:
    """Whether nothing but that is asked, of a complaint told before or of none."""
    asked = situation.asked
    is_hurt = any(complains(line) or emergency_of(line) for line in asked.before.splitlines())
    if asked.before and not is_hurt:
        return False  # it goes on from a question about the weather
    return plays_on.asks_to_play_on(asked.words, names=_names(situation), is_hurt=is_hurt)


def _names(situation: Situation) -> frozenset[str]:
    everybody = (*situation.ours, *situation.theirs)
    return frozenset(part for one in everybody for part in folded(one.name).split())


def goes_on_anyway(situation: Situation) -> bool:
    """Whether, after a complaint, somebody is said to be fine among other things, or pills are to
    let them go on; another complaint told with it has its own answer."""
    asked = situation.asked
    if not any(complains(line) or emergency_of(line) for line in asked.before.splitlines()):
        return False
    if explains_away(asked.words):
        return True
    if plays_on.goes_on_hurt(asked.words):
        return not complains(asked.words)
    picked = entry_by_words(asked.words)
    is_new = picked is not None and picked.kind == BODY
    return not is_new and plays_on.says_fine(asked.words, names=_names(situation))
