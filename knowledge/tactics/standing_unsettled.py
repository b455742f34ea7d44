"""Where to stand when the score alone does not settle who serves or who stands where."""

from __future__ import annotations

from knowledge.advice import Reason
from knowledge.dataclass import dataclass
from knowledge.game import GameState, receiver, server
from knowledge.situation import Situation
from knowledge.tactics.standing_names import Names
from knowledge.tactics.standing_subject import subject_of
from knowledge.tactics.standing_words import POSITIONS_RULE, SERVER_RULE, capital, fitted, parity
from knowledge.vocabulary import Side


def unsettled(
    situation: Situation, game: GameState, names: Names
) -> tuple[str, tuple[Reason, ...]]:
    """The rule, and the answer for either case.

    Side-out: courts follow from the score, and either partner may be serving. Rally scoring:
    the server's court follows, and either partner may stand there.
    """
    ours, theirs = game.starter_court(ours=True), game.starter_court(ours=False)
    if ours is None or theirs is None:
        return _whoever_stands_there(situation, game)
    return _either(situation, game, names, _Courts(ours=ours, theirs=theirs))


def _whoever_stands_there(situation: Situation, game: GameState) -> tuple[str, tuple[Reason, ...]]:
    points, court = game.serving_points, game.serving_court
    verb = "Serve from" if game.we_serve else "Receive on"
    bound = server(game) if game.we_serve else receiver(game)
    ours = situation.find(bound) if bound is not None else None
    who = ours.name if ours else "whoever of you stands there"
    whose = "Our" if game.we_serve else "Their"
    return fitted(f"{verb} the {court}, {who}.", f"{verb} the {court}."), (
        Reason(
            text=f"{whose} {points} is {parity(points)}: the serve comes from the {court}",
            source=POSITIONS_RULE,
        ),
        Reason(text="You swap only after a point on your own serve", source=POSITIONS_RULE),
        Reason(text="A score alone doesn't tell who stands where", source=POSITIONS_RULE),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Courts:
    """Where each pair's starter stands."""

    ours: Side
    theirs: Side


def _either(
    situation: Situation, game: GameState, names: Names, courts: _Courts
) -> tuple[str, tuple[Reason, ...]]:
    """The call does not settle which partner serves: the parity rule, and both answers."""
    call, reasons = (_either_serves if game.we_serve else _either_receives)(game, names, courts)
    subject = subject_of(situation, names)
    if subject is None:
        return call, reasons
    # A player's correct court follows from the score, whoever of the two serves.
    mine = subject.court(courts.ours)
    stand = f"Stand {mine}{subject.address}"
    if game.we_serve:
        return fitted(f"{stand}; serve from there if it's your turn.", f"{stand}."), reasons
    return fitted(f"{stand}; receive if they serve from their {mine}.", f"{stand}."), reasons


def _either_serves(
    game: GameState, names: Names, courts: _Courts
) -> tuple[str, tuple[Reason, ...]]:
    court, starter, partner = courts.ours, names.ours.starter, names.ours.partner
    call = fitted(
        f"Serve {court} if {starter} serves, {court.other} if {partner}.",
        f"Serve {court} if our starter serves, {court.other} if not.",
    )
    return call, (
        _parity_rule(game.ours),
        _if_serves(names, courts, court, starter),
        _if_serves(names, courts, court.other, partner),
    )


def _parity_rule(points: int) -> Reason:
    text = f"Your starter is right at even, left at odd; you have {points}"
    return Reason(text=text, source=SERVER_RULE)


def _if_serves(names: Names, courts: _Courts, court: Side, who: str) -> Reason:
    receives = names.theirs.who(is_starter=courts.theirs is court)
    text = f"{capital(who)} serving: from the {court}, {receives} receives"
    return Reason(text=text, source=SERVER_RULE)


def _either_receives(
    game: GameState, names: Names, courts: _Courts
) -> tuple[str, tuple[Reason, ...]]:
    court = courts.ours
    by_court = {court: names.ours.starter, court.other: names.ours.partner}
    right, left = by_court[Side.RIGHT], by_court[Side.LEFT]
    call = fitted(
        f"Stand {right} right, {left} left; face their server.",
        f"Stand {right} right, {left} left.",
        f"Stand starter {court}, partner {court.other}.",
    )
    servers = (
        (names.theirs.starter, courts.theirs),
        (names.theirs.partner, courts.theirs.other),
    )
    return call, (
        _parity_rule(game.ours),
        *(
            Reason(
                text=f"{capital(who)} serving: from their {side}, {by_court[side]} receives",
                source=SERVER_RULE,
            )
            for who, side in servers
        ),
    )
