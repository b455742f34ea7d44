"""A pool sent a second time once it is being played: it goes on, and no match of it twice."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.pool_order import opponents_of, pool_of
from bot.chat.answers.pool_standing import standing
from bot.chat.reply import Reply
from bot.chat.said import Certainty, PoolTeam
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId
from scouting_db.values import MatchState


def pool_goes_on(desk: Desk, teams: Sequence[PoolTeam]) -> Reply | None:
    """How it stands, where every pair listed is one of the pool that was begun; else None."""
    pool = pool_of(desk)
    if pool is None or all(row.state is MatchState.ANNOUNCED for row in pool.matches):
        return None
    known = {frozenset(opponents_of(row)) for row in pool.matches}
    listed = [_pair(desk, team) for team in teams]
    if not listed or not all(pair in known for pair in listed):
        return None
    stands = standing(desk)
    return replace(stands, text=f"{wording('pool.goes_on')}\n{stands.text}")


def _pair(desk: Desk, team: PoolTeam) -> frozenset[PlayerId]:
    """Whom it names; one name stands for the pair it is known in."""
    players = [one.players[0] for one in team.mentions if one.certainty is Certainty.SURE]
    if len(players) < len(team.mentions):
        return frozenset()
    partner = desk.view.partner_of(players[0]) if len(players) == 1 else None
    return frozenset([*players, *([] if partner is None else [partner])])
