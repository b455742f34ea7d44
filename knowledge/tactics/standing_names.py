"""How an answer about places names the four: by name where known, else by who started."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from knowledge.dataclass import dataclass
from knowledge.game import GameState, Lineup
from knowledge.situation import Situation
from knowledge.vocabulary import AgreementKey, PlayerId


@dataclass(frozen=True, slots=True, kw_only=True)
class PairNames:
    """A pair's starter (right at 0) and partner; ids are None where nobody said who started.

    `asker_is_starter`: whether whoever asks started right; None for the other pair too.
    """

    starter: str
    partner: str
    starter_id: PlayerId | None = None
    partner_id: PlayerId | None = None
    asker_is_starter: bool | None = None

    def who(self, *, is_starter: bool) -> str:
        return self.starter if is_starter else self.partner


@dataclass(frozen=True, slots=True, kw_only=True)
class Names:
    ours: PairNames
    theirs: PairNames


def names_of(situation: Situation, game: GameState) -> Names:
    """Names from the lineup; for us also from the agreement who serves first."""
    lineup = game.lineup or Lineup()
    starter, partner = lineup.pair(ours=True)
    said = starter_said(situation)
    if said is not None and said == partner:
        starter, partner = partner, starter
    if starter is None:
        starter, partner = said or player_who_starts(situation), None
    if starter is not None and partner is None:
        partner = next((one.player for one in situation.ours if one.player != starter), None)
    ours = _named(situation, starter, partner, _OURS)
    return Names(
        ours=_with_asker(situation, ours),
        theirs=_named(situation, *lineup.pair(ours=False), _THEIRS),
    )


def _with_asker(situation: Situation, ours: PairNames) -> PairNames:
    """Our pair with who of it asks: by id, else as "you" by what they say of who started."""
    asker = situation.asker
    if asker is not None and asker in (ours.starter_id, ours.partner_id):
        return replace(ours, asker_is_starter=asker == ours.starter_id)
    said = asker_started_right(situation.asked.words)
    if asker is not None or said is None:
        return ours
    you, partner = "you", "your partner"
    if said:
        return PairNames(starter=you, partner=partner, asker_is_starter=True)
    return PairNames(starter=partner, partner=you, asker_is_starter=False)


_OURS = PairNames(starter="our starter", partner="partner")
_THEIRS = PairNames(starter="their starter", partner="their second")


_STARTED = (
    r"(?: player)? (?:(?:has |have )?(?:started|starts|start|began|was|were)(?: out)?(?: on| at)?"
    r"(?: the| our)? (?:right|even)|(?:has |have )?served first|serves? first|started serving|"
    r"(?:has )?started\b(?! (?:on|at|out|left|odd)))"
)
_STARTED_LEFT = (
    r"(?: player)? (?:has |have |was |were )*(?:started|starts|start|began|on|at)?(?: out)?"
    r"(?: on| at)?(?: the| our)? (?:left|odd)"
)
_I = r"(?:i|me)"
_PARTNER = r"(?<!his )(?<!her )(?<!their )(?<!s )(?:my |our )?partner"


def asker_started_right(words: str) -> bool | None:
    """Whether who asks says to have started right, or the partner left; None if neither."""
    spoken = _spoken(words)
    for who, is_asker in ((_I, True), (_PARTNER, False)):
        if re.search(rf"\b{who}{_STARTED}", spoken):
            return is_asker
        if re.search(rf"\b{who}{_STARTED_LEFT}", spoken):
            return not is_asker
    return None


def _spoken(words: str) -> str:
    return " ".join(re.findall(r"[\w]+", words.casefold()))


def starter_said(situation: Situation) -> PlayerId | None:
    """Ours who started right by the question's own words: "Tom started on the right"."""
    if len(situation.ours) != 2:
        return None
    words = _spoken(situation.asked.words)
    for one, other in (situation.ours, situation.ours[::-1]):
        who = re.escape(one.name.casefold())
        if situation.asker is not None:
            who += f"|{_I}" if one.player == situation.asker else f"|{_PARTNER}"
        if re.search(rf"\b(?:{who}){_STARTED}", words):
            return one.player
        if re.search(rf"\b(?:{who}){_STARTED_LEFT}", words):
            return other.player
    return None


def player_who_starts(situation: Situation) -> PlayerId | None:
    """Ours who serves first by our agreement, found by name in its words; None if not clear."""
    agreement = situation.agreements.get(AgreementKey.FIRST_SERVER)
    if agreement is None:
        return None
    ours = [(one.player, one.name) for one in situation.ours]
    return starter_agreed(f"{agreement.value} {agreement.words}", ours)


def starter_agreed(words: str, ours: Sequence[tuple[PlayerId, str]]) -> PlayerId | None:
    """The one of our two whom the words of an agreement name; None if not clear."""
    said = set(re.findall(r"\w+", words.casefold()))
    named = [player for player, name in ours if name.casefold() in said]
    return named[0] if len(ours) == 2 and len(named) == 1 else None


def _named(
    situation: Situation, starter: PlayerId | None, partner: PlayerId | None, otherwise: PairNames
) -> PairNames:
    """The pair by name, and by what they do where a name is not known."""
    first, second = (
        None if player is None else situation.find(player) for player in (starter, partner)
    )
    return PairNames(
        starter=first.name if first else otherwise.starter,
        partner=second.name if second else otherwise.partner,
        starter_id=starter,
        partner_id=partner,
    )
