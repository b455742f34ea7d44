"""A plan that holds against anybody: what a student may read in place of our notes.

Where a plan names whom to play, a student is told how to find out; that is the better lesson too.
"""

from __future__ import annotations

from typing import Final

FOR_A_STUDENT: Final = (
    "Return high and deep at the weaker third: it keeps them back",
    "Third low, at whoever comes in late: then you can both come in",
    "Dink middle, then the wing that floats: patient until one sits up",
    "Speed up at the hip that was late: body balls are hardest to hit",
    "Covered? Play the other one.",
)
"""What to do in the order of a rally, and why. Common practice, no source."""

FIND_OUT: Final = "Warm-up: who is lefty, who is late?"
"""What the lines above hang on."""
