"""The court picture of an answer, for tests that look at it."""

from __future__ import annotations

from knowledge.advice import Advice
from knowledge.court_picture import CourtPicture


def court_of(advice: Advice) -> CourtPicture:
    """The answer's picture, which must be there and of a court."""
    assert isinstance(advice.picture, CourtPicture)
    return advice.picture
