"""The decision behind the middle: an owner for each kind of ball, and what our pair agreed."""

from __future__ import annotations

import re
from enum import StrEnum

from knowledge.dataclass import dataclass
from knowledge.effects import OptionId
from knowledge.engine import Ranking, rank
from knowledge.evidence import Profile
from knowledge.regex import regex
from knowledge.situation import Agreement, OnCourt, Situation
from knowledge.tactics.middle_effects import MiddleBall, Seat, decisions
from knowledge.vocabulary import AgreementKey, BallKind, Hand, PlayerId, Side, Trait, Wing


class Owner(StrEnum):
    """Who takes a ball: one of our courts, or a rule that needs no name."""

    LEFT = "left"
    RIGHT = "right"
    CROSS = "cross"
    FRONT = "front"


SLOW = (BallKind.DINK, BallKind.FLOATING)
FAST = (BallKind.DRIVE, BallKind.SPEED_UP)

DISAGREES_FROM = 1.0
"""Points from which our estimate contradicts an agreement aloud."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """Who takes one kind of ball, by our estimate and by the pair's agreement if it says so.

    `rankings` holds one ranking per court the ball may come from.
    """

    kind: BallKind
    estimated: Owner
    agreed: Owner | None
    rankings: tuple[tuple[Side, Ranking], ...]

    @property
    def owner(self) -> Owner:
        """The agreement wins: deciding beforehand is worth more than who."""
        return self.agreed or self.estimated

    @property
    def ranking(self) -> Ranking:
        return self.rankings[0][1]

    def chance(self, owner: Owner) -> float:
        """Our chance if that owner takes it, over the courts the ball may come from."""
        chances = [
            ranking.of(OptionId(seat_of(owner, hitter))).chance for hitter, ranking in self.rankings
        ]
        return sum(chances) / len(chances)

    @property
    def gain(self) -> float:
        """Points that our estimate gains over the other owner."""
        return 100 * (self.chance(self.estimated) - self.chance(opposite(self.estimated)))

    @property
    def p_best(self) -> float:
        return min(ranking.best.p_best for _, ranking in self.rankings)

    @property
    def lost_by_agreement(self) -> float:
        return 100 * (self.chance(self.estimated) - self.chance(self.owner))


def seat_of(owner: Owner, hitter: Side) -> Side:
    """The court that takes the ball. Their left is diagonal from our left."""
    if owner is Owner.CROSS:
        return hitter
    return hitter.other if owner is Owner.FRONT else Side(owner.value)


def opposite(owner: Owner) -> Owner:
    return {
        Owner.LEFT: Owner.RIGHT,
        Owner.RIGHT: Owner.LEFT,
        Owner.CROSS: Owner.FRONT,
        Owner.FRONT: Owner.CROSS,
    }[owner]


@dataclass(frozen=True, slots=True, kw_only=True)
class MiddleAnswer:
    """Our two seats and an owner for every kind of ball."""

    seats: tuple[Seat, Seat]
    hitter_side: Side | None
    pulled_wide: Seat | None
    agreement: Agreement | None
    taken: tuple[Taken, ...]

    def of(self, kind: BallKind) -> Taken:
        return next(one for one in self.taken if one.kind is kind)

    def seat(self, side: Side) -> Seat:
        return next(seat for seat in self.seats if seat.side is side)

    def player(self, owner: Owner) -> Seat | None:
        """The seat that owns it; None for a rule while we don't know where the ball comes from."""
        if owner in (Owner.CROSS, Owner.FRONT) and self.hitter_side is None:
            return None
        return self.seat(seat_of(owner, self.hitter_side or Side.LEFT))

    @property
    def wings(self) -> tuple[Wing | None, Wing | None]:
        left, right = self.seats
        return left.wing, right.wing


def answer_middle(situation: Situation) -> MiddleAnswer:
    """Everyone's balls, ranked one kind at a time."""
    seats = _seats(situation.ours)
    wide = situation.asked.pulled_wide
    pulled = next((seat for seat in seats if seat.named and seat.who.player == wide), None)
    agreement = situation.agreements.get(AgreementKey.MIDDLE)
    binding = None if pulled is not None else agreement
    return MiddleAnswer(
        seats=seats,
        hitter_side=situation.asked.hitter_side,
        pulled_wide=pulled,
        agreement=agreement,
        taken=tuple(_take(kind, seats, pulled, binding, situation) for kind in BallKind),
    )


def _take(
    kind: BallKind,
    seats: tuple[Seat, Seat],
    pulled: Seat | None,
    agreement: Agreement | None,
    situation: Situation,
) -> Taken:
    wide = None if pulled is None else pulled.who.player
    hitter = situation.asked.hitter_side
    balls = [
        MiddleBall(kind=kind, hitter_side=side, pulled_wide=wide)
        for side in ((hitter,) if hitter else tuple(Side))
    ]
    rankings = tuple(
        (ball.hitter_side, rank(one, situation))
        for ball, one in zip(balls, decisions(seats, balls), strict=True)
    )
    return Taken(
        kind=kind,
        estimated=_owner([(side, Side(ranking.best.option.id)) for side, ranking in rankings]),
        agreed=None
        if agreement is None or kind is BallKind.LOB
        else agreed_owner(agreement, seats, kind),
        rankings=rankings,
    )


