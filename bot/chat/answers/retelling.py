"""The last answer otherwise told: more or less of it, the same once more, its mix or a draw."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.explaining import advice_again, explain
from bot.chat.answers.from_where import from_where
from bot.chat.answers.how_sure import how_sure
from bot.chat.answers.mixes import pick, show_mix
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.what_flips import what_flips
from bot.chat.answers.without_note import without_note
from bot.chat.context import Asked, Depth
from bot.chat.render import offer_buttons, rows
from bot.chat.reply import Reply
from bot.chat.said import Retelling, RetellSaid
from bot.chat.wording import wording
from knowledge.vocabulary import Topic

_NEXT = (Topic.COVER_MIDDLE, Topic.AIM_DINK, Topic.GAME_PLAN, Topic.CUE)
"""What is offered once all is told."""

OFFERED = 3

_LESS = {Depth.REASONS: Depth.SHORT, Depth.FULL: Depth.SHORT}

_OF_CARE = frozenset([Topic.WEATHER_OR_BODY, Topic.RESET_HEAD])
"""Who is hurt or afraid is told again what to do, and nothing that would change it."""


def retell(desk: Desk, said: RetellSaid) -> Reply:
    """The last answer as is wanted now; a word of help where nothing was asked yet."""
    how = said.how
    if how is Retelling.WITHOUT:
        return without_note(desk, said.text)
    asked = desk.context.asked
    if asked is None:
        key = "unclear.how_sure" if how is Retelling.SURE else "unclear.why"
        return Reply(text=wording(key))
    told = desk.context.told or Depth.FULL
    match how:
        case Retelling.MORE:
            return _more(desk, asked, told)
        case Retelling.SHORTER:
            return _shorter(desk, asked, told)
        case Retelling.CALL:
            return _at(desk, asked, Depth.CALL)
        case Retelling.TO_PARTNER:
            call = _at(desk, asked, Depth.CALL)
            return replace(call, text=wording("to_partner").format(call=call.text))
        case Retelling.AGAIN:
            return _at(desk, asked, told)
        case Retelling.MIX:
            return show_mix(desk, asked.topic)
        case Retelling.PICK:
            return pick(desk, asked.topic)
        case Retelling.SURE:
            return how_sure(desk, asked.topic)
        case Retelling.FLIPS:
            is_of_care = asked.topic in _OF_CARE
            return _at(desk, asked, told) if is_of_care else what_flips(desk, asked)
        case Retelling.FROM:
            return from_where(desk, asked.topic)
        case Retelling.FIGURE:
            return _behind_a_figure(desk, asked.topic)


def _more(desk: Desk, asked: Asked, told: Depth) -> Reply:
    if told in (Depth.CALL, Depth.SHORT):
        return _at(desk, asked, Depth.FULL)
    if told is Depth.FULL:
        reply = explain(desk, asked.topic)
        if desk.trace.get("has_more", True):
            return reply
    topics = [topic for topic in _NEXT if topic is not asked.topic]
    return Reply(text=wording("all_told"), buttons=rows(offer_buttons(topics[:OFFERED])))


def _behind_a_figure(desk: Desk, topic: Topic) -> Reply:
    """ "Why 3 of 10": what varying is worth where that is the mix, else all the reasons."""
    advice = advice_again(desk, topic)
    is_mixed = not isinstance(advice, Reply) and advice.mix is not None
    return show_mix(desk, topic) if is_mixed else explain(desk, topic)


def _shorter(desk: Desk, asked: Asked, told: Depth) -> Reply:
    """Less of it than was told; the call alone where the short form is all there was."""
    before = _at(desk, asked, told).text if told is Depth.FULL else ""
    reply = _at(desk, asked, _LESS.get(told, Depth.CALL))
    return _at(desk, asked, Depth.CALL) if reply.text == before else reply


def _at(desk: Desk, asked: Asked, depth: Depth) -> Reply:
    if depth is Depth.REASONS:
        return explain(desk, asked.topic)
    reply = answer_asked(desk, asked, short=depth is not Depth.FULL)
    desk.context = replace(desk.context, told=depth)
    return replace(reply, text=reply.text.splitlines()[0]) if depth is Depth.CALL else reply
