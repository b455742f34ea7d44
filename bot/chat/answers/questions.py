"""Questions answered, or which of several alike names is meant; a text and a tap take one road."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.advised import advice_on
from bot.chat.answers.as_asked import as_asked
from bot.chat.answers.desk import Desk
from bot.chat.answers.in_words import is_short, told
from bot.chat.answers.names import ask_which, by_pair, rather_meant, settled
from bot.chat.answers.own_rates import faulty_rates, keep_rates
from bot.chat.answers.pair_card import with_card
from bot.chat.answers.plan_book import IS_PLAN, keep_plan
from bot.chat.answers.plan_buttons import plan_buttons
from bot.chat.answers.plan_people import people_fault
from bot.chat.answers.scout_card import scout_button
from bot.chat.answers.serve_asked import spoken_of_otherwise
from bot.chat.answers.standing import OF_A_SCORE, cannot_be, standing
from bot.chat.answers.stands_as_it_was import stands_as_it_was, supposes
from bot.chat.answers.timeouts_told import with_timeouts_told
from bot.chat.answers.wind_of_today import in_the_wind
from bot.chat.answers.write_down import write_down
from bot.chat.changed import changed, in_last_frame, is_same_again
from bot.chat.context import Asked, Depth
from bot.chat.follow_ups import only_names
from bot.chat.pronouns import only_contrasts
from bot.chat.render import offer_buttons, with_buttons
from bot.chat.reply import Reply
from bot.chat.said import Question
from bot.chat.wording import wording
from bot.chat.words import words
from knowledge.advice import Advice
from knowledge.vocabulary import PlayerId, Side, Topic


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
    if _asks_of_the_other(desk, question, about):
        question = replace(question, topic=Topic.OPPONENT_REPORT, changes=False)
    rates = question.slots.rates
    taken_back = keep_rates(desk, rates) if rates is not None and rates.holds else []
    last = desk.context.asked
    is_faulty = rates is not None and rates.fault is not None
    if question.changes and last is not None and not is_faulty:
        is_other = only_contrasts(words(question.text))
        about = settled([one for one in mentions if is_other or not is_same_again(one)]) or ()
        asked = as_asked(desk, question, about)
        _keep_places(desk, question, asked)
        if asked.score is not None:
            score = in_last_frame(asked.score, question.slots, last.score)
            asked = replace(asked, score=score, we_serve=None)
        reply = _answer_changed(desk, question, last, changed(last, asked))
        return with_buttons(reply, taken_back)
    asked = with_timeouts_told(desk, in_the_wind(desk, as_asked(desk, question, about)))
    _keep_places(desk, question, asked)
    if rates is not None and rates.fault is not None:
        desk.context = replace(desk.context, asked=asked)
        return with_buttons(faulty_rates(desk, rates), taken_back)
    reply = answer_asked(desk, asked, offers=question.offers, short=short)
    others = rather_meant(desk, question.text, mentions)
    return with_buttons(reply, [*others, *write_down(desk, question), *taken_back])


_OF_BOTH = frozenset({Topic.WHOM_TO_TARGET, Topic.ANSWER_PATTERN})
"""Topics whose answer is about both of them, or about whoever does it."""


def _asks_of_the_other(desk: Desk, question: Question, about: Sequence[PlayerId]) -> bool:
    """ "And ingrid?" behind whom to target: what is known of her, where the same would come again.

    A habit asked of somebody by name goes on with the next one's.
    """
    last = desk.context.asked
    if last is None or question.topic is not last.topic or last.topic not in _OF_BOTH:
        return False
    if len(about) != 1 or about[0] in desk.ours:
        return False
    of_nobody = last.topic is Topic.WHOM_TO_TARGET or not last.about
    return of_nobody and only_names(words(question.text), question.slots.mentions)


def _keep_places(desk: Desk, question: Question, asked: Asked) -> None:
    """Who of us plays left holds from now on, as after a tap; a case that is put holds for itself.

    The question itself keeps it too, so that "what if she plays left" is weighed against it.
    """
    if asked.plays_left is not None and not supposes(question.text):
        desk.context = desk.context.with_side(asked.plays_left, Side.LEFT)


_TOLD = ("call", "reasons", "lines", "number", "numbers", "mix")
"""Parts of an advice that make it another answer."""


def _answer_changed(desk: Desk, question: Question, last: Asked, asked: Asked) -> Reply:
    """The last question again with what is said now; where that changes nothing, the call does."""
    was, where = standing(desk, last), standing(desk, asked)
    reply = answer_asked(desk, asked, offers=question.offers)
    slots = question.slots  # what is said of those answers, and may be as it was
    counts_already = asked == last and (slots.wind, slots.our_place) != (None, None)
    if asked == last and supposes(question.text) and not counts_already:
        desk.context = replace(desk.context, told=Depth.CALL)
        return stands_as_it_was(reply, question.text, wording("not_weighed"))
    if asked == last or asked.about != last.about or asked.topic is not last.topic:
        return reply
    if was.faults or where.faults:
        return reply
    before, _ = advice_on(desk, last, was)
    now: Advice = desk.trace["advice"]
    if any(getattr(before, part) != getattr(now, part) for part in _TOLD):
        return reply
    desk.context = replace(desk.context, told=Depth.CALL)
    weather = asked.wind is not last.wind or asked.sun is not last.sun
    is_said = where.score_said or question.slots.score is not None
    is_of_score = is_said and asked.topic in OF_A_SCORE
    whose = [now.assumed] if is_of_score and now.assumed is not None else []
    in_it = [now.unless] if weather and now.unless and now.unless != before.unless else []
    why = "\n".join([wording("changes_nothing"), *whose, *in_it])
    more = offer_buttons([Topic.WEATHER_OR_BODY]) if weather else ()
    stands = stands_as_it_was(reply, question.text, why)
    return with_buttons(stands, more)


def answer_asked(
    desk: Desk, asked: Asked, *, offers: tuple[Topic, ...] = (), short: bool | None = None
) -> Reply:
    """Answer a question as remembered: a text and a tap take the same road from here.

    How long, the mode says, unless `short` is given. Small talk leaves the question before it
    standing, so that "why?" after a "thanks" is still about that one.
    """
    if short is None:
        short = is_short(desk, asked)
    if asked.topic is not Topic.SMALLTALK_OR_UNKNOWN:
        spoken_of_otherwise(desk)
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
    advice, situation = advice_on(desk, asked, where)
    desk.trace |= {"advice": advice, "topic": asked.topic, "situation": situation}
    keep_plan(desk, advice, situation)
    reply = told(desk, asked, advice, situation, offers=offers, short=short)
    if asked.topic in _WATCHED and not short and situation.theirs:
        about = [one.player for one in situation.theirs]
        reply = with_buttons(reply, [scout_button(asked.about or about)])
    if IS_PLAN in advice.numbers and asked.topic is Topic.GAME_PLAN and not short:
        reply = with_buttons(reply, plan_buttons(desk, situation))
    is_card = asked.topic is Topic.PAIR_UP and not short
    return with_card(desk, reply, advice, situation) if is_card else reply


_WATCHED = frozenset({Topic.OPPONENT_REPORT, Topic.PROBE})
"""Topics after which one may want to see for oneself: a card of taps is offered."""
