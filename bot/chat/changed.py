"""The question before, with what a short message changes of it: "and on the backhand?"."""

from __future__ import annotations

import re
from dataclasses import fields, replace
from typing import Any

from bot.chat.asked import Asked, SaidState
from bot.chat.said import Mention, Slots
from knowledge.ball_facts import NOTHING_SAID, BallFacts
from knowledge.regex import regex
from knowledge.situation import Wind
from knowledge.tactics.ball_words import settled
from knowledge.vocabulary import Topic

_THE_OTHER = frozenset({"partner", "partners", "pard", "pardner", "p"})
"""What stands for somebody else than was spoken of, though it is no name."""

_SAYS_WHOM = regex(r"\b(?:me|my|her|him|shes?|hes?|partner)\b", re.IGNORECASE)

_STANDS = frozenset({"topic", "text"})


def changed(last: Asked, now: Asked) -> Asked:
    """The last question with everything that is said now; the rest stays as it was.

    Of another topic ("no, I meant the third shot") it keeps whom and what it was about.
    """
    said: dict[str, Any] = {
        field.name: value
        for field in fields(Asked)
        if field.name not in _STANDS and (value := getattr(now, field.name)) not in (None, ())
    }
    if now.wind is Wind.SOME and last.wind is not None:
        said["wind"] = last.wind  # "what if it's windy" tells nothing of one told already
    if now.format is not None and last.format is not None:
        said["format"] = now.format.over_said(last.format)
    if now.topic is not last.topic:
        said |= {"topic": now.topic, "text": now.text}
    if now.topic is Topic.ANSWER_PATTERN:
        said["text"] = now.text  # "and lobbers" names another habit; else these are the last words
    if now.topic is Topic.BEING_TARGETED and _SAYS_WHOM.search(now.text):
        said["text"] = now.text  # whom of us they play at is told by the words alone
    if now.facts is not None:
        said |= _of_the_ball(last, now, now.facts)
    if last.score is not None and now.score is None and now.we_serve is not None:
        said["score"] = last.score._replace(we_serve=now.we_serve, server=None)
    return replace(last, **{"rally": None, **said})


def _of_the_ball(last: Asked, now: Asked, facts: BallFacts) -> dict[str, Any]:
    """The ball's facts as they are now: those said before stand beneath, but no fault does.

    A new height unsays how good a ball the old one made it ("what if it's chest high").
    """
    before = replace(last.facts or NOTHING_SAID, fault=None)
    said: dict[str, Any] = {"facts": settled(facts, before)}
    if facts.height_m is not None and now.ball is None:
        said["ball"] = None
    return said


def is_same_again(mention: Mention) -> bool:
    """Whether it is a "he" or "they", which speaks of whom the question was about already."""
    return mention.pronoun and mention.typed.casefold() not in _THE_OTHER


def in_last_frame(score: SaidState, slots: Slots, last: SaidState | None) -> SaidState:
    """The score of "and at 9-6?": ours first, and who serves as in the last one.

    A call of three numbers is the serving side's own, and without a word of them ours.
    """
    said = slots.score
    if last is None or said is None or said.call is None or said.call.server is not None:
        return score
    if slots.serving is not None or said.we_serve is not None:
        return score
    server = score.server if score.we_serve is last.we_serve else None
    return score._replace(we_serve=last.we_serve, server=server)
