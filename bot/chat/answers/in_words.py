"""The advice on a question as a reply: how long, about whom, with what is to be said beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import TypedDict

from bot.chat.answers.advised import SCORE_TOPICS
from bot.chat.answers.desk import Desk
from bot.chat.context import Asked
from bot.chat.render import render
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.complaints import complains, complains_of_us
from knowledge.planning.cue_for import asks_several
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.vocabulary import Mode, Topic

_WANTS_PICTURE = regex(r"\b(?:picture|graph|curve|chart|draw)\b", re.IGNORECASE)
"""In a match answers are short and without a picture, unless one is asked for."""

_BESIDE_A_BODY = frozenset({Topic.TIMEOUT_NOW, Topic.RULES_QUESTION})
"""What may be offered to somebody hurt: a break and its rules, and no tactics."""

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
"""Topics whose answer does not rest on who they are."""


def is_short(desk: Desk, asked: Asked) -> bool:
    """Whether the mode makes an answer short."""
    wants_more = asked.topic is Topic.CUE and asks_several(asked.text)
    is_match = desk.context.mode is Mode.MATCH
    return is_match and not wants_more and not _WANTS_PICTURE.search(asked.text)


def told(
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
    cautioned = with_caution(asked, advice, situation)
    if cautioned is not advice:
        offers = tuple(dict.fromkeys((Topic.WEATHER_OR_BODY, *offers)))
    if asked.topic is Topic.WEATHER_OR_BODY and complains(asked.text):
        offers = tuple(topic for topic in offers if topic in _BESIDE_A_BODY)
    return render(cautioned, short=short, offers=offers, **around(asked, situation))


class Around(TypedDict):
    """What a reply says beside its advice, as `render` takes it."""

    against: Sequence[str]
    keeps_read: bool
    faults: Sequence[str]


def around(asked: Asked, situation: Situation) -> Around:
    """Against whom, whether the score read is shown, and what of the ball cannot be."""
    return Around(
        against=[one.name for one in situation.theirs] if _is_about_them(asked.topic) else (),
        keeps_read=asked.topic in {*SCORE_TOPICS, Topic.WHERE_TO_STAND} and _says_score(asked),
        faults=_faults(asked),
    )


def with_caution(asked: Asked, advice: Advice, situation: Situation) -> Advice:
    """The advice; where one of us hurts, never without a word on that, before its own caution."""
    if not _hides_complaint(asked, advice, situation):
        return advice
    return replace(advice, caution="\n".join(filter(None, (wording("hurts"), advice.caution))))


def _faults(asked: Asked) -> list[str]:
    """What was said of the ball and cannot be, a line each; a storm the weather page answers."""
    if asked.facts is None or asked.facts.fault is None or asked.topic is Topic.WEATHER_OR_BODY:
        return []
    return asked.facts.fault.splitlines()


def _hides_complaint(asked: Asked, advice: Advice, situation: Situation) -> bool:
    """Whether one of us hurts, in a question about something else that says nothing of it.

    "Never at the head" is no word on a shoulder; who defers to medical staff has said it.
    """
    names = [one.name for one in situation.ours if one.name]
    return (
        asked.topic is not Topic.WEATHER_OR_BODY
        and _STAFF not in (advice.caution or "")
        and complains_of_us(asked.text, names=names)
    )


_STAFF = "medical staff"


def _is_about_them(topic: Topic) -> bool:
    """Whether the answer rests on who they are; what we do among ourselves does not."""
    return topic not in _WITHOUT_THEM


def _says_score(asked: Asked) -> bool:
    """Whether what was read of the score comes from the question: then it must be seen."""
    said = (asked.score, asked.we_serve, asked.games, asked.format, asked.rally)
    return any(one is not None for one in said)
