"""A score told with a question of chances before any game is under way: answered, never stored.

Whoever wonders the day before what 9-10-2 would be worth has not begun their match; whoever has,
and counted nothing so far, keeps it with one tap.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.score_faults import faults_of_state
from bot.chat.payload import Verb, tap
from bot.chat.reply import Button
from bot.chat.said import Question, ScoreSaid, Unclear, Understood
from bot.chat.score_reading import state_said
from bot.chat.wording import wording
from knowledge.vocabulary import Topic


def only_chances_asked(told: Sequence[Understood], asked: Sequence[Understood]) -> bool:
    """Whether scores are all that is told, and our chances all that is asked."""
    are_scores = all(isinstance(one, ScoreSaid) and one.rally_ours is None for one in told)
    topics = {one.topic for one in asked if isinstance(one, Question)}
    return are_scores and topics == {Topic.WIN_CHANCE}


def kept_by_tap(desk: Desk, told: Sequence[Understood]) -> list[Button]:
    """The taps that store those scores; none where no match is announced or nobody has such one."""
    match = desk.context.match
    if match is None:
        return []
    buttons = []
    for said in told:
        read = state_said(said, None, desk.format()) if isinstance(said, ScoreSaid) else None
        if read is None or faults_of_state(read.game):
            continue
        key = "score.we_serve_at" if read.game.we_serve else "score.they_serve_at"
        who = "us" if read.game.we_serve else "them"
        payload = tap(Verb.SCORE, who, read.game.call, match, desk.log().lines + 1)
        buttons.append(Button(label=wording(key).format(call=read.game.call), payload=payload))
    return buttons


def of_the_match(question: Question | Unclear) -> Question | Unclear:
    """The question without the score and the serve that stand in the log now, or can't be."""
    return replace(question, slots=replace(question.slots, score=None, serving=None))
