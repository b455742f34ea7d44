"""The cue: one positive line of at most eight words before a serve."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

from knowledge.advice import CALL_LIMIT, Advice, Choice, Confidence, MatchFact, Reason
from knowledge.game import places, receiver, server
from knowledge.planning.cue_for import asks_several, told_to
from knowledge.planning.line import Line
from knowledge.planning.names import first_that_fits
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.returning import serve_line
from knowledge.planning.roles import Roles, roles_of
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE, Source, rule
from knowledge.vocabulary import PlayerId, Side, Topic

MAX_WORDS = 8

IN_TURN = 3
"""Cues that take turns point by point. An odd number, since who receives turns with the point."""

GENERAL_SERVING = ("Serve deep. Stay back for the third.", "Serve deep. Drop middle, follow it.")
GENERAL_RECEIVING = ("Return high and deep. Run in.", "Return deep middle. Paddle up early.")

MIDDLE = "Middle: say whose ball it is."
SEVERAL = 3
"""Lines for whoever wants "three things to shout": more are not heard."""

PAIR = 2

WHO_PLAYS = rule("4.B")
"""Who serves and receives follows from the score (2025 edition, 4.B)."""


GENERAL_FREE_SERVING = "Stay back till the third, then in."
GENERAL_FREE_RECEIVING = "At the line, paddle up."

LATE_POINTS = 2
"""So near the end the best line is said every time, since a rally weighs most there."""


def advise(situation: Situation) -> Advice:
    """One line for whoever serves or receives, and one for the partner where it is known who is.

    The best few take turns so that they are read. Whoever asks gets their own line first.
    """
    we_serve = _we_serve(situation)
    serving = bool(we_serve)
    roles = roles_of(situation, we_serve=serving)
    usable = usable_lines(situation, roles)
    if told_to(situation) and len(situation.ours) == PAIR:
        return _for_each(situation, roles, usable)
    line = _in_turn(situation, usable)
    other = _for_free(roles, usable, line)
    first, second = _said(situation, roles, line), _said_to_free(roles, other)
    if roles.asks_free and second is not None:
        line, other, first, second = other, line, second, first
    reasons = _reasons(situation, line, second, other)
    if asks_several(situation.asked.words):
        reasons = tuple(_others_said(roles, usable, first))
    return Advice(
        topic=Topic.CUE,
        call=first,
        reasons=reasons,
        assumed=None if we_serve is not None else "Taken as receiving.",
        confidence=Confidence.LEAN if line else Confidence.GENERAL_RULE,
        numbers=_numbers(situation, line),
        choices=_choices() if we_serve is None else (),
    )


def _for_each(situation: Situation, roles: Roles, usable: Sequence[Line]) -> Advice:
    """The line of whoever is named, or of both: never the same one for two."""
    lines = _lines_of_both(situation, roles, usable)
    heard = told_to(situation)
    called, *others = (
        (lines[one.player], _own_cue(situation, roles, one, lines[one.player])) for one in heard
    )
    line, call = called
    reasons = [Reason(text=cue.rstrip("."), source=_source(each)) for each, cue in others]
    if line is not None and line.because:
        reasons.append(Reason(text=line.because.capitalize(), source=line.reason().source))
    we_serve = _we_serve(situation)
    return Advice(
        topic=Topic.CUE,
        call=call,
        reasons=tuple(reasons),
        assumed=None if we_serve is not None else "Taken as receiving.",
        confidence=Confidence.LEAN if line else Confidence.GENERAL_RULE,
        numbers=_numbers(situation, line),
        choices=_choices() if we_serve is None else (),
    )


def _lines_of_both(
    situation: Situation, roles: Roles, usable: Sequence[Line]
) -> dict[PlayerId, Line | None]:
    """Each of ours with the best line that is theirs to use and not the partner's already."""
    order = sorted(situation.ours, key=lambda one: one is roles.free)
    taken: dict[PlayerId, Line | None] = {}
    for one in order:
        theirs = [
            line
            for line in usable
            if line not in taken.values()
            and (roles.fits_free(line) if one is roles.free else line.who in (None, one.player))
        ]
        own = [line for line in theirs if line.who == one.player]
        taken[one.player] = next(iter([*own, *theirs]), None)
    return taken


def _own_cue(situation: Situation, roles: Roles, one: OnCourt, line: Line | None) -> str:
    if line is not None:
        return _addressed(one, line.cue)
    if one is roles.free:
        general = GENERAL_FREE_SERVING if roles.we_serve else GENERAL_FREE_RECEIVING
        return _addressed(one, general)
    lines = GENERAL_SERVING if roles.we_serve else GENERAL_RECEIVING
    return _addressed(one, lines[situation.ours.index(one) % len(lines)])


def _source(line: Line | None) -> Source:
    return COMMON_PRACTICE if line is None else line.reason().source


def _others_said(roles: Roles, usable: Sequence[Line], first: str) -> Iterator[Reason]:
    """Two lines more for whoever wants several: of this pair, then what always holds."""
    general = GENERAL_SERVING if roles.we_serve else GENERAL_RECEIVING
    noted = [Reason(text=one.cue.rstrip("."), source=one.reason().source) for one in usable]
    always = [Reason(text=one.rstrip("."), source=COMMON_PRACTICE) for one in (*general, MIDDLE)]
    others = (one for one in (*noted, *always) if one.text not in first)
    return islice(others, SEVERAL - 1)


