"""At which hip or shoulder a note says that somebody jams: "pops up at his right hip"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from knowledge.regex import regex
from knowledge.situation import JammedHip, Situation
from knowledge.vocabulary import PlayerId, Side, Topic, Trait, Value
from scouting_db.values import NoteRow, Part

NOTES_SEARCHED = 200
"""The newest notes of a book."""

_AIMS = frozenset({Topic.AIM_ATTACK, Topic.CUE, Topic.GAME_PLAN, Topic.WHOM_TO_TARGET})
"""Topics that tell where to speed up."""

_HIP = regex(
    r"\b(?P<side>left|right|lft|rt)(?:[ -](?:hand|handed|side))?[ -]"
    r"(?:hip|pocket|ribs?|armpit|thigh|waist|(?P<shoulder>shoulder)"
    r"|side of (?:the|his|her|their) body)\b",
    re.IGNORECASE,
)
_PUT_RIGHT = regex(
    r"[\s,.]*(?:no,? (?:wait|sorry|i meant?|actually|make that)|sorry|wait|i meant?"
    r"|make that|scratch that"
    r"|no\b(?=.*\b(?:sorry|i meant?|my (?:bad|mistake))\W*$"
    r"|(?:\W+(?!(?:he|she|they)\b)\w+){1,4}\W+(?:sorry|i meant?|my (?:bad|mistake))\b))"
    r"[\s,.]+(?:(?:no|wait|sorry|i meant?|at|the|his|her|its|it was)[\s,.]+)*"
    r"(?P<side>left|right|lft|rt)\b",
    re.IGNORECASE,
)
"""The other side told instead: "his right hip no left hip sorry"."""

_NEAR = 12
"""Characters between the claim's own words and the hip that belongs to it."""


def with_jammed_hips(desk: Desk, situation: Situation) -> Situation:
    """For an aim at the body: the hip that the newest note of each names."""
    people = tuple(
        one.player for one in situation.theirs if one.profile.skill(Trait.BODY_JAM).evidence
    )
    if situation.topic not in _AIMS or not people:
        return situation
    found = desk.recall(
        ("jammed hips", people), lambda: _jammed(desk, people), Part.NOTES, Part.PEOPLE
    )
    return replace(situation, jammed_hips=found)


def _jammed(desk: Desk, people: Sequence[PlayerId]) -> tuple[JammedHip, ...]:
    rows = desk.book.newest_with_claims(limit=NOTES_SEARCHED)
    firsts = (next(_of(rows, player), None) for player in people)
    return tuple(one for one in firsts if one is not None)


def _of(rows: Sequence[NoteRow], player: PlayerId) -> Iterator[JammedHip]:
    """Every hip noted of the player, newest first."""
    for row in rows:
        for one in row.observations:
            is_jam = one.trait is Trait.BODY_JAM and one.value is Value.WEAKNESS and not one.denied
            if one.player != player or not is_jam or one.span is None:
                continue
            start, end = one.span
            for found in _HIP.finditer(row.text):
                if found.start() <= end + _NEAR and found.end() >= start - _NEAR:
                    put = _PUT_RIGHT.match(row.text, found.end())
                    again = None if put is None else _HIP.match(row.text, put.start("side"))
                    told = again or put or found
                    is_left = told["side"].lower().startswith("l")
                    yield JammedHip(
                        player=player,
                        side=Side.LEFT if is_left else Side.RIGHT,
                        is_shoulder=(again or found)["shoulder"] is not None,
                    )
