"""Colours that colour-blind players can tell apart, and the contrast that sunlight needs.

Hues: Okabe and Ito, Color Universal Design (2008), the eight-colour set, plus white. Contrast:
W3C, Web Content Accessibility Guidelines 2.1, "contrast ratio" and "relative luminance".
"""

from __future__ import annotations

from typing import NewType

Colour = NewType("Colour", str)
"""`#RRGGBB`."""

BLACK = Colour("#000000")
WHITE = Colour("#FFFFFF")
ORANGE = Colour("#E69F00")
SKY_BLUE = Colour("#56B4E9")
GREEN = Colour("#009E73")
YELLOW = Colour("#F0E442")
BLUE = Colour("#0072B2")
VERMILLION = Colour("#D55E00")
PURPLE = Colour("#CC79A7")

PALETTE = (BLACK, ORANGE, SKY_BLUE, GREEN, YELLOW, BLUE, VERMILLION, PURPLE, WHITE)

INK = BLACK
PAPER = WHITE
OURS = BLUE
THEIRS = VERMILLION
ZONES = (SKY_BLUE, YELLOW, GREEN, PURPLE)
"""Zones of ours take these in turn, one per owner."""

TEXT_CONTRAST = 4.5
"""WCAG 2.1, 1.4.3: text against its ground."""

SHAPE_CONTRAST = 3.0
"""WCAG 2.1, 1.4.11: shapes that carry meaning against their ground."""


def mixed(colour: Colour, share: float, ground: Colour = PAPER) -> Colour:
    """The colour laid over a ground at `share` of full strength."""
    pairs = zip(_channels(colour), _channels(ground), strict=True)
    return Colour("#" + "".join(f"{round(share * a + (1 - share) * b):02X}" for a, b in pairs))


def contrast(first: Colour, second: Colour) -> float:
    """WCAG contrast ratio, from 1 (alike) to 21 (black on white)."""
    light, dark = sorted((_luminance(first), _luminance(second)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: Colour) -> float:
    """WCAG relative luminance of an sRGB colour."""
    red, green, blue = (_linear(channel / 255) for channel in _channels(colour))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def _channels(colour: Colour) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


SIDE_SHARE = 0.14
"""How strongly the two sides of a picture are tinted where nothing lies on them."""

OUR_SIDE = mixed(OURS, SIDE_SHARE)
THEIR_SIDE = mixed(THEIRS, SIDE_SHARE)
