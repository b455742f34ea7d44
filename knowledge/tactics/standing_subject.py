"""Of whom of our pair an answer about places speaks: who asks, or the one they ask about."""

from __future__ import annotations

import re

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.tactics.standing_names import Names, starter_said
from knowledge.vocabulary import Side

_VERBS = r"(?:does|do|is|should|shall|must|can|will|would|has|where s|wheres|where)"
_STANDS = r"(?:stands?|goes|go|belongs?|has to)"
_FIRST = regex(rf"\b{_VERBS} i\b|\bam i\b|\bi (?:stand|go|serve|receive|return|belong)\b")
_PARTNER = regex(rf"\b{_VERBS} (?:my |our )?partner\b|\b(?:my|our) partner {_STANDS}\b")


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """Whether they started right, and how the call addresses them: ", Tom", "" for who asks."""

    is_starter: bool
    address: str = ""

    def court(self, starter_court: Side) -> Side:
        return starter_court if self.is_starter else starter_court.other


def subject_of(situation: Situation, names: Names) -> Subject | None:
    """Who asks, unless a partner is asked about by name; None where it is not known who that is."""
    spoken = " ".join(re.findall(r"[\w]+", situation.asked.words.casefold()))
    asker = names.ours.asker_is_starter
    other = _named(situation, spoken)
    if other is not None:
        if other.player not in (names.ours.starter_id, names.ours.partner_id):
            return None
        is_starter = other.player == names.ours.starter_id
        return Subject(is_starter=is_starter, address=f", {other.name}")
    if asker is None:
        return None
    if _PARTNER.search(spoken) and not _FIRST.search(spoken):
        name = names.ours.who(is_starter=not asker).removeprefix("your ")
        return Subject(is_starter=not asker, address=f", {name}")
    return Subject(is_starter=asker)


def _named(situation: Situation, spoken: str) -> OnCourt | None:
    """The one of ours who is asked about in the third person."""
    about = [
        one
        for one in situation.ours
        if one.player in situation.asked.about and one.player != situation.asker
    ]
    if len(about) != 1 or _FIRST.search(spoken):
        return None
    name = re.escape(about[0].name.casefold())
    is_asked = re.search(rf"\b{_VERBS} {name}\b|\b{name} {_STANDS}\b", spoken) is not None
    return about[0] if is_asked or starter_said(situation) is None else None
