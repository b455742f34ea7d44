"""How the last match against somebody ended, from the book."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.plan_book import day_of, is_meeting
from bot.chat.answers.results import score_of, told_result
from bot.chat.render import offer_buttons, rows
from bot.chat.reply import Reply
from bot.chat.said import BookSaid
from bot.chat.wording import wording
from knowledge.planning.rematch import day_name
from knowledge.vocabulary import Topic

LOOKED_AT = 300
"""Newest matches looked through: years of a pair's."""


def last_meeting_told(desk: Desk, said: BookSaid) -> Reply:
    """Won or lost, the games and the day; that there was none where the book has none."""
    mentions = by_pair(desk, said.mentions)
    players = settled(mentions)
    if players is None:
        return ask_which(desk, said.text, mentions)
    desk.context = desk.context.looking_at(*players)
    for row in desk.book.matches(limit=LOOKED_AT):
        theirs = () if row.their_pair is None else row.their_pair.players
        if is_meeting(desk, row) and {*players} <= {*theirs}:
            break
    else:
        names = "/".join(desk.names(players))
        text = wording("match.never_met").format(names=names)
        return Reply(text=text, buttons=rows(offer_buttons([Topic.GAME_PLAN])))
    result = told_result(desk, row)
    key = {True: "won", False: "lost", None: "open"}[result.won]
    text = wording(f"match.met_{key}").format(
        names="/".join(desk.names(theirs)),
        games=score_of(result.games),
        day=day_name(day_of(desk, row.made_at), today=day_of(desk, desk.now)),
    )
    return Reply(text=text.replace(" ,", ","), about=("match", row.match))
