"""The serve on a court: server, receiver, the lane and its change-up."""

from __future__ import annotations

from knowledge.court import at_baseline
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.tactics.serve_answer import ServeAnswer
from knowledge.tactics.serve_lanes import Lane, landing
from knowledge.tactics.serve_words import place

DEFAULT_SHARE = 0.7
"""Widths of the arrows where no mix says better. Common practice."""


def picture(answer: ServeAnswer, change: Lane | None) -> CourtPicture:
    """The lanes from our court to the receiver's."""
    question = answer.question
    arrows = [_arrow(answer, answer.lane, DEFAULT_SHARE, "serve")]
    if change is not None:
        arrows.append(_arrow(answer, change, 1 - DEFAULT_SHARE, "change"))
    name = question.receiver.name
    ours, theirs = (at_baseline(question.court, ours=each) for each in (True, False))
    server = question.server.name if question.server else "us"
    return CourtPicture(
        title=f"Serve {name}".strip(),
        alt=f"Serve {place(answer)}" + (f"; change: {change}." if change else "."),
        markers=(
            Marker.at(ours, server, ours=True),
            Marker.at(theirs, name or "receiver", ours=False),
        ),
        arrows=tuple(arrows),
    )


def _arrow(answer: ServeAnswer, lane: Lane, width: float, label: str) -> Arrow:
    court = answer.question.court
    start = at_baseline(court, ours=True)
    end = landing(lane, court, inside_ft=answer.aim_ft)
    return Arrow.between(start, end, width=width, label=label)
