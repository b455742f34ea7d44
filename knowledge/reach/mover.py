"""One player as reach sees them: body, feet, hand and reaction, from notes where there are any."""

from __future__ import annotations

from typing import Final

import numpy as np

from knowledge.dataclass import dataclass
from knowledge.evidence import Profile
from knowledge.reach.body import DEFAULT_STATURE_M, TALL_M, Body, Floats
from knowledge.reach.moving import FORWARD_MPS, SHUFFLE_MPS, Feet
from knowledge.reach.reacting import reaction_s
from knowledge.vocabulary import Hand, Trait, Value, Wing

FASTER: Final = 0.25
"""How much of the speed a clearly quick player has more, and a slow one lacks. Our guess."""

CLUB_REACTION_S: Final = reaction_s()
"""Of a player who has split and reads the swing a little."""

LONGER_M: Final = 0.10
"""How much further a player noted for their reach gets than their height says. Our guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Mover:
    """A player who goes for a ball. A hand not known reaches as far as both wings do on average."""

    body: Body
    feet: Feet
    hand: Hand | None = None
    two_handed: bool = False
    reaction_s: float = CLUB_REACTION_S

    def wing_to(self, to_right_m: float) -> Wing | None:
        """The wing on which a ball so far to the right is met; None if the hand is not known."""
        if self.hand is None:
            return None
        if self.hand is Hand.AMBIDEXTROUS:
            return Wing.FOREHAND
        is_forehand = (to_right_m >= 0) is (self.hand is Hand.RIGHT)
        return Wing.FOREHAND if is_forehand else Wing.BACKHAND

    def side_reach_m(self, to_right_m: Floats) -> Floats:
        """Reach towards a ball so far to the right, feet still, at its best height."""
        forehand = self.body.forehand_m
        backhand = self.body.backhand_m(two_handed=self.two_handed)
        if self.hand is Hand.AMBIDEXTROUS:
            return np.full_like(to_right_m, forehand)
        if self.hand is None:
            return np.full_like(to_right_m, (forehand + backhand) / 2)
        right, left = (forehand, backhand) if self.hand is Hand.RIGHT else (backhand, forehand)
        return np.where(to_right_m >= 0, right, left)


def mover(
    *,
    foot_speed: float = 0.0,
    forward_speed: float = 0.0,
    reach: float = 0.0,
    height: Value | None = None,
    hand: Hand | None = None,
    two_handed: bool = False,
    reaction: float = CLUB_REACTION_S,
) -> Mover:
    """A player from trait levels, -1 to 1; quick feet are half a quick run forward."""
    forward = max(-1.0, min(1.0, forward_speed + foot_speed / 2))
    taller = {Value.TALL: TALL_M, Value.SHORT: -TALL_M}.get(height, 0.0) if height else 0.0
    return Mover(
        body=Body(stature_m=DEFAULT_STATURE_M + taller, longer_m=LONGER_M * reach),
        feet=Feet(
            forward_mps=FORWARD_MPS * (1 + FASTER * forward),
            run_mps=FORWARD_MPS * (1 + FASTER * foot_speed),
            shuffle_mps=SHUFFLE_MPS * (1 + FASTER * foot_speed),
        ),
        hand=hand,
        two_handed=two_handed,
        reaction_s=reaction,
    )


def mover_of(profile: Profile, *, reaction: float = CLUB_REACTION_S) -> Mover:
    """The player that the notes describe; what is not noted is as usual."""
    hand = profile.fact(Trait.HAND)
    return mover(
        foot_speed=profile.skill(Trait.FOOT_SPEED).level,
        forward_speed=profile.skill(Trait.FORWARD_SPEED).level,
        reach=profile.skill(Trait.REACH).level,
        height=profile.fact(Trait.HEIGHT),
        hand=None if hand is None else Hand(hand.value),
        two_handed=profile.fact(Trait.TWO_HANDED_BACKHAND) is Value.YES,
        reaction=reaction,
    )
