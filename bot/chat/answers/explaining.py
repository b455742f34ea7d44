"""The reasons in full of the last answer: "why?", typed or tapped."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.advised import advice_on
from bot.chat.answers.behind import behind_lines
from bot.chat.answers.desk import Desk
from bot.chat.answers.in_words import around, is_short, with_caution
from bot.chat.answers.standing import cannot_be, standing
from bot.chat.context import Asked, Depth
from bot.chat.payload import Verb, tap
from bot.chat.render import leaves_out, render, render_more, shown_of
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.vocabulary import Topic


def explain(desk: Desk, topic: Topic) -> Reply:
    """The reasons in full, for the last question of that topic."""
    advice = advice_again(desk, topic)
    if isinstance(advice, Reply):
        return advice
    desk.context = replace(desk.context, told=Depth.REASONS)
    asked, situation = _asked_of(desk, topic), desk.trace["situation"]
    shown = shown_of(
        with_caution(asked, advice, situation),
        short=is_short(desk, asked),
        **around(asked, situation),
    )
    behind = behind_lines(desk, advice)
    has_more = bool(advice.more) or leaves_out(advice, shown)
    desk.trace |= {"has_more": has_more}
    if has_more or behind:
        return render_more(advice, shown=shown, behind=behind)
    return render(advice)


def explain_last(desk: Desk) -> Reply:
    """The reasons of the last answer, for a typed "why?"; of one before a question of ours they are
    a tap away."""
    asked = desk.context.asked
    if asked is None:
        return Reply(text=wording("unclear.why"))
    if desk.context.told is None:
        return Reply(text=wording("unclear.why_which"), buttons=((_why_before(asked.topic),),))
    return explain(desk, asked.topic)


def _why_before(topic: Topic) -> Button:
    label = wording("unclear.why_before").format(topic=wording(f"topic.{topic}"))
    return Button(label=label, payload=tap(Verb.WHY, topic), topic=topic)


def advice_again(desk: Desk, topic: Topic) -> Advice | Reply:
    """What the last question of that topic was told, or that its score cannot be."""
    asked = _asked_of(desk, topic)
    desk.trace |= {"topic": topic}
    where = standing(desk, asked)
    if where.faults:
        return cannot_be(asked, where)
    advice, situation = advice_on(desk, asked, where, traced=True)
    desk.trace |= {"advice": advice, "situation": situation}
    return advice


def _asked_of(desk: Desk, topic: Topic) -> Asked:
    """The last question, if it was of that topic."""
    asked = desk.context.asked
    return asked if asked is not None and asked.topic is topic else Asked(topic=topic, text="")
