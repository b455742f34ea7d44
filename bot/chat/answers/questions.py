"""Questions: gather what is known, let the engine advise, render the reply."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import TypedDict

from bot.chat.answers.aims import with_aims
from bot.chat.answers.as_asked import as_asked
from bot.chat.answers.behind import behind_lines
from bot.chat.answers.desk import Desk
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.answers.own_rates import base_rates, faulty_rates, keep_rates
from bot.chat.answers.pair_card import with_card
from bot.chat.answers.plan_book import IS_PLAN, keep_plan, with_plan_memory
from bot.chat.answers.plan_buttons import plan_buttons
from bot.chat.answers.plan_people import people_fault
from bot.chat.answers.scout_card import scout_button
from bot.chat.answers.standing import Standing, cannot_be, standing
from bot.chat.answers.wind_of_today import in_the_wind
from bot.chat.answers.write_down import write_down
from bot.chat.changed import changed, in_last_frame, is_same_again
from bot.chat.context import Asked, Depth
from bot.chat.example_people import with_example
from bot.chat.gather import gather, people_of
from bot.chat.render import leaves_out, offer_buttons, render, render_more, shown_of, with_buttons
from bot.chat.reply import Reply
from bot.chat.said import Question
from bot.chat.supposed import supposing
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.complaints import complains, complains_of_us
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.tactics import advise, advise_traced
from knowledge.vocabulary import Mode, Topic

SCORE_TOPICS = frozenset(
    {
        Topic.WIN_CHANCE,
        Topic.RISK_AT_SCORE,
        Topic.TIMEOUT_NOW,
        Topic.CHOOSE_END_OR_SERVE,
    }
)
"""Topics that weigh rallies, and so need the book's base rates and the rallies logged."""


def answer(desk: Desk, question: Question, *, short: bool | None = None) -> Reply:
    """The answer, or which of several alike names is meant: the only question we ask first.

    `short`: the call and its best reason, as in a match.
    """
    mentions = by_pair(desk, question.slots.mentions)
    about = settled(mentions)
    if about is None:
        return ask_which(desk, question.text, mentions)
    if question.topic is Topic.GAME_PLAN:
        fault = people_fault(desk, question.text, mentions)
        if fault is not None:
            return fault
    rates = question.slots.rates
    taken_back = keep_rates(desk, rates) if rates is not None and rates.holds else []
    last = desk.context.asked
    is_faulty = rates is not None and rates.fault is not None
    if question.changes and last is not None and not is_faulty:
        about = settled([one for one in mentions if not is_same_again(one)]) or ()
        asked = as_asked(desk, question, about)
        if asked.score is not None:
            score = in_last_frame(asked.score, question.slots, last.score)
            asked = replace(asked, score=score, we_serve=None)
        reply = _answer_changed(desk, question, last, changed(last, asked))
        return with_buttons(reply, taken_back)
    asked = in_the_wind(desk, as_asked(desk, question, about))
    if rates is not None and rates.fault is not None:
        desk.context = replace(desk.context, asked=asked)
        return with_buttons(faulty_rates(desk, rates), taken_back)
    reply = answer_asked(desk, asked, offers=question.offers, short=short)
    return with_buttons(reply, [*write_down(desk, question), *taken_back])


_TOLD = ("call", "reasons", "lines", "number", "numbers", "mix")
"""Parts of an advice that make it another answer."""


def _answer_changed(desk: Desk, question: Question, last: Asked, asked: Asked) -> Reply:
    """The last question again with what is said now; where that changes nothing, the call does."""
    was, where = standing(desk, last), standing(desk, asked)
    reply = answer_asked(desk, asked, offers=question.offers)
    if asked == last or asked.about != last.about or asked.topic is not last.topic:
        return reply
    if was.faults or where.faults:
        return reply
    before, _ = _advice(desk, last, was)
    now: Advice = desk.trace["advice"]
    if any(getattr(before, part) != getattr(now, part) for part in _TOLD):
        return reply
    desk.context = replace(desk.context, told=Depth.CALL)
    weather = asked.wind is not last.wind or asked.sun is not last.sun
    text = "\n".join([now.call, wording("changes_nothing")])
    more = offer_buttons([Topic.WEATHER_OR_BODY]) if weather else ()
    return with_buttons(replace(reply, text=text, picture=None), more)


