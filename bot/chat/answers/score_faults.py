"""What is wrong with a score that was told: by the rules, or beyond belief."""

from __future__ import annotations

from bot.chat.score_reading import is_past_belief
from bot.chat.wording import wording
from knowledge.game import GameState, faults


def faults_of_state(game: GameState, leads: bool = False) -> tuple[str, ...]:
    """Why a score can't stand; a lead that ends the game, or what nobody ever reached, is asked."""
    found = faults(game)
    if leads and game.is_over:
        told = f"{game.ours}-{game.theirs}"
        return (wording("score.ends_already").format(game=told, target=game.format.target),)
    if found or not is_past_belief(game):
        return found
    return (wording("score.past_belief").format(call=game.call, target=game.format.target),)
