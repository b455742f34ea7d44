"""How sure the last answer is: the chance that its call is the best, and what that rests on."""

from __future__ import annotations

from bot.chat.answers.behind import chance_of_being_best
from bot.chat.answers.desk import Desk
from bot.chat.answers.explaining import advice_again, explain
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.advice import Advice, Confidence
from knowledge.vocabulary import Topic

_IN_WORDS = {
    Confidence.CLEAR: "sure.clear",
    Confidence.LEAN: "sure.lean",
    Confidence.TOSS_UP: "toss_up",
    Confidence.GENERAL_RULE: "sure.general_rule",
}


def how_sure(desk: Desk, topic: Topic) -> Reply:
    """The figure and its grounds; all reasons where no call was weighed against another.

    A win chance tells among those how far it may be off, a rule where it stands.
    """
    advice = advice_again(desk, topic)
    if isinstance(advice, Reply):
        return advice
    best = chance_of_being_best(advice)
    if not best:
        return explain(desk, topic)
    why = Button(label=wording("why"), payload=tap(Verb.WHY, topic), topic=topic)
    return Reply(text="\n".join([advice.call, *best, *_grounds(advice)]), buttons=rows([why]))


def _grounds(advice: Advice) -> list[str]:
    told = [f"· {one.text} ({one.source})" for one in (advice.reasons or advice.lines)]
    if advice.is_one_of_several:
        return told  # "others come close" is what the figure above says already
    return [wording(_IN_WORDS[advice.confidence]), *told]
