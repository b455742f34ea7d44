"""The score before with its sides changed is said to be so: their call shows the same digits."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.game import GameState


def says_it_turned(reply: Reply, before: GameState, now: GameState) -> Reply:
    """The reply, with whose points are whose where "5-4-1" of ours has become "5-4-1" of theirs."""
    is_turned = now.points == before.points[::-1] and now.ours != now.theirs
    if now.is_over or not is_turned or now.we_serve or not before.we_serve:
        return reply
    was = f"{before.ours}-{before.theirs}"
    line = wording("score.turned").format(ours=now.ours, theirs=now.theirs, before=was)
    return replace(reply, text=f"{reply.text}\n{line}")