def _owner(winners: list[tuple[Side, Side]]) -> Owner:
    """One seat if it wins wherever the ball comes from, else the rule that describes it."""
    if len({seat for _, seat in winners}) == 1:
        return Owner(winners[0][1].value)
    return Owner.CROSS if all(hitter is seat for hitter, seat in winners) else Owner.FRONT


def _seats(ours: tuple[OnCourt, ...]) -> tuple[Seat, Seat]:
    """Left and right; without sides, nobody by name, with the hand that both share."""
    by_side = {one.side: one for one in ours if one.side is not None}
    shared = {one.hand for one in ours}
    hand = ours[0] if len(ours) == 2 and len(shared) == 1 and shared <= {*Hand} else None
    left, right = (
        Seat(side=side, who=by_side[side], named=True)
        if side in by_side
        else Seat(side=side, who=_someone(side, hand), named=False)
        for side in Side
    )
    return left, right


def _someone(side: Side, like: OnCourt | None) -> OnCourt:
    facts = {} if like is None else {Trait.HAND: like.profile.facts[Trait.HAND]}
    number = -1 if side is Side.LEFT else -2
    return OnCourt(
        profile=Profile(player=PlayerId(number), name=f"{side} player", facts=facts), side=side
    )


def agreed_owner(agreement: Agreement, seats: tuple[Seat, Seat], kind: BallKind) -> Owner | None:
    """Whom an agreement names for this kind of ball; None where its words don't tell.

    A part that speaks of slow or of fast balls holds for those alone, whatever a part without
    says of all: "slow cross, fast Mira", "Mira takes it unless its slow, then whoever is cross".
    """
    parts = [
        part
        for said in _PART.split(f"{agreement.value}. {agreement.words}".casefold())
        for part in _by_speed(re.findall(r"[\w'’]+", said), seats)
    ]
    told = [(part, owner) for part in parts if (owner := _named_owner(part, seats)) is not None]
    own = [owner for part, owner in told if _speed_of(part) and _speaks_of(part, kind)]
    of_all = [owner for part, owner in told if not _speed_of(part)]
    return next(iter((*own, *of_all)), None)


_PART = regex(
    r"[,.;]|\b(?:but|unless|except|otherwise|while|whereas)\b"
    # Of "fast and slow" either goes with the other.
    r"|\band\b(?! (?:slow|soft|fast|hard|drives?|dinks?)\b)"
)

_SPEEDS = (
    (frozenset({"slow", "soft", "dink", "dinks", "floating", "slower"}), SLOW),
    (frozenset({"fast", "hard", "drive", "drives", "speed", "faster"}), FAST),
)
_ANY_SPEED = _SPEEDS[0][0] | _SPEEDS[1][0]


def _by_speed(words: list[str], seats: tuple[Seat, Seat]) -> list[frozenset[str]]:
    """The words cut before a speed, where those before it told whose balls of another one are."""
    parts: list[list[str]] = [[]]
    for word in words:
        before = frozenset(parts[-1])
        if word in _ANY_SPEED and _speed_of(before) and _named_owner(before, seats) is not None:
            parts.append([])
        parts[-1].append(word)
    return [frozenset(part) for part in parts]


def _speed_of(words: frozenset[str]) -> list[tuple[BallKind, ...]]:
    return [kinds for speed, kinds in _SPEEDS if words & speed]


def _speaks_of(words: frozenset[str], kind: BallKind) -> bool:
    return any(kind in kinds for kinds in _speed_of(words))


_OF_A_WRITER = frozenset({"i", "me", "mine", "my"})


def _is_named(seat: Seat, words: frozenset[str]) -> bool:
    name = seat.who.name.casefold()
    return not words.isdisjoint({name, f"{name}'s", f"{name}’s", f"{name}s"})


def _named_owner(words: frozenset[str], seats: tuple[Seat, Seat]) -> Owner | None:
    named = [seat for seat in seats if seat.named and _is_named(seat, words)]
    if named:
        # Of two persons in one breath nobody knows whose the ball is; better none than the wrong.
        is_one = len(named) == 1 and not words & _OF_A_WRITER
        return Owner(named[0].side.value) if is_one else None
    if words & {"cross", "across", "diagonal", "crosscourt"}:
        return Owner.CROSS
    forehands = [seat for seat in seats if seat.wing is Wing.FOREHAND]
    if words & {"forehand", "forehands"}:
        return Owner(forehands[0].side.value) if len(forehands) == 1 else None
    said = [side for side in Side if side.value in words]
    return Owner(said[0].value) if len(said) == 1 else None
