"""The player that a button stands for."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.payload import BadPayloadError, number_in
from knowledge.vocabulary import PlayerId


def player_tapped(desk: Desk, arg: str) -> PlayerId:
    """A player of this book; BadPayloadError for any other number."""
    player = PlayerId(number_in(arg))
    if desk.view.player(player) is None:
        raise BadPayloadError(f"no player {player} in this book")
    return player
