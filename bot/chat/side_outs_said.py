"""A side-out told with the score that it came at or led to: "12-13 us side out"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.message import Message
from bot.chat.rally_details import read_rally
from bot.chat.said import SaidScore, ScoreSaid
from bot.chat.score_each import score_line
from bot.chat.score_groups import score_group
from bot.chat.score_words import SIDE_OUT, SIDE_OUT_AFTER
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.game import ScoreCall, Scoring


def with_lost_rally(score: ScoreSaid, message: Message, chat: ChatView) -> ScoreSaid:
    """ "Side out, hale netted it": whoever lost that rally lost the serve with it.

    The name behind a side-out is whom the serve goes to only where nothing is told of them.
    """
    is_alone = score.side_out and (score.score is None or score.score.call is None)
    if not is_alone or score.rally_ours is not None:
        return score
    told = read_rally(message, chat)
    if told.won_by_us is None or told.details.ending is None or told.unknown:
        return score
    return replace(score, score=SaidScore(we_serve=told.won_by_us), rally_ours=told.won_by_us)


def with_side_out(score: ScoreSaid, said: Sequence[Word], scoring: Scoring) -> ScoreSaid:
    """ "4-5 side out": a side-out came at the call of nobody's by name, so the serve goes over.

    The first server's call is one that the side-out led to; in rally scoring every rally scores.
    Where it is said whose points are whose, the call keeps in which order they were told.
    """
    found = score.score
    is_told = SIDE_OUT.search(score_line(said, None)) or SIDE_OUT_AFTER.search(score.text)
    if found is None or not is_told or scoring is not Scoring.SIDE_OUT:
        return score
    if found.ours is not None and (found.we_serve, found.server) == (None, None):
        group = score_group(said)
        if group is None:
            return replace(score, score=replace(found, server=1))
        call = ScoreCall(serving=group.numbers[0], receiving=group.numbers[1], server=None)
        return replace(score, side_out=True, score=replace(found, call=call))
    if found.call is None or (found.ours, found.we_serve) != (None, None):
        return score
    return score if found.call.server == 1 else replace(score, side_out=True)
