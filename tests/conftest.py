"""No test is judged by the clock: other work on the machine must not fail it."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("no clock", deadline=None)
settings.load_profile("no clock")
