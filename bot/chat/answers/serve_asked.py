"""Who serves, asked of the user: the question stays open, and rallies told meanwhile wait for it.

A rally counted from the score before the one just told would be wrong whichever side serves.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.coachs_pairs import of_which_pair
from bot.chat.answers.desk import Desk
from bot.chat.answers.scoreboard import serve_open
from bot.chat.context import AskedServe
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.game import ScoreCall, is_opening
from scouting_db.values import MatchId


def ask_serve(desk: Desk, match: MatchId, call: ScoreCall) -> Reply:
    """Whose call a bare score was."""
    asked = AskedServe(match=match, call=str(call), n=desk.log().lines + 1)
    desk.context = replace(desk.context, asked_serve=asked)
    return _question(desk, asked)


def ask_first_serve(desk: Desk, match: MatchId) -> None:
    """Note that who serves first was just asked, so that "they do" answers it."""
    asked = AskedServe(match=match, call="", n=desk.log().lines + 1)
    desk.context = replace(desk.context, asked_serve=asked)


def spoken_of_otherwise(desk: Desk) -> None:
    """Something else is answered or asked: between games "me" no longer tells who serves first.

    The rulebook tells that already, and its taps stay; any other question of ours stays open.
    """
    asked = desk.context.asked_serve
    if asked is not None and not asked.call and desk.log().match.game.is_over:
        desk.context = replace(desk.context, asked_serve=None)


def serve_asked_beside(desk: Desk, match: MatchId, reply: Reply) -> Reply:
    """The reply to a score whose points are sure and whose serve is a guess: who serves is asked.

    The points stand and rallies count on from the guess; the taps set the serve at this score.
    """
    log = desk.log()
    game = log.match.game
    if log.match.we_won is not None or game.is_over or is_opening(game):
        return reply
    ask_first_serve(desk, match)
    text, buttons = serve_open(match, log)
    _call, *rest = reply.text.split("\n")
    return replace(reply, text="\n".join([text, *rest]), buttons=(*rows(buttons), *reply.buttons))


def open_call(desk: Desk) -> AskedServe | None:
    """The bare score of which we still ask who serves; None where the log went on since."""
    asked, match = desk.context.asked_serve, desk.context.match
    if asked is None or not asked.call or asked.match != match:
        return None
    return asked if asked.n == desk.log().lines + 1 else None


def keep_waiting(
    desk: Desk, asked: AskedServe, *, ours: bool, text: str = "", corrects: bool = False
) -> Reply:
    """A rally told before who serves is known; a correction takes the place of the one before."""
    before = asked.then[:-1] if corrects else asked.then
    return _waiting(desk, replace(asked, then=(*before, (ours, text))))


def ask_again(desk: Desk, asked: AskedServe) -> Reply:
    """The same question, which what was said did not answer."""
    return _waiting(desk, asked)


def drop_waiting(desk: Desk) -> Reply | None:
    """Take back the rally that waits; None where none does."""
    asked = open_call(desk)
    if asked is None or not asked.then:
        return None
    side = wording("match.our_rally" if asked.then[-1][0] else "match.their_rally")
    reply = _waiting(desk, replace(asked, then=asked.then[:-1]))
    undone = wording("undone").format(what=side)
    return replace(reply, text=f"{undone}\n{reply.text}")


def _waiting(desk: Desk, asked: AskedServe) -> Reply:
    desk.context = replace(desk.context, asked_serve=asked)
    return _question(desk, asked)


def _question(desk: Desk, asked: AskedServe) -> Reply:
    lines = [wording("score.whose").format(call=asked.call), *of_which_pair(desk)]
    if asked.then:
        many = "one" if len(asked.then) == 1 else "many"
        lines.append(wording(f"score.waits_{many}").format(count=len(asked.then)))
    buttons = [
        Button(label=label, payload=tap(Verb.SCORE, who, asked.call, asked.match, asked.n))
        for label, who in ((wording("match.we_serve"), "us"), (wording("match.they_serve"), "them"))
    ]
    return Reply(text="\n".join(lines), buttons=rows(buttons))
