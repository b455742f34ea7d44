"""Whom "she" means in words that put the last rally right: whoever it was told to end with.

"Lost it, Malin netted", "no she didn't net it, it went long": the shot is put right, and the rally
stays lost.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.rally_book import kept_of, played_at, view_of, who_ended
from bot.chat.message import Message, read_message
from bot.chat.pronouns import CALLS
from bot.chat.rally_details import read_rally
from bot.chat.rally_who import Who
from bot.chat.said import RallySaid
from knowledge.vocabulary import PlayerId
from scouting_db.values import EntryRow, MatchId


def of_who_ended_it(desk: Desk, match: MatchId, last: EntryRow, said: RallySaid) -> RallySaid:
    """The correction with its "he" or "she" read so; as it was said where it says whose the rally
    was, names somebody, or nobody is known to have ended the last one."""
    if said.says_whose or said.mentions:
        return said
    played = played_at(desk, match, last.n)
    player = None if played is None else who_ended(desk, played, kept_of(desk, match, last.n))
    if played is None or player is None:
        return said
    view = view_of(desk, played)
    message = read_message(said.text, view)
    if not _may_mean(message, player, dict(view.called)):
        return said
    found = read_rally(message, view, last=Who(ours=player in played.ours, player=player))
    if found.won_by_us is None:
        return said
    return replace(said, won_by_us=found.won_by_us, details=found.details)


def _may_mean(message: Message, player: PlayerId, called: dict[PlayerId, str]) -> bool:
    """Whether "he" or "she" is said, and nobody spoke of that player as the other."""
    calls = {CALLS[word.folded] for word in message.said if word.folded in CALLS}
    return len(calls) == 1 and called.get(player, *calls) in calls
