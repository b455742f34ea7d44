"""The body and its reach: joints and arm as fractions of stature, and the paddle in hand."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from knowledge.dataclass import dataclass

Floats = NDArray[np.float64]

SHOULDER: Final = 0.818
HIP: Final = 0.530
KNEE: Final = 0.285
SHOULDER_HALF_WIDTH: Final = 0.129
ARM_TO_FINGERTIP: Final = 0.440
HAND: Final = 0.108
"""Fractions of stature: Drillis and Contini 1966, as given in Winter, Biomechanics and Motor
Control of Human Movement."""

LOW_SHOULDER: Final = 0.45
"""How far the shoulder comes down in a lunge, trunk bent: between hip and knee. Our guess."""

GRIP_TO_FACE_M: Final = 0.24
"""From the middle of the hand to the middle of the face; a paddle is at most 17 in (0.43 m) long
(2025 edition, 2.E). Measured by nobody; common practice."""

DEFAULT_STATURE_M: Final = 1.75
"""Taken where nobody noted a height: for whoever meets a ball, in words and in pictures. An adult
man's average (1.75 m, a woman's 1.61 m: national health survey 2015 to 2018; from memory)."""

TALL_M: Final = 0.10
"""How much a tall player has over that, and a short one lacks. Our guess."""

BACKHAND_SHORTER_M: Final = 0.10
"""A one-handed backhand comes across the body. Common practice, no source."""

TWO_HANDED_SHORTER_M: Final = 0.30
"""The second hand must reach the grip too. Common practice, no source."""

BEHIND_M: Final = 0.30
"""How far behind the body a ball can be met without turning. Our guess."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """A player's size: stature, and what the arm has beyond its usual fraction of it."""

    stature_m: float = DEFAULT_STATURE_M
    longer_m: float = 0.0

    @property
    def shoulder_m(self) -> float:
        return SHOULDER * self.stature_m

    @property
    def low_shoulder_m(self) -> float:
        return LOW_SHOULDER * self.stature_m

    @property
    def arm_m(self) -> float:
        """From the shoulder to the middle of the paddle's face, the hand closed on the grip."""
        return (ARM_TO_FINGERTIP - HAND / 2) * self.stature_m + GRIP_TO_FACE_M + self.longer_m

    @property
    def overhead_m(self) -> float:
        """Highest ball met with both feet on the ground."""
        return self.shoulder_m + self.arm_m

    @property
    def forehand_m(self) -> float:
        """Sideways reach from the middle of the body, feet still, at the best height for it."""
        return SHOULDER_HALF_WIDTH * self.stature_m + self.arm_m

    def backhand_m(self, *, two_handed: bool = False) -> float:
        """Reach to the backhand side."""
        return self.forehand_m - (TWO_HANDED_SHORTER_M if two_handed else BACKHAND_SHORTER_M)

    def share_at(self, height_m: Floats) -> Floats:
        """What is left of the reach for a ball this high: the arm turns about the shoulder.

        The shoulder follows a low ball down as far as `low_shoulder_m`. 0 above `overhead_m`.
        """
        above = np.maximum(height_m - self.shoulder_m, self.low_shoulder_m - height_m)
        off = np.clip(above, 0.0, None) / self.arm_m
        return np.sqrt(np.clip(1.0 - off**2, 0.0, None))
