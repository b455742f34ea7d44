"""A plan that holds against anybody: what a student may read in place of our notes.

Where a plan names whom to play, a student is told how to find out; that is the better lesson too.
"""

from __future__ import annotations

from typing import Final

FOR_A_STUDENT: Final[tuple[tuple[str, str], ...]] = (
    ("Return high and deep at the weaker third", "deep keeps them back while you run in"),
    ("Third at whoever comes in late", "a low third lets you both come in"),
    ("Dink middle first, then the wing that floats", "low and patient until one sits up"),
    ("Speed up at the hip that was late", "body balls are the hardest to hit"),
    ("Covered? Play the other one", "who covers leaves a gap"),
)
"""What to do in the order of a rally, and why. Common practice, no source."""

FIND_OUT: Final = "Warm-up: who is lefty, whose backhand floats, which hip is late?"
"""What the lines above hang on."""
