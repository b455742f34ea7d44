"""Why a line of a plan works against anybody: what a student may read in place of our notes."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.planning.line import Phase

WHY_IN_GENERAL: Mapping[str, str] = MappingProxyType(
    {
        Phase.SERVE.value: "deep serves make short returns",
        Phase.RETURN.value: "deep keeps them back while you run in",
        Phase.THIRD.value: "a low third lets you both come in",
        Phase.DINK.value: "low and patient until one floats",
        Phase.HANDS.value: "body balls are the hardest to hit",
        Phase.LOB.value: "it moves who stands too close",
        Phase.OURS.value: "work round it, train it later",
        Phase.RESPECT.value: "be ready before they hit",
    }
)
"""Common practice, no source."""
