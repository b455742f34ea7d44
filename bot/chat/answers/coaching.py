"""One of several pairs of a book speaks: whose notes, hands and agreements count from now on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.coachs_pairs import ask_which_pair, plays_draw, with_pairs
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.names import ask_which, by_pair
from bot.chat.answers.newcomers import capitalised
from bot.chat.answers.pool_order import match_words, pool_of
from bot.chat.answers.undo_entries import remember_before
from bot.chat.answers.video_lines import with_partner
from bot.chat.coached import Coached
from bot.chat.context import Context
from bot.chat.render import rows, with_buttons
from bot.chat.reply import Reply
from bot.chat.said import Certainty, CoachSaid, Mention, OwnPair
from bot.chat.wording import wording
from knowledge.vocabulary import PlayerId

PAIR = 2


def take_pair(desk: Desk, said: CoachSaid) -> Reply | None:
    """Switch to the pair, and say so; None where only its question is left to be answered."""
    if not said.ours:
        return ask_which_pair(desk, said)
    ours_said, theirs_said = by_pair(desk, said.ours), by_pair(desk, said.theirs)
    others = [one for pair in said.also for one in by_pair(desk, pair.players)]
    alike = [
        one for one in (*ours_said, *others, *theirs_said) if one.certainty is Certainty.AMBIGUOUS
    ]
    if alike:
        return ask_which(desk, said.text, alike)
    both = _sure(ours_said) & _sure(theirs_said)
    if both:
        return _against_themselves(desk, sorted(both))
    if len(_sure(ours_said)) == 1 and len({one.typed.casefold() for one in ours_said}) == 1:
        return Reply(text=wording("book.ask_pair"))
    if said.coaches and desk.context.coach is None:
        desk.context = replace(desk.context, coach=Coached())
    switched = _switch(desk, ours_said, said.also)
    plays_draw(desk, desk.ours, said.draw)
    theirs = tuple(one.players[0] for one in theirs_said if one.certainty is Certainty.SURE)
    if theirs and (switched or not said.asks):
        _facing(desk, theirs)
    told = None if said.asks else spoken_for(desk)
    return with_pairs(desk, told) if told is not None and (said.also or said.draw) else told


def _sure(mentions: Sequence[Mention]) -> set[PlayerId]:
    return {one.players[0] for one in mentions if one.certainty is Certainty.SURE}


def _against_themselves(desk: Desk, both: Sequence[PlayerId]) -> Reply:
    """Nobody is on both sides of a net; who is across it?"""
    key = "coach.themselves" if len(both) > 1 else "coach.on_both_sides"
    return Reply(text=wording(key).format(names=" and ".join(desk.names(both))))


def _switch(desk: Desk, mentions: Sequence[Mention], also: Sequence[OwnPair] = ()) -> bool:
    """Whether another pair speaks from now on. It starts from what the book has of it alone.

    `also` are further pairs of ours: the book keeps them, and what they play.
    """
    before, spoke_before = desk.context, bool(desk.ours)
    made: list[PlayerId] = []
    players = tuple(_player(desk, one, made) for one in mentions)
    others = [tuple(_player(desk, named, made) for named in one.players) for one in also]
    speaks_on = set(players) == set(desk.ours)
    if speaks_on and not also:
        return False
    everybody = (*players, *(player for pair in others for player in pair))
    flagged = [player for player in everybody if not _is_ours(desk, player)]
    for player in flagged:
        desk.book.set_ours(player, ours=True)
    pair = desk.book.pair_of(players[0], players[1])
    change = desk.record(
        "coach",
        {"made": made, "flagged": [one for one in flagged if one not in made]},
        {"context": before.to_json()},
    )
    desk.changed()
    for one, other_pair in zip(also, others, strict=True):
        desk.book.pair_of(other_pair[0], other_pair[1])
        plays_draw(desk, other_pair, one.draw)
    before = desk.context
    if speaks_on or not spoke_before:
        # Nobody's pool, match and score were these two's all along.
        desk.context = replace(before, ours=desk.ours if speaks_on else players, change=change)
        return not speaks_on
    match = desk.book.open_match(pair)
    theirs = () if match is None or match.their_pair is None else match.their_pair.players
    desk.context = Context(
        ours=players,
        theirs=theirs,
        focus=theirs,
        match=None if match is None else match.match,
        log_only=before.log_only,
        pendings=before.pendings,
        pending_count=before.pending_count,
        change=change,
        coach=before.coach,
    )
    desk.match_changed()
    pool = pool_of(desk)
    desk.context = replace(desk.context, pool=None if pool is None else pool.event)
    return True


def _player(desk: Desk, mention: Mention, made: list[PlayerId]) -> PlayerId:
    """Somebody of the book, or a new one of ours."""
    if mention.certainty is Certainty.SURE:
        return mention.players[0]
    player = desk.book.add_player(capitalised(mention.typed), ours=True)
    made.append(player)
    return player


def _is_ours(desk: Desk, player: PlayerId) -> bool:
    row = desk.view.player(player)
    return row is None or row.ours


def _facing(desk: Desk, theirs: tuple[PlayerId, ...]) -> None:
    """They are these; a match that is on against others is not this pair's concern now."""
    theirs = with_partner(desk, theirs)
    row = desk.match_row()
    same = row is not None and row.their_pair is not None
    if not (
        same and row is not None and row.their_pair and set(row.their_pair.players) == {*theirs}
    ):
        desk.context = replace(desk.context, match=None)
    desk.context = replace(desk.context, theirs=theirs, focus=theirs)
    desk.match_changed()