def _numbers(situation: Situation, line: Line | None) -> dict[str, float]:
    if line is None:
        return {}
    given = {one.do for one in situation.given_plan}
    from_plan = {"from_given_plan": float(line.do in given)} if given else {}
    return {f"{line.phase}_per_100": line.per_100} | from_plan


def _we_serve(situation: Situation) -> bool | None:
    if situation.asked.we_serve is not None:
        return situation.asked.we_serve
    return None if situation.game is None else situation.game.we_serve


def _in_turn(situation: Situation, usable: Sequence[Line]) -> Line | None:
    """The line whose turn it is; late in a game the best one, as it was at 2-2."""
    if not usable:
        return None
    return usable[0 if _is_late(situation) else _turn(situation) % min(IN_TURN, len(usable))]


def _is_late(situation: Situation) -> bool:
    game = situation.game
    return game is not None and max(game.ours, game.theirs) >= game.format.target - LATE_POINTS


def _turn(situation: Situation) -> int:
    """Changes with every point, so that the same words don't stand there twice running."""
    game = situation.game
    return 0 if game is None else game.ours + game.theirs


def usable_lines(situation: Situation, roles: Roles) -> list[Line]:
    """Lines for this rally: the first ball first, then those of the plan given, by their worth."""
    lines = list(plan_lines(situation))
    serve = serve_line_at_score(situation) if roles.we_serve else None
    lines += [] if serve is None else [serve]
    given = {one.do for one in situation.given_plan}
    suited = [
        line
        for line in lines
        if line.is_specific and line.per_100 > 0 and roles.may_use(line) and _is_short(line.cue)
    ]
    return sorted(
        suited, key=lambda line: (line.we_serve is None, line.do not in given, -line.per_100)
    )


def _for_free(roles: Roles, usable: Sequence[Line], line: Line | None) -> Line | None:
    """The partner's line: the best that is not said already; None where nobody is named."""
    if roles.free is None or (line is not None and not roles.is_for_bound(line)):
        return None
    return next((one for one in usable if one is not line and roles.fits_free(one)), None)


def _said(situation: Situation, roles: Roles, line: Line | None) -> str:
    general = GENERAL_SERVING if roles.we_serve else GENERAL_RECEIVING
    cue = line.cue if line else general[_turn(situation) % len(general)]
    if roles.bound is None or (line is not None and not roles.is_for_bound(line)):
        return cue
    return _addressed(roles.bound, cue)


def _said_to_free(roles: Roles, line: Line | None) -> str | None:
    if roles.free is None:
        return None
    general = GENERAL_FREE_SERVING if roles.we_serve else GENERAL_FREE_RECEIVING
    return _addressed(roles.free, line.cue if line else general)


def _addressed(one: OnCourt, cue: str) -> str:
    """ "Tom: return deep at Lindqvist.", in as many words as a cue may have."""
    if cue.startswith(f"{one.name}:"):
        return cue
    said = f"{one.name}: {cue[0].lower()}{cue[1:]}"
    first = f"{said.split('. ')[0].rstrip('.')}."
    return next((each for each in (said, first) if _is_short(each) and _fits(each)), cue)


def _fits(cue: str) -> bool:
    return len(cue) <= CALL_LIMIT


def _is_short(cue: str) -> bool:
    return len(cue.split()) <= MAX_WORDS


def serve_line_at_score(situation: Situation) -> Line | None:
    """Where to serve at the one who must receive, if the score settles who."""
    player, court = _receiver(situation)
    if player is None or court is None:
        return None
    return serve_line(situation, player, court)


def _receiver(situation: Situation) -> tuple[OnCourt | None, Side | None]:
    game = situation.game
    at = places(game) if game is not None and game.we_serve else None
    who = receiver(game) if game is not None and at is not None else None
    if who is None or at is None:
        return None, None
    return situation.find(who), at.receiving.bound_court


def _reasons(
    situation: Situation, line: Line | None, second: str | None, other: Line | None
) -> tuple[Reason, ...]:
    reasons = []
    if second is not None:
        source = other.reason().source if other else COMMON_PRACTICE
        reasons.append(Reason(text=second.rstrip("."), source=source))
    who = _who_plays(situation)
    if who is not None:
        reasons.append(Reason(text=who, source=WHO_PLAYS))
    if line is not None and line.because:
        reasons.append(Reason(text=line.because.capitalize(), source=line.reason().source))
    return tuple(reasons)


def _who_plays(situation: Situation) -> str | None:
    """ "Mira serves from the right, to Okafor"; None where the score does not settle it."""
    game = situation.game
    if game is None or game.is_over:
        return None
    at = places(game)
    serves, receives = _name(situation, server(game)), _name(situation, receiver(game))
    if at is None or serves is None or receives is None:
        return None
    court = at.serving.bound_court.value
    return first_that_fits((f"{serves} serves from the {court}, to {receives}", f"{serves} serves"))


def _name(situation: Situation, player: PlayerId | None) -> str | None:
    found = None if player is None else situation.find(player)
    return found.name if found else None


def _choices() -> tuple[Choice, ...]:
    return tuple(
        Choice(label=label, topic=Topic.CUE, fact=MatchFact.WE_SERVE.value, value=value)
        for label, value in (("we serve", "yes"), ("they serve", "no"))
    )
