"""Several rallies told at once: counted by a tap, since some of them may be counted already."""

from __future__ import annotations

from collections.abc import Sequence

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
    """ "Our rally x3", "lost it then won one": whether the score is now where these lead to."""
    match, log = desk.context.match, desk.log()
    if match is None:
        return no_match(desk)
    told = said.in_order or (said.ours is True,) * (said.number or 0)
    game = _after_all(log.match.game, told) if told and log.serve_known else None
    if game is None:
        return with_score(desk, match, wording("score.again"))
    key = "score.we_serve_at" if game.we_serve else "score.they_serve_at"
    who = "us" if game.we_serve else "them"
    button = Button(
        label=wording(key).format(call=game.call),
        payload=tap(Verb.SCORE, who, game.call, match, log.lines + 1),
    )
    score, buttons = scoreboard(desk, match)
    return Reply(
        text="\n".join([_asked(told), score]),
        buttons=rows([button, *buttons]),
        about=("match", match),
    )


def _asked(told: Sequence[bool]) -> str:
    """What was heard: so many of one side, or whose each was."""
    sides = [wording("score.run_us" if ours else "score.run_them") for ours in told]
    if len(set(told)) == 1:
        return wording("score.run").format(number=len(told), side=sides[0])
    return wording("score.run_in_order").format(number=len(told), sides=", ".join(sides))


def _after_all(game: GameState, told: Sequence[bool]) -> GameState | None:
    """The game after these rallies; None where it would end before or with them."""
    for ours in told:
        if game.is_over:
            return None
        game = after(game, won_by_us=ours)
    return None if game.is_over else game
