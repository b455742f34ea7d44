"""The chance that aim mixes are drawn by; tests put their own in its place."""

from __future__ import annotations

from collections.abc import Callable
from secrets import SystemRandom

Uniform = Callable[[], float]
"""Gives a number in [0, 1), evenly spread."""

unforeseeable: Uniform = SystemRandom().random
"""The operating system's own: nobody learns the next draw from the ones before."""
