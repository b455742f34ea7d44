"""The game plan: at most five lines about these people, ranked by points times share."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.court import at_kitchen_line
from knowledge.court_picture import Arrow, CourtPicture, Marker
from knowledge.planning.line import Line, Phase
from knowledge.planning.names import first_that_fits, pair_name
from knowledge.planning.plan_b import sign_of
from knowledge.planning.plan_lines import MAX_LINES, plan_lines
from knowledge.planning.probes import MEANWHILE, hand_choices, probes
from knowledge.planning.rematch import expected
from knowledge.planning.report import known_of
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import Side, Topic

SPECIFIC_LINES = 3
"""A plan with fewer lines about these people fits every pair in the draw: then say so."""


def advise(situation: Situation) -> Advice:
    """The plan, or that there is no book and what to look for."""
    lines = plan_lines(situation)
    has_book = any(one.profile.is_known for one in situation.theirs)
    if not has_book or sum(line.is_specific for line in lines) < SPECIFIC_LINES:
        return _no_book(situation, lines, has_book=has_book)
    return Advice(
        topic=Topic.GAME_PLAN,
        call=_call(lines),
        lines=tuple(line.reason() for line in lines),
        unless=_unless(situation, lines),
        assumed=_one_named(situation),
        confidence=Confidence.LEAN,
        numbers=_numbers(lines),
        choices=(
            *hand_choices(situation.theirs, Topic.GAME_PLAN),
            Choice(label="cue", topic=Topic.CUE),
        ),
        picture=_picture(situation, lines),
        more=_more(situation, lines),
    )


def _unless(situation: Situation, lines: Sequence[Line]) -> str | None:
    """Of a rematch what they will probably change; else the sign for plan B, where there is room.

    A guess about a pair that we met goes before a line of the plan, which "why" still tells.
    """
    guess = expected(situation, lines)
    if guess is not None:
        return f"{guess.text}."
    return sign_of(situation, lines) if len(lines) < MAX_LINES else None


def _one_named(situation: Situation) -> str | None:
    """That half of their pair is missing: a plan for one of two is half a plan."""
    if len(situation.theirs) != 1:
        return None
    return f"Only {situation.theirs[0].name} named: say the partner too."


def _call(lines: Sequence[Line]) -> str:
    """The best line, with the second best where both fit a lock screen."""
    first, second = (line.cue.split(". ")[0].rstrip(".") for line in lines[:2])
    return first_that_fits((f"{first}. {second}.", f"{first}."))


def _no_book(situation: Situation, lines: Sequence[Line], *, has_book: bool) -> Advice:
    """What to look at first, and till then what holds against anybody."""
    specific = [line for line in lines if line.is_specific and has_book]
    aims = tuple(line.reason() for line in specific)[: SPECIFIC_LINES - 1]
    known = aims or _noted(situation)
    who = pair_name(situation.theirs)
    book = "Little book" if known else "No book"
    return Advice(
        topic=Topic.GAME_PLAN,
        call=first_that_fits(
            (f"Look first: {book.lower()} on {who}.", f"Look first: {book.lower()} on them.")
        ),
        lines=(*known, *probes(situation.theirs)),
        assumed=_one_named(situation) or (None if aims else MEANWHILE),
        confidence=Confidence.GENERAL_RULE,
        choices=hand_choices(situation.theirs, Topic.GAME_PLAN),
        more=_general(situation, lines, known),
    )


def _noted(situation: Situation) -> tuple[Reason, ...]:
    """What is noted though no aim rests on it: who wrote it down has some book on them."""
    noted = [each for one in situation.theirs for each in known_of(one, situation)]
    most_useful = sorted(noted, key=lambda each: -each.per_100)[: SPECIFIC_LINES - 1]
    return tuple(
        Reason(text=f"{each.player.name}: {each.text}", source=each.source) for each in most_useful
    )


GENERAL = "Against anybody: {do}"


def _general(
    situation: Situation, lines: Sequence[Line], known: Sequence[Reason]
) -> tuple[str, ...]:
    """The plan from general rules, in full: for who asks why, once nobody is noted."""
    said = {reason.text for reason in known}
    general = [line for line in lines if not line.is_specific and line.text not in said]
    told = [GENERAL.format(do=line.do) for line in general]
    looks = [f"Look: {one.text}" for one in probes(situation.theirs)]
    return (*(reason.text for reason in known), *told, *looks) if told else ()


def _numbers(lines: Sequence[Line]) -> dict[str, float]:
    """Points, share and rallies per hundred of each line, and of the plan as a whole.

    The sum is what the whole plan is worth to first order: see `knowledge.engine`.
    """
    numbers: dict[str, float] = {}
    for line in lines:
        numbers |= {
            f"{line.phase}_points": float(line.points),
            f"{line.phase}_share": line.share,
            f"{line.phase}_per_100": line.per_100,
        }
    aims = [line for line in lines if line.phase is not Phase.RESPECT]
    return numbers | {"plan_per_100": math.fsum(line.per_100 for line in aims)}


def _more(situation: Situation, lines: Sequence[Line]) -> tuple[str, ...]:
    worth = tuple(
        f"{line.do}: about {line.per_100:.1f} rallies in 100" for line in lines if line.is_specific
    )
    plan_b = sign_of(situation, lines)
    return (*worth, plan_b) if plan_b else worth


def _picture(situation: Situation, lines: Sequence[Line]) -> CourtPicture | None:
    """The aims on a court; None while the sides of their players are not known."""
    arrows = _arrows(lines)
    if not arrows or any(one.side is None for one in situation.theirs):
        return None
    names = pair_name(situation.theirs)
    return CourtPicture(
        title=f"Plan vs {names}",
        alt="Plan: " + "; ".join(line.text for line in lines if line.arrow is not None),
        markers=(
            *_markers(situation.theirs, ours=False),
            *_markers(situation.ours, ours=True),
        ),
        arrows=arrows,
    )


def _arrows(lines: Sequence[Line]) -> tuple[Arrow, ...]:
    """Widths by what each aim is worth beside the best one."""
    drawn = [line for line in lines if line.arrow is not None]
    top = max((line.per_100 for line in drawn), default=0.0)
    return tuple(
        replace(line.arrow, width=max(MIN_WIDTH, line.per_100 / top) if top > 0 else MIN_WIDTH)
        for line in drawn
        if line.arrow is not None
    )


MIN_WIDTH = 0.3
"""The thinnest arrow that still shows in sunlight."""


def _markers(players: Sequence[OnCourt], *, ours: bool) -> list[Marker]:
    """Each at the line; whose side is not known is shown left, then right."""
    markers = []
    for one, fallback in zip(players, (Side.LEFT, Side.RIGHT), strict=False):
        place = at_kitchen_line(one.side or fallback, ours=ours)
        markers.append(Marker.at(place, one.name, ours=ours))
    return markers
