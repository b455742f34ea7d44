"""Sizes of the rules of thumb about whom to play at, and how far one player may be fed.

All common practice, no source; "row" is the row of the trade's table of sizes. What each shot
gains at a player is taken from that shot's own page.
"""

from __future__ import annotations

from typing import Final

from knowledge.engine import Points

FREEZE: Final = Points(mean=1, sd=1.5)
"""A strong player who gets few balls is cold when one comes, and reaches for others' balls."""

COVERED_KEEPS: Final = 0.5
"""Row 25: a weak player whose partner squeezes or poaches well is worth half."""

MIXED_SHADES: Final = 0.6
"""How often the partner already shades over in mixed, where nobody noted it: they expect it."""

TIGHT: Final = Points(mean=2, sd=2)
"""Runner-up of the table: nerves at 9 or later."""

TIRES: Final = Points(mean=1, sd=1)
LOSES_PATIENCE: Final = Points(mean=2, sd=1.5)
"""Row 13's size: one who cannot wait gives the point away."""

LATE_SHARE: Final = 15.0
"""Rallies of 100 in which the player matters more than the shot: long, late or close ones."""

ADJUSTED_LOSES: Final = 0.5
"""Fed all balls, they adjust in 8 to 10 rallies, and half the edge is gone."""

FED_LOSES: Final = 0.5
"""The other half goes as the one who is fed warms up: they find it, as with dinks to one spot."""

COVER_LOSES: Final = 0.5
"""A partner who is on the move already needs no time to adjust."""

FRESH_SHARE: Final = 0.7
"""The share that row 25 was stated for: before anybody adjusts."""

EVEN_SHARE: Final = 0.5
