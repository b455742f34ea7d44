"""What is wrong with a match: every fault of its games and time-outs, and of the game being on."""

from __future__ import annotations

from knowledge.game.faults import faults
from knowledge.game.match import MatchState


def match_faults(match: MatchState) -> tuple[str, ...]:
    """Every reason why the match cannot stand, as sentences for a user; empty if it can."""
    return (*_games_faults(match), *_timeout_faults(match), *faults(match.game))


def _games_faults(match: MatchState) -> list[str]:
    ours, theirs = match.games_ours, match.games_theirs
    needed, best_of = match.games_needed, match.format.best_of
    found = [f"{games} games is below zero." for games in (ours, theirs) if games < 0]
    found += [
        f"{games} games can't be won in a best of {best_of}: {needed} end it."
        for games in (ours, theirs)
        if games > needed
    ]
    if min(ours, theirs) >= needed:
        found.append(f"At {ours}-{theirs} in games both sides had won the match.")
    elif max(ours, theirs) >= needed:
        found.append(f"At {ours}-{theirs} in games the match was over: no game follows.")
    if ours + theirs >= best_of:
        found.append(f"A best of {best_of} has no game {ours + theirs + 1}.")
    return found


def _timeout_faults(match: MatchState) -> list[str]:
    allowed = match.format.timeouts
    found = []
    for whose, used in (("Our", match.timeouts_used_ours), ("Their", match.timeouts_used_theirs)):
        if used < 0:
            found.append(f"{whose} time-outs: {used} is below zero.")
        elif used > allowed:
            found.append(f"{whose} time-outs: {used}, but a game has {allowed}.")
    return found