_WANTS_PICTURE = regex(r"\b(?:picture|graph|curve|chart|draw)\b", re.IGNORECASE)
"""In a match answers are short and without a picture, unless one is asked for."""


def answer_asked(
    desk: Desk, asked: Asked, *, offers: tuple[Topic, ...] = (), short: bool | None = None
) -> Reply:
    """Answer a question as remembered: a text and a tap take the same road from here.

    How long, the mode says, unless `short` is given. Small talk leaves the question before it
    standing, so that "why?" after a "thanks" is still about that one.
    """
    if short is None:
        short = _is_short(desk, asked)
    if asked.topic is not Topic.SMALLTALK_OR_UNKNOWN:
        desk.context = replace(
            desk.context.looking_at(*(asked.about or desk.context.focus)),
            asked=asked,
            told=Depth.SHORT if short else Depth.FULL,
            asked_last=True,
        )
    where = standing(desk, asked)
    if where.faults:
        desk.trace |= {"topic": asked.topic}
        return cannot_be(asked, where)
    advice, situation = _advice(desk, asked, where)
    desk.trace |= {"advice": advice, "topic": asked.topic, "situation": situation}
    keep_plan(desk, advice, situation)
    reply = _told(desk, asked, advice, situation, offers=offers, short=short)
    if asked.topic in _WATCHED and not short and situation.theirs:
        about = [one.player for one in situation.theirs]
        reply = with_buttons(reply, [scout_button(asked.about or about)])
    if IS_PLAN in advice.numbers and asked.topic is Topic.GAME_PLAN and not short:
        reply = with_buttons(reply, plan_buttons(desk, situation))
    is_card = asked.topic is Topic.PAIR_UP and not short
    return with_card(desk, reply, advice, situation) if is_card else reply


def _told(
    desk: Desk,
    asked: Asked,
    advice: Advice,
    situation: Situation,
    *,
    offers: tuple[Topic, ...],
    short: bool,
) -> Reply:
    """The advice as a reply: the same advice to the same question is not put into words again."""
    ours, theirs = (tuple(one.name for one in pair) for pair in (situation.ours, situation.theirs))
    return desk.views.replies.recall(
        (asked, offers, short),
        (advice, ours, theirs),
        lambda: _rendered(asked, advice, situation, offers=offers, short=short),
    )


def _rendered(
    asked: Asked,
    advice: Advice,
    situation: Situation,
    *,
    offers: tuple[Topic, ...],
    short: bool,
) -> Reply:
    cautioned = _with_caution(asked, advice, situation)
    if cautioned is not advice:
        offers = tuple(dict.fromkeys((Topic.WEATHER_OR_BODY, *offers)))
    if asked.topic is Topic.WEATHER_OR_BODY and complains(asked.text):
        offers = tuple(topic for topic in offers if topic in _BESIDE_A_BODY)
    return render(cautioned, short=short, offers=offers, **_around(asked, situation))


def _is_short(desk: Desk, asked: Asked) -> bool:
    """Whether the mode makes an answer short."""
    return desk.context.mode is Mode.MATCH and not _WANTS_PICTURE.search(asked.text)


class _Around(TypedDict):
    """What a reply says beside its advice, as `render` takes it."""

    against: Sequence[str]
    keeps_read: bool
    faults: Sequence[str]


def _around(asked: Asked, situation: Situation) -> _Around:
    return _Around(
        against=[one.name for one in situation.theirs] if _is_about_them(asked.topic) else (),
        keeps_read=asked.topic in {*SCORE_TOPICS, Topic.WHERE_TO_STAND} and _says_score(asked),
        faults=_faults(asked),
    )


def _with_caution(asked: Asked, advice: Advice, situation: Situation) -> Advice:
    """The advice; where one of us hurts, never without a word on that."""
    if not _hides_complaint(asked, advice, situation):
        return advice
    return replace(advice, caution=wording("hurts"))


def _faults(asked: Asked) -> list[str]:
    """What was said of the ball and cannot be, a line each; a storm the weather page answers."""
    if asked.facts is None or asked.facts.fault is None or asked.topic is Topic.WEATHER_OR_BODY:
        return []
    return asked.facts.fault.splitlines()


_BESIDE_A_BODY = frozenset({Topic.TIMEOUT_NOW, Topic.RULES_QUESTION})
"""What may be offered to somebody hurt: a break and its rules, and no tactics."""


