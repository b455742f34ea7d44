"""Claims of "her partner", "his husband": they are the other's, however near the first one stands.

The model of many notes has met few such and gives them to whoever was named.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from bot.chat.note_line import NoteLine
from bot.chat.pronouns import is_partner_word
from bot.chat.said import Claim
from knowledge.vocabulary import PlayerId


def given_to_partners(claims: Sequence[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims, each behind "her partner" being of that partner alone."""
    given = (_given(one, note) for one in claims)
    return tuple(dict.fromkeys(given))


def _given(claim: Claim, note: NoteLine) -> Claim:
    partner = _partner_before(claim, note)
    return claim if partner is None else replace(claim, player=partner)


def without_asides(claims: Iterable[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims without what the model gives to somebody named in passing, behind the comma that
    ends the aside: "Lindqvist stacks with Okafor, drops every third"."""
    return tuple(one for one in claims if not _is_of_an_aside(one, note))


def _is_of_an_aside(claim: Claim, note: NoteLine) -> bool:
    place = next(at for at, word in enumerate(note.said) if word.span[0] >= claim.span[0])
    named = [one for one in note.whose if claim.player in one.players and not one.pronoun]
    is_passed = bool(named) and note.subjects.is_passed(named[-1], place)
    return is_passed and claim.player not in note.subjects.at(place)


def _partner_before(claim: Claim, note: NoteLine) -> PlayerId | None:
    """Whom a "partner" means that is the subject of the claim's words."""
    last = [one for one in note.whose if one.span[0] <= claim.span[0]][-1:]
    if not last or not last[0].pronoun or not is_partner_word(last[0].typed):
        return None
    start = next(at for at, word in enumerate(note.said) if word.span[0] >= claim.span[0])
    return last[0].players[0] if note.subjects.at(start) == last[0].players else None
