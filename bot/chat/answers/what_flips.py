"""What would change the last call: each thing that it left open, supposed and weighed again.

What is supposed is for this reply only, and nothing of it is stored.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from bot.chat.answers.advised import SCORE_TOPICS, advice_on, advised
from bot.chat.answers.desk import Desk
from bot.chat.answers.in_words import with_caution
from bot.chat.answers.settled_by_tap import with_fact
from bot.chat.answers.standing import Standing, cannot_be, standing
from bot.chat.asked import Asked
from bot.chat.payload import BadPayloadError, Verb, tap, word_in
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.supposed import with_trait
from bot.chat.wording import wording
from knowledge.advice import Advice, Choice, MatchFact
from knowledge.evidence import Profile
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import Topic, Trait, Value

MOST_LINES = 3
"""Things that change it, the ones that the answer itself asks for first."""

_OTHER_QUESTIONS = frozenset(
    {MatchFact.ABOUT, MatchFact.SYMPTOM, MatchFact.WEATHER, MatchFact.RULE}
)
"""What a button asks anew about somebody or something else: no change of this call."""
_NOT_OF_NOTES = SCORE_TOPICS | {
    Topic.RULES_QUESTION,
    Topic.WEATHER_OR_BODY,
    Topic.RESET_HEAD,
    Topic.STACK_OR_NOT,
    Topic.PAIR_UP,
}


def what_flips(desk: Desk, asked: Asked) -> Reply:
    """The call, and what would make it another one."""
    where = standing(desk, asked)
    if where.faults:
        return cannot_be(asked, where)
    advice, situation = advice_on(desk, asked, where)
    desk.trace |= {"advice": advice, "situation": situation, "topic": asked.topic}
    found = [*_settled(desk, asked, where, advice, situation), *_changed_up(advice)]
    found = list(dict.fromkeys(found))[:MOST_LINES]
    noted = _without_notes(desk, asked.topic, advice, situation)
    lines = [f"· {one}" for one in (*found, *noted, *_unless(advice))]
    title = wording("flips.title" if lines else "flips.nothing")
    why = Button(label=wording("why"), payload=tap(Verb.WHY, asked.topic), topic=asked.topic)
    caution = with_caution(asked, advice, situation).caution
    told = [advice.call, title, *lines, caution]
    return Reply(text="\n".join(filter(None, told)), buttons=rows([why]))


def _unless(advice: Advice) -> Iterator[str]:
    """When the answer itself says to do otherwise, where no button asks for that already."""
    labels = {choice.label.split()[0].casefold() for choice in advice.choices}
    if advice.unless and labels.isdisjoint(advice.unless.casefold().replace("?", " ").split()):
        yield advice.unless


def _settled(
    desk: Desk, asked: Asked, where: Standing, advice: Advice, situation: Situation
) -> Iterator[str]:
    """What the answer's own buttons would settle, where that makes another call of it."""
    for choice in advice.choices:
        other = _supposed(desk, asked, where, situation, choice)
        if other is not None and other.call != advice.call:
            label = choice.label
            if label.split()[0] not in {one.name for one in (*situation.ours, *situation.theirs)}:
                label = label[0].lower() + label[1:]
            yield wording("flips.if").format(what=label, call=other.call)


def _supposed(
    desk: Desk, asked: Asked, where: Standing, situation: Situation, choice: Choice
) -> Advice | None:
    if choice.fact is None or choice.value is None or choice.topic is not asked.topic:
        return None
    if choice.fact in {*Trait}:
        if choice.about is None:
            return None
        trait, value = Trait(choice.fact), Value(choice.value)
        return advised(desk, with_trait(situation, choice.about, trait, value), traced=False)
    fact = word_in(MatchFact, choice.fact)
    if fact in _OTHER_QUESTIONS:
        return None
    stood = desk.context
    try:
        settled = with_fact(desk, asked, fact, choice.value, choice.about)
        return advice_on(desk, settled, where)[0]
    except BadPayloadError:
        return None
    finally:
        desk.context = stood


def _changed_up(advice: Advice) -> Iterator[str]:
    """The sign for the change-up, where they may guess the call."""
    change = None if advice.mix is None else advice.mix.change_up
    if advice.mix is not None and change is not None:
        yield wording("flips.when").format(trigger=advice.mix.trigger, call=change.call)


def _without_notes(desk: Desk, topic: Topic, advice: Advice, situation: Situation) -> Iterator[str]:
    """What it would be with nothing noted of anybody; where nothing is, that a note might."""
    if not any(one.profile.is_known for one in (*situation.ours, *situation.theirs)):
        if topic not in _NOT_OF_NOTES:
            yield wording("flips.no_notes")
        return
    bare = replace(
        situation,
        ours=tuple(map(_unknown, situation.ours)),
        theirs=tuple(map(_unknown, situation.theirs)),
        jammed_hips=(),
        kept_words=(),
    )
    other = advised(desk, bare, traced=False)
    if other.call != advice.call:
        yield wording("flips.unnoted").format(call=other.call)


def _unknown(one: OnCourt) -> OnCourt:
    return replace(one, profile=Profile(player=one.player, name=one.name))
