"""Other opponents told right after a match was named or its result booked: that match is put right.

"Scratch that, it is okafor" after "next is ruiz and hale"; "no that was okafor" after "won 11-9".
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.matches import announce, opponents_named
from bot.chat.answers.names import by_pair, settled
from bot.chat.answers.pool_order import format_of, opponents_of, pool_match_against, take_up
from bot.chat.answers.results import take_result
from bot.chat.answers.undo import undo
from bot.chat.match_log import unvoided
from bot.chat.match_results import result_of
from bot.chat.opponents_told import tells_only_of
from bot.chat.reply import Reply
from bot.chat.said import CorrectionSaid, MatchSaid, RallyDetails, RallySaid, ResultSaid
from bot.chat.wording import wording
from bot.chat.words import words, words_in
from knowledge.vocabulary import PlayerId
from scouting_db.values import ChangeRow, EntryKind, MatchId, MatchState

_NAMED = frozenset(["announce", "pool_match", "pool"])
_OF_WHAT_WAS = words_in("was were said meant pair team game but rather him her them")
_PLAYED = frozenset([EntryKind.RALLY, EntryKind.SCORE, EntryKind.RESULT])


def opponents_put_right(desk: Desk, said: CorrectionSaid) -> Reply | None:
    """The match against these instead; None where a note or a question is put right."""
    named = by_pair(desk, [one for one in said.mentions if not one.pronoun])
    players = settled(named)
    last = desk.book.last_change(desk.chat.chat)
    if not players or last is None or desk.context.asked is not None:
        return None
    beside = [word for word in words(said.text) if word.folded not in _OF_WHAT_WAS]
    if not tells_only_of([*said.mentions, *said.denied], beside):
        return None
    if not set(players).isdisjoint(desk.ours):
        return None
    if last.verb == "entry" and (moved := _result_moved(desk, last, players, said)) is not None:
        return moved
    if not set(players).isdisjoint(desk.context.theirs) or not _was_named_just_now(desk, last):
        return None
    if last.verb == "announce":
        undo(desk, last.change)
    return announce(desk, MatchSaid(text=said.text, mentions=named))


def _was_named_just_now(desk: Desk, last: ChangeRow) -> bool:
    """Whether nothing was done since the match was named but to say who serves first."""
    match = desk.context.match
    if match is None:
        return False
    is_untouched = not any(one.kind in _PLAYED for one in unvoided(desk.book.entries(match)))
    is_its_start = last.verb == "entry" and last.targets.get("match") == match
    return is_untouched and (last.verb in _NAMED or is_its_start)


def _result_moved(
    desk: Desk, last: ChangeRow, players: Sequence[PlayerId], said: CorrectionSaid
) -> Reply | None:
    """The result just booked, on the pool's match against these; None where there is none such."""
    row = desk.book.match(MatchId(last.targets["match"]))
    if row is None or row.state is not MatchState.OVER or row.event != desk.context.pool:
        return None
    entries = unvoided(desk.book.entries(row.match))
    if any(one.kind is EntryKind.RALLY for one in entries):
        return None  # played with us rally by rally: it was they
    other = pool_match_against(desk, opponents_named(desk, players, said.text, format_of(row)))
    if other is None or set(players) <= set(opponents_of(row)):
        return None
    result = result_of(entries, format_of(row))
    undo(desk, last.change)
    take_up(desk, other)
    tally = result.games[0] if result.is_tally else None
    games = () if result.is_tally else result.games
    booked = take_result(desk, ResultSaid(text=said.text, games=games, won=result.won, tally=tally))
    who = "/".join(desk.names(opponents_of(other)))
    return replace(booked, text="\n".join([wording("pool.booked_on").format(who=who), booked.text]))


def strangers_announced(desk: Desk, said: RallySaid) -> Reply | None:
    """ "It's okafor" before anything is played against others: no rally, but whom we play."""
    if desk.context.match is None or desk.log().is_begun or not said.strangers:
        return None
    is_told = said.scored or said.details != RallyDetails() or said.strangers != said.mentions
    if is_told or settled(said.strangers) is None:
        return None
    if not tells_only_of(said.strangers, words(said.text)):
        return None
    return announce(desk, MatchSaid(text=said.text, mentions=by_pair(desk, said.strangers)))