def with_new(desk: Desk, reply: Reply) -> Reply:
    """The answer for a pair, with whom the book learned by the asking and how to take it back."""
    last = desk.book.last_change(desk.chat.chat)
    made = last.targets["made"] if last is not None and last.verb == "coach" else []
    if last is None or not made or desk.context.change != last.change:
        return reply
    names = ", ".join(desk.view.name_of(PlayerId(player)) for player in made)
    text = "\n".join([reply.text, wording("pool.new").format(names=names)])
    return with_buttons(replace(reply, text=text), [undo_button(last.change)])


def spoken_for(desk: Desk) -> Reply:
    """Whom we speak for, and what is on for them."""
    lines = [wording("coach.now").format(names=" and ".join(desk.names(desk.ours)))]
    row = desk.match_row()
    if row is not None:
        lines.append(wording("coach.match").format(match=match_words(desk, row)))
    elif desk.context.theirs:
        lines.append(wording("vs").format(names="/".join(desk.names(desk.context.theirs))))
    lines.append(wording("coach.own"))
    last = desk.book.last_change(desk.chat.chat)
    is_of_this = last is not None and desk.context.change == last.change
    if last is None or last.verb != "coach" or not is_of_this:
        return Reply(text="\n".join(lines))
    made = [desk.view.name_of(PlayerId(player)) for player in last.targets["made"]]
    if made:
        lines.append(wording("pool.new").format(names=", ".join(made)))
    return Reply(text="\n".join(lines), buttons=rows([undo_button(last.change)]))


def for_whom(desk: Desk, reply: Reply) -> Reply:
    """The answer with the pair it is for, in a book with several pairs of ours."""
    if len(desk.view.ours()) <= PAIR or len(desk.ours) != PAIR or not reply.text:
        return reply
    us = "/".join(desk.names(desk.ours))
    opens = wording("vs").format(names="")
    lines = reply.text.splitlines()
    at = next((n for n, line in enumerate(lines) if line.lower().startswith(opens.lower())), None)
    if at is None:
        lines.append(wording("coach.for").format(names=us))
    else:
        lines[at] = f"{us} v{lines[at][1:]}"
    return replace(reply, text="\n".join(lines))


def coach_before(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    """The pair before speaks again; players made for the switch go, others are as they were."""
    for player in targets["made"]:
        desk.book.remove_player(PlayerId(player))
    for player in targets["flagged"]:
        desk.book.set_ours(PlayerId(player), ours=False)
    remember_before(desk, before)
    return wording("coach.undone")
