"""The next match of a pool with the plan in one line, and how the pool stands."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.formats import format_words
from bot.chat.answers.listing import show_page
from bot.chat.answers.matches import plan_button
from bot.chat.answers.no_match import no_match
from bot.chat.answers.pool_order import (
    Pool,
    format_of,
    match_words,
    opponents_of,
    pair_words,
    pool_of,
    take_up,
)
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.scoreboard import scoreboard, serve_buttons
from bot.chat.answers.serve_asked import ask_first_serve
from bot.chat.asked import Asked
from bot.chat.match_results import MatchResult, result_of
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import PoolVerb
from bot.chat.shown_list import Listing
from bot.chat.wording import wording
from knowledge.vocabulary import Topic
from scouting_db.values import EventId, MatchRow, MatchState


def next_match(desk: Desk) -> Reply:
    """The next opponents with the plan in one line; the match under way while one is."""
    pool, now = pool_of(desk), desk.match_row()
    if pool is None:
        desk.context = replace(desk.context, pool=None)
    if now is not None and (pool is None or now.event != pool.event):
        if pool is not None and pool.left and desk.log().is_begun:
            return _still_on(desk, pool)
        return answer_asked(desk, Asked(topic=Topic.GAME_PLAN, text=""))
    if pool is None:
        return no_match(desk)
    if not pool.left:
        return standing(desk)
    if desk.context.match is not None and desk.log().is_begun:
        return _still_on(desk, pool)
    current = [row for row in pool.left if row.match == desk.context.match]
    row = (current or pool.left)[0]
    take_up(desk, row)
    desk.context = desk.context.without_announced()
    plan = answer_asked(desk, Asked(topic=Topic.GAME_PLAN, text=""), short=True)
    ask_first_serve(desk, row.match)
    lines = [
        wording("pool.next").format(who=match_words(desk, row)),
        desk.trace["advice"].call,
        _sentence(format_words(format_of(row))),
        wording("match.who_serves"),
    ]
    return Reply(
        text="\n".join(lines),
        buttons=rows([*serve_buttons(row.match, desk.log()), plan_button()]),
        picture=plan.picture,
        about=("match", row.match),
    )


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}."


def _still_on(desk: Desk, pool: Pool) -> Reply:
    """The score of the match that is being played, and who comes after it."""
    match = desk.context.match
    assert match is not None, "something of it is logged"
    score, taps = scoreboard(desk, match)
    after = [row for row in pool.left if row.match != match]
    lines = [score, wording("pool.still_on").format(who=pair_words(desk, desk.context.theirs))]
    if after:
        lines.append(wording("pool.after").format(who=match_words(desk, after[0])))
    return Reply(text="\n".join(lines), buttons=rows(taps), about=("match", match))


def asked_how(desk: Desk, verb: PoolVerb) -> Reply:
    """How the pool stands, or what it takes to go on from it."""
    return going_through(desk) if verb is PoolVerb.THROUGH else standing(desk)


def standing(desk: Desk) -> Reply:
    """Who was played with what result, and our points; ties are the event's to break."""
    pool = pool_of(desk)
    if pool is None:
        return Reply(text=wording("pool.none"))
    return standing_page(desk, pool.event, 0)


def going_through(desk: Desk) -> Reply:
    """Who goes on is the event's to say; how we stand, where a pool is on."""
    told = wording("pool.through")
    if pool_of(desk) is None:
        return Reply(text=told)
    so_far = standing(desk)
    return replace(so_far, text=f"{told}\n{so_far.text}")


def standing_page(desk: Desk, event: EventId, page: int) -> Reply:
    """A page of it."""
    matches = desk.book.matches_in(event)
    if not matches:
        return Reply(text=wording("unclear.too_old"))
    blocks = [[line] for line in standing_lines(desk, matches)]
    return show_page(desk, Listing(what="pool", of=event, page=page), blocks, [plan_button()])


def standing_lines(desk: Desk, matches: Sequence[MatchRow]) -> list[str]:
    results = {row.match: _result(desk, row) for row in matches}
    over = [one for one in results.values() if one is not None]
    won = sum(one.won is True for one in over)
    lines = [
        wording("pool.standing").format(
            won=won, lost=len(over) - won, left=len(matches) - len(over)
        )
    ]
    for n, row in enumerate(matches, start=1):
        lines.append(wording("pool.line").format(n=n, match=_line(desk, row, results[row.match])))
    points = [game for one in over if not one.is_tally for game in one.games]
    if points:
        ours, theirs = (sum(game[side] for game in points) for side in (0, 1))
        lines.append(
            wording("pool.points").format(
                ours=ours, theirs=theirs, difference=f"{ours - theirs:+d}"
            )
        )
    return [*lines, wording("pool.ties")]


def _result(desk: Desk, row: MatchRow) -> MatchResult | None:
    """None while it is not over."""
    if row.state is not MatchState.OVER:
        return None
    return result_of(desk.book.entries(row.match), format_of(row))


def _line(desk: Desk, row: MatchRow, result: MatchResult | None) -> str:
    if result is None:
        key = "pool.on" if row.state is MatchState.RUNNING else "pool.to_play"
        return wording(key).format(who=match_words(desk, row))
    key = "pool.won" if result.won else "pool.lost"
    games = " ".join(f"{ours}-{theirs}" for ours, theirs in result.games)
    return wording(key).format(who=pair_words(desk, opponents_of(row)), games=games).strip()
