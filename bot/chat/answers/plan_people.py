"""Whom a plan is for and against: what cannot be is said kindly, with what to say instead."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import Mention
from bot.chat.wording import wording
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId, Topic

_AGAINST = regex(r"\b(?:against|versus|vs|v)\b\.?", re.IGNORECASE)

PAIR = 2
OFFERED_PAIRS = 2
"""Pairs of theirs offered where the one named cannot be meant."""


def people_fault(desk: Desk, text: str, mentions: Sequence[Mention]) -> Reply | None:
    """Why a plan cannot be for or against those named; None where it can.

    Where one of our other pairs is named as playing, the chat turns to that pair.
    """
    named = [one for one in mentions if not one.pronoun]
    before, after = _sides(text, named)
    if {*before} & {*after}:
        return _say(desk, "plan.against_itself", names=_names(desk, before))
    ours = [one for one in after if _is_ours(desk, one)]
    others = [one for one in after if one not in ours]
    if ours and others:
        return _say(desk, "plan.one_of_us", ours=_names(desk, ours), names=_names(desk, others))
    if ours and _is_for_us(desk, text):
        return None
    if ours:
        return _say(desk, "plan.only_us", names=_names(desk, ours))
    return _for_whom(desk, before, after)


def _for_whom(desk: Desk, before: Sequence[PlayerId], after: Sequence[PlayerId]) -> Reply | None:
    """Who plays: another pair of ours is taken up; a pair that is not ours is asked for."""
    if not after or len(before) != 2 or {*before} == {*desk.ours}:
        return None
    roster = {row.player for row in desk.view.roster if row.ours}
    if {*before} <= roster:
        theirs = tuple(one for one in desk.context.theirs if one not in before)
        desk.context = replace(desk.context, ours=(before[0], before[1]), theirs=theirs)
        return None
    if not {*before} & roster:
        return _say(desk, "plan.not_ours", names=_names(desk, before, joint=" and "))
    return None


def _is_for_us(desk: Desk, text: str) -> bool:
    """ "A plan for mira only": against whom needs no asking where a pair is known and none said."""
    return _AGAINST.search(text) is None and len(desk.context.theirs) == PAIR


def _sides(
    text: str, named: Sequence[Mention]
) -> tuple[tuple[PlayerId, ...], tuple[PlayerId, ...]]:
    """Who is named before "against", and who after; all are opponents where it is not said."""
    found = _AGAINST.search(text)
    at = 0 if found is None else found.start()
    before = [one.players[0] for one in named if one.span[0] < at and one.players]
    after = [one.players[0] for one in named if one.span[0] >= at and one.players]
    if found is None:
        return (), tuple(after)
    return tuple(before), tuple(after)


def _is_ours(desk: Desk, player: PlayerId) -> bool:
    return player in desk.ours


def _names(desk: Desk, players: Sequence[PlayerId], *, joint: str = "/") -> str:
    return joint.join(desk.names(players))


def _say(desk: Desk, key: str, **parts: str) -> Reply:
    return Reply(text=wording(key).format(**parts), buttons=rows(_pairs(desk)))


def _pairs(desk: Desk) -> list[Button]:
    """The pair we speak of, or those played or announced last."""
    recent = [row.their_pair for row in desk.book.matches(limit=OFFERED_PAIRS * 2)]
    pairs = [desk.context.theirs, *(one.players for one in recent if one is not None)]
    known = dict.fromkeys(pair for pair in pairs if len(pair) == 2)
    return [
        Button(
            label=wording("plan.against").format(names=_names(desk, pair)),
            payload=tap(Verb.ASK, Topic.GAME_PLAN, *pair),
            topic=Topic.GAME_PLAN,
        )
        for pair in [*known][:OFFERED_PAIRS]
    ]
