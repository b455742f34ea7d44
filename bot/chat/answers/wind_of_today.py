"""The wind told in this chat: kept from a question that tells one, given to those that follow."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.context import Asked
from bot.chat.kept_wind import Game, told_wind, with_kept_wind


def in_the_wind(desk: Desk, asked: Asked) -> Asked:
    """The question with the wind told before it; a wind of its own is kept for the next."""
    kept = desk.context.wind
    if asked.wind is None and kept is None:
        return asked
    game = _game(desk)
    desk.context = replace(desk.context, wind=told_wind(asked, kept, game))
    return with_kept_wind(asked, kept, game)


def _game(desk: Desk) -> Game:
    """Which game of which match it is: after it the ends change."""
    match = desk.context.match
    return () if match is None else (match, desk.log().next_game_no)
