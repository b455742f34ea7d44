"""The cue: one positive line of at most eight words before a serve."""

from __future__ import annotations

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.game import places, receiver, server
from knowledge.planning.line import Line
from knowledge.planning.names import first_that_fits
from knowledge.planning.plan_lines import plan_lines
from knowledge.planning.returning import serve_line
from knowledge.situation import OnCourt, Situation
from knowledge.sources import rule
from knowledge.vocabulary import PlayerId, Side, Topic

MAX_WORDS = 8

IN_TURN = 3
"""Cues that take turns point by point. An odd number, since who receives turns with the point."""

GENERAL_SERVING = ("Serve deep. Stay back for the third.", "Serve deep. Drop middle, follow it.")
GENERAL_RECEIVING = ("Return high and deep. Run in.", "Return deep middle. Paddle up early.")

WHO_PLAYS = rule("4.B")
"""Who serves and receives follows from the score (2025 edition, 4.B)."""


def advise(situation: Situation) -> Advice:
    """One line for the next rally; the best few take turns so that they are read."""
    we_serve = _we_serve(situation)
    serving = bool(we_serve)
    usable = _usable(situation, we_serve=serving)
    line = usable[_turn(situation) % min(IN_TURN, len(usable))] if usable else None
    general = GENERAL_SERVING if serving else GENERAL_RECEIVING
    return Advice(
        topic=Topic.CUE,
        call=line.cue if line else general[_turn(situation) % len(general)],
        reasons=_reasons(situation, line),
        assumed=None if we_serve is not None else "Taken as receiving.",
        confidence=Confidence.LEAN if line else Confidence.GENERAL_RULE,
        numbers={f"{line.phase}_per_100": line.per_100} if line else {},
        choices=_choices() if we_serve is None else (),
    )


def _we_serve(situation: Situation) -> bool | None:
    if situation.asked.we_serve is not None:
        return situation.asked.we_serve
    return None if situation.game is None else situation.game.we_serve


def _turn(situation: Situation) -> int:
    """Changes with every point, so that the same words don't stand there twice running."""
    game = situation.game
    return 0 if game is None else game.ours + game.theirs


def _usable(situation: Situation, *, we_serve: bool) -> list[Line]:
    """Lines for this rally: the first ball first, then the most useful."""
    lines = list(plan_lines(situation))
    serve = serve_line_at_score(situation) if we_serve else None
    lines += [] if serve is None else [serve]
    suited = [
        line
        for line in lines
        if line.is_specific
        and line.per_100 > 0
        and line.suits(we_serve=we_serve)
        and line.who in (None, *_returners(situation, we_serve=we_serve))
        and _is_short(line.cue)
    ]
    return sorted(suited, key=lambda line: (line.we_serve is None, -line.per_100))


def _returners(situation: Situation, *, we_serve: bool) -> tuple[PlayerId, ...]:
    """To whom of ours a line may speak: the receiver where the score settles who that is."""
    who = None if we_serve or situation.game is None else receiver(situation.game)
    return (who,) if who is not None else tuple(one.player for one in situation.ours)


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


def _reasons(situation: Situation, line: Line | None) -> tuple[Reason, ...]:
    reasons = []
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
