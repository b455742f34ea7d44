"""Several rallies told at once: counted by a tap, since some of them may be counted already."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import with_score
from bot.chat.answers.no_match import no_match
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import RemarkSaid
from bot.chat.wording import wording
from knowledge.game import GameState, after


def ask_of_several(desk: Desk, said: RemarkSaid) -> Reply:
    """ "Our rally x3": whether the score is now the one that three more rallies lead to."""
    match, log = desk.context.match, desk.log()
    if match is None:
        return no_match(desk)
    number, ours = said.number, said.ours is True
    is_counted = number is not None and log.serve_known
    game = _after_all(log.match.game, number or 0, ours=ours) if is_counted else None
    if game is None:
        return with_score(desk, match, wording("score.again"))
    key = "score.we_serve_at" if game.we_serve else "score.they_serve_at"
    who = "us" if game.we_serve else "them"
    button = Button(
        label=wording(key).format(call=game.call),
        payload=tap(Verb.SCORE, who, game.call, match, log.lines + 1),
    )
    side = wording("score.run_us" if ours else "score.run_them")
    text = wording("score.run").format(number=number, side=side)
    score, buttons = scoreboard(desk, match)
    return Reply(
        text="\n".join([text, score]), buttons=rows([button, *buttons]), about=("match", match)
    )


def _after_all(game: GameState, number: int, *, ours: bool) -> GameState | None:
    """The game after so many rallies of one side; None where it would end before or with them."""
    for _ in range(number):
        if game.is_over:
            return None
        game = after(game, won_by_us=ours)
    return None if game.is_over else game
