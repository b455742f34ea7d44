"""What costs us rallies, asked outright: what this match's log says, and the change against it."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.reviewed import endings_of, reviewed
from bot.chat.asked import Asked
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.planning.review_counts import FEW, our_errors
from knowledge.rally_ends import STROKES
from knowledge.vocabulary import Topic


def what_costs(desk: Desk, text: str) -> Reply:
    """The stroke that most of our errors were made with, counted as a review counts it, and what
    to change if that is the leak; without enough of them what to change as things stand.
    """
    match = reviewed(desk)
    errors = None if match is None else our_errors(endings_of(desk, match))
    if errors is None:
        return answer_asked(desk, Asked(topic=Topic.ADJUST, text=text))
    stroke = wording(f"stroke.{errors.stroke}")
    lines = [wording("review.errors").format(stroke=stroke, count=errors.count, of=errors.of)]
    if errors.count < FEW:
        lines.append(wording("review.few"))
    missed = f"we keep missing our {STROKES[errors.stroke]}"
    reply = answer_asked(desk, Asked(topic=Topic.ADJUST, text=missed))
    return replace(reply, text="\n".join([*lines, "", reply.text]))