def _hides_complaint(asked: Asked, advice: Advice, situation: Situation) -> bool:
    """Whether one of us hurts, in a question about something else that has no caution."""
    names = [one.name for one in situation.ours if one.name]
    return (
        asked.topic is not Topic.WEATHER_OR_BODY
        and advice.caution is None
        and complains_of_us(asked.text, names=names)
    )


def _is_about_them(topic: Topic) -> bool:
    """Whether the answer rests on who they are; what we do among ourselves does not."""
    return topic not in _WITHOUT_THEM


_WATCHED = frozenset({Topic.OPPONENT_REPORT, Topic.PROBE})
"""Topics after which one may want to see for oneself: a card of taps is offered."""

_WITHOUT_THEM = frozenset(
    {
        Topic.RESET_HEAD,
        Topic.STACK_OR_NOT,
        Topic.PAIR_UP,
        Topic.RULES_QUESTION,
        Topic.WEATHER_OR_BODY,
        Topic.SMALLTALK_OR_UNKNOWN,
    }
)


def _says_score(asked: Asked) -> bool:
    """Whether what was read of the score comes from the question: then it must be seen."""
    said = (asked.score, asked.we_serve, asked.games, asked.format)
    return any(one is not None for one in said)


def explain(desk: Desk, topic: Topic) -> Reply:
    """The reasons in full, for the last question of that topic."""
    advice = advice_again(desk, topic)
    if isinstance(advice, Reply):
        return advice
    desk.context = replace(desk.context, told=Depth.REASONS)
    asked, situation = _asked_of(desk, topic), desk.trace["situation"]
    shown = shown_of(
        _with_caution(asked, advice, situation),
        short=_is_short(desk, asked),
        **_around(asked, situation),
    )
    behind = behind_lines(desk, advice)
    has_more = bool(advice.more) or leaves_out(advice, shown)
    desk.trace |= {"has_more": has_more}
    if has_more or behind:
        return render_more(advice, shown=shown, behind=behind)
    return render(advice)


def _asked_of(desk: Desk, topic: Topic) -> Asked:
    """The last question, if it was of that topic."""
    asked = desk.context.asked
    return asked if asked is not None and asked.topic is topic else Asked(topic=topic, text="")


def advice_again(desk: Desk, topic: Topic) -> Advice | Reply:
    """What the last question of that topic was told, or that its score cannot be."""
    asked = _asked_of(desk, topic)
    desk.trace |= {"topic": topic}
    where = standing(desk, asked)
    if where.faults:
        return cannot_be(asked, where)
    advice, situation = _advice(desk, asked, where, traced=True)
    desk.trace |= {"advice": advice, "situation": situation}
    return advice


def explain_last(desk: Desk) -> Reply:
    """The reasons of the last answer, for a typed "why?"."""
    if desk.context.asked is None:
        return Reply(text=wording("unclear.why"))
    return explain(desk, desk.context.asked.topic)


def _advice(
    desk: Desk, asked: Asked, where: Standing, *, traced: bool = False
) -> tuple[Advice, Situation]:
    """What the engine says, and what it was told."""
    situation = situation_for(desk, asked, where)
    return advised(desk, situation, traced=traced), situation


def advised(desk: Desk, situation: Situation, *, traced: bool) -> Advice:
    """What the engine says: an equal situation is not weighed again."""
    weigh = advise_traced if traced else advise
    key = (traced, situation.topic, situation.asked)
    return desk.views.advice.recall(key, (situation,), lambda: weigh(situation))


def situation_for(desk: Desk, asked: Asked, where: Standing) -> Situation:
    """Everything known that the answer may use."""
    asked = with_example(asked, desk.context, desk.view)
    situation = gather(
        asked,
        desk.context,
        desk.with_profiles(people_of(asked, desk.context, desk.view)),
        game=where.game,
        agreements=desk.agreements(),
        format=where.format if where.is_format_known else None,
        match=where.match,
        played=where.played,
        score_said=where.score_said,
        base_rates=base_rates(desk) if asked.topic in SCORE_TOPICS else None,
        rallies_today=desk.rallies_today() if asked.topic in SCORE_TOPICS else None,
        meetings=desk.meetings() if asked.topic in SCORE_TOPICS else None,
        today=desk.day,
    )
    return with_plan_memory(desk, with_aims(desk, supposing(situation, asked.hands)))
