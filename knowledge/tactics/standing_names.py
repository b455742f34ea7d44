"""How an answer about places names the four: by name where known, else by who started."""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.game import GameState
from knowledge.situation import Situation
from knowledge.vocabulary import AgreementKey, PlayerId


@dataclass(frozen=True, slots=True, kw_only=True)
class PairNames:
    """A pair's starter (right at 0) and partner; ids are None where nobody said who started."""

    starter: str
    partner: str
    starter_id: PlayerId | None = None
    partner_id: PlayerId | None = None

    def who(self, *, is_starter: bool) -> str:
        return self.starter if is_starter else self.partner


@dataclass(frozen=True, slots=True, kw_only=True)
class Names:
    ours: PairNames
    theirs: PairNames


def names_of(situation: Situation, game: GameState) -> Names:
    """Names from the lineup; for us also from the agreement who serves first."""
    theirs = PairNames(starter="their starter", partner="their second")
    lineup = game.lineup
    if lineup is not None:
        return Names(
            ours=_named(situation, lineup.our_starter, lineup.our_partner, _OURS),
            theirs=_named(situation, lineup.their_starter, lineup.their_partner, theirs),
        )
    starter = player_who_starts(situation)
    partner = next((one.player for one in situation.ours if one.player != starter), None)
    if starter is None or partner is None:
        return Names(ours=_OURS, theirs=theirs)
    return Names(ours=_named(situation, starter, partner, _OURS), theirs=theirs)


_OURS = PairNames(starter="our starter", partner="partner")


def player_who_starts(situation: Situation) -> PlayerId | None:
    """Ours who serves first by our agreement, found by name in its words; None if not clear."""
    agreement = situation.agreements.get(AgreementKey.FIRST_SERVER)
    if agreement is None or len(situation.ours) != 2:
        return None
    said = f"{agreement.value} {agreement.words}".casefold().split()
    named = [one.player for one in situation.ours if one.name.casefold() in said]
    return named[0] if len(named) == 1 else None


def _named(
    situation: Situation, starter: PlayerId, partner: PlayerId, otherwise: PairNames
) -> PairNames:
    first, second = situation.find(starter), situation.find(partner)
    return PairNames(
        starter=first.name if first else otherwise.starter,
        partner=second.name if second else otherwise.partner,
        starter_id=starter,
        partner_id=partner,
    )
