"""Rallies of the running match, counted by tap or in words, and put right in words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import after_entry, sides_of_first, with_score
from bot.chat.answers.no_match import no_match
from bot.chat.answers.rally_book import played_at
from bot.chat.answers.rally_details import (
    add_words,
    adds_to_last,
    buttons_about,
    is_last,
    keep_told,
    lines_about,
    read_anew,
)
from bot.chat.answers.rally_same_person import of_who_ended_it
from bot.chat.answers.rally_tags import keep_tag
from bot.chat.answers.serve_asked import keep_waiting, open_call
from bot.chat.answers.write_down import write_down
from bot.chat.match_log import unvoided
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import RallyDetails, RallySaid
from bot.chat.wording import wording
from knowledge.game import (
    ScoreCall,
    Scoring,
    is_opening,
)
from scouting_db.values import (
    EntryKind,
    EntryRow,
    MatchId,
    Winner,
)


def count_rally(
    desk: Desk,
    *,
    ours: bool,
    match: MatchId | None,
    expected: int | None,
    also: Sequence[int] = (),
    said: RallySaid | None = None,
) -> Reply:
    """One rally by tap or by word; a second tap of the same button is already counted.

    `also` are log lines that are undone together with it, `said` the words that told it.
    """
    if match is not None and match != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    current = desk.context.match
    if current is None:
        return no_match(desk)
    asked = open_call(desk)
    if asked is not None:
        return keep_waiting(desk, asked, ours=ours, text="" if said is None else said.text)
    log = desk.log()
    if log.match.we_won is not None:
        return Reply(text=wording("match.is_over"))
    row = desk.book.append(
        current,
        EntryKind.RALLY,
        expected=expected,
        game_no=log.next_game_no,
        won_by=Winner.US if ours else Winner.THEM,
        detail=sides_of_first(desk, log) or None,
        inbox=desk.inbox,
    )
    if not isinstance(row, EntryRow):
        return after_entry(desk, current, row)
    keep_tag(desk, current, row.n)
    if said is not None:
        keep_told(desk, current, row.n, said)
    strangers = () if said is None else said.strangers
    more = buttons_about(desk, current, row.n, strangers)
    more += [] if said is None else write_down(desk, said)
    reply = after_entry(desk, current, row, also=also, more=more)
    about = [] if said is None else lines_about(desk, current, row.n, strangers)
    return replace(reply, text="\n".join([reply.text, *about]))


def take_rally(desk: Desk, said: RallySaid) -> Reply:
    """A rally told in words: counted, and the words kept with it."""
    if desk.context.match is None:
        return no_match(desk)
    match, asked = desk.context.match, open_call(desk)
    if asked is not None:
        return keep_waiting(
            desk, asked, ours=said.won_by_us, text=said.text, corrects=said.corrects
        )
    tapped = adds_to_last(desk, said)
    if tapped is not None:
        return add_words(desk, tapped, said.text, said=said)
    last = last_rally(desk) if said.corrects else None
    said = said if last is None else of_who_ended_it(desk, match, last, said)
    if last is not None and last.won_by is (Winner.US if said.won_by_us else Winner.THEM):
        played = played_at(desk, match, last.n)
        if played is not None and said.details != RallyDetails():
            return add_words(desk, played, said.text, said=said)
        return with_score(desk, match, wording("score.counted_so"))
    if last is None and said.scored and _is_the_others_serve(desk, ours=said.won_by_us):
        return ask_whose_serve(desk, match, ours=said.won_by_us)
    # A correction takes the last rally out and counts another: both are one step to undo.
    also = [] if last is None else [desk.book.void(match, last.n, inbox=desk.inbox).n]
    return count_rally(desk, ours=said.won_by_us, match=None, expected=None, also=also, said=said)


def tell_anew(
    desk: Desk, match: MatchId, n: int, text: str, said: RallySaid | None
) -> Reply | None:
    """A rally whose message was edited; None for one that doesn't count any more.

    Where it turns out the other side's, the newest is counted anew; an older one keeps its
    winner, since the score was called on from it, and the words go with it all the same.
    """
    played = played_at(desk, match, n)
    if played is None:
        return None
    turned = said is not None and said.won_by_us is not played.won_by_us
    is_newest = match == desk.context.match and is_last(desk.entries(), n)
    if said is not None and turned and is_newest:
        return take_rally(desk, replace(said, corrects=True))
    reply = read_anew(desk, played, text)
    return replace(reply, text=f"{reply.text}\n{wording('rally.score_stays')}") if turned else reply


def last_rally(desk: Desk) -> EntryRow | None:
    """The rally counted last, unless a score or a game's start was told since."""
    counting = (EntryKind.RALLY, EntryKind.SCORE, EntryKind.GAME)
    told = [one for one in unvoided(desk.entries()) if one.kind in counting]
    return told[-1] if told and told[-1].kind is EntryKind.RALLY else None


def _is_the_others_serve(desk: Desk, *, ours: bool) -> bool:
    """Whether a point of this side contradicts the log: only the serving side scores."""
    game = desk.log().match.game
    return (
        game.format.scoring is Scoring.SIDE_OUT and not game.is_over and game.we_serve is not ours
    )


def ask_whose_serve(desk: Desk, match: MatchId, *, ours: bool) -> Reply:
    """The side told to have scored doesn't serve by the log: a rally, or a serve missed?"""
    log = desk.log()
    game, expected = log.match.game, log.lines + 1
    points = (game.ours, game.theirs) if ours else (game.theirs, game.ours)
    number = 2 if is_opening(game) else 1
    call = ScoreCall(
        serving=points[0] + 1,
        receiving=points[1],
        server=number if game.format.has_two_servers else None,
    )
    side = wording("score.side_us" if game.we_serve else "score.side_them")
    rally, serve = ("our_rally", "we_serve_at") if ours else ("their_rally", "they_serve_at")
    who = "us" if ours else "them"
    buttons = [
        Button(label=wording(f"match.{rally}"), payload=tap(Verb.RALLY, who, match, expected)),
        Button(
            label=wording(f"score.{serve}").format(call=call),
            payload=tap(Verb.SCORE, who, call, match, expected),
        ),
    ]
    text = wording("score.only_server").format(side=side)
    return Reply(text=text, buttons=rows(buttons), about=("match", match))
