"""Taps: a payload decodes to the same command or question that a text would have been."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers import note_offers, notes, undo
from bot.chat.answers.advised import SCORE_TOPICS
from bot.chat.answers.booking import EXAMPLES, example_text, set_mode
from bot.chat.answers.clock_zone import press_zone
from bot.chat.answers.desk import Desk
from bot.chat.answers.explaining import explain
from bot.chat.answers.imports import press_import
from bot.chat.answers.list_pages import turn_to
from bot.chat.answers.match_over import close_by_tap
from bot.chat.answers.match_taps import press_score
from bot.chat.answers.mixes import pick, show_mix
from bot.chat.answers.of_people import press_of_people
from bot.chat.answers.own_rates import use_log
from bot.chat.answers.pair_card import press_card
from bot.chat.answers.plan_pages import plan_page
from bot.chat.answers.player_tapped import player_tapped
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.scout_taps import press_scout
from bot.chat.answers.settled_by_tap import observe, settle
from bot.chat.answers.taken_up import ReadAgain, add_named, answer_later, who_is_meant
from bot.chat.context import Asked
from bot.chat.payload import BadPayloadError, Tap, Verb, number_in, word_in
from bot.chat.reply import Reply
from bot.chat.said import PlanAsk
from bot.chat.wording import wording
from knowledge.vocabulary import (
    Mode,
    PlayerId,
    Topic,
    Trait,
    Value,
)
from scouting_db.values import ChangeId, InboxId, MatchId, NoteId

_SIZE_ASKED = "how big is this rally"
"""What the button under a chance asks: the number is wanted, not the shot."""


def press(desk: Desk, payload: str, *, read_again: ReadAgain) -> Reply:
    """What a button does. A forged, cut or outdated payload changes nothing and says so."""
    try:
        return _press(desk, Tap.parse(payload), read_again)
    except BadPayloadError:
        return Reply(text=wording("unclear.too_old"))


_ARGUMENTS = {
    Verb.ASK: (1, 3),
    Verb.SETTLE: (3, 4),
    Verb.WHY: (1, 1),
    Verb.MIX: (1, 1),
    Verb.PICK: (1, 1),
    Verb.WHO: (2, 2),
    Verb.ADD: (1, 1),
    Verb.UNDO: (1, 1),
    Verb.REDO: (1, 1),
    Verb.NOTE: (2, 2),
    Verb.CLAIM: (2, 2),
    Verb.RALLY: (3, 3),
    Verb.TIMEOUT: (3, 3),
    Verb.SERVE: (2, 3),
    Verb.SIDES: (4, 4),
    Verb.SERVER: (3, 3),
    Verb.SCORE: (4, 4),
    Verb.MODE: (1, 1),
    Verb.PROFILE: (3, 3),
    Verb.EXAMPLE: (1, 1),
    Verb.USE_LOG: (1, 1),
    Verb.ENDED: (3, 3),
    Verb.ENDED_BY: (3, 3),
    Verb.MEANT: (3, 3),
    Verb.TAG: (4, 4),
    Verb.AGREE: (4, 4),
    Verb.LATER: (1, 1),
    Verb.PAGE: (3, 3),
    Verb.SCOUT: (2, 4),
    Verb.PLAN: (3, 3),
    Verb.INVITE: (1, 1),
    Verb.MEMBER: (2, 2),
    Verb.BOOK: (1, 2),
    Verb.FORGET: (1, 2),
    Verb.OVER: (1, 1),
    Verb.ZONE: (1, 1),
    Verb.IMPORT: (1, 1),
}
"""The fewest and the most arguments of each verb."""


def _press(desk: Desk, tapped: Tap, read_again: ReadAgain) -> Reply:
    args = tapped.args
    fewest, most = _ARGUMENTS[tapped.verb]
    if not fewest <= len(args) <= most:
        raise BadPayloadError(f"{tapped.verb} takes {fewest} to {most} arguments")
    match tapped.verb:
        case Verb.ASK:
            about = tuple(player_tapped(desk, arg) for arg in args[1:])
            return answer_asked(desk, _ask(desk, word_in(Topic, args[0]), about))
        case Verb.SETTLE:
            return settle(desk, args)
        case Verb.WHY:
            return explain(desk, word_in(Topic, args[0]))
        case Verb.MIX:
            return show_mix(desk, word_in(Topic, args[0]))
        case Verb.PICK:
            return pick(desk, word_in(Topic, args[0]))
        case Verb.WHO:
            return who_is_meant(desk, number_in(args[0]), player_tapped(desk, args[1]), read_again)
        case Verb.ADD:
            return add_named(desk, number_in(args[0]), read_again)
        case Verb.UNDO:
            return undo.undo(desk, ChangeId(number_in(args[0])))
        case Verb.REDO:
            return undo.redo(desk, ChangeId(number_in(args[0])))
        case Verb.NOTE:
            return _note(desk, args)
        case Verb.CLAIM:
            return note_offers.add(desk, ChangeId(number_in(args[0])), number_in(args[1]))
        case Verb.MODE:
            return set_mode(desk, word_in(Mode, args[0]))
        case Verb.PROFILE:
            player = player_tapped(desk, args[0])
            return observe(desk, player, word_in(Trait, args[1]), word_in(Value, args[2]))
        case Verb.USE_LOG:
            if args[0] != "log":
                raise BadPayloadError(f"what counts instead is the log, not {args[0]}")
            return use_log(desk)
        case Verb.AGREE:
            return press_card(desk, args)
        case Verb.SCOUT:
            return press_scout(desk, args)
        case Verb.PLAN:
            about = tuple(player_tapped(desk, arg) for arg in args[1:])
            return plan_page(desk, word_in(PlanAsk, args[0]), about)
        case Verb.LATER:
            return answer_later(desk, number_in(args[0]), read_again)
        case Verb.PAGE:
            return turn_to(desk, args[0], number_in(args[1]), number_in(args[2]))
        case Verb.INVITE | Verb.MEMBER | Verb.BOOK | Verb.FORGET:
            return press_of_people(desk, tapped)
        case Verb.IMPORT:
            return press_import(desk, InboxId(number_in(args[0])))
        case Verb.ZONE:
            return press_zone(desk, args[0])
        case Verb.OVER:
            return close_by_tap(desk, MatchId(number_in(args[0])))
        case Verb.EXAMPLE:
            return _example(desk, number_in(args[0]), read_again)
        case _:
            return press_score(desk, tapped)


def _example(desk: Desk, number: int, read_again: ReadAgain) -> Reply:
    if not 1 <= number <= EXAMPLES:
        raise BadPayloadError(f"there is no example {number}")
    return read_again(desk, example_text(desk, number), None)


def _ask(desk: Desk, topic: Topic, about: tuple[PlayerId, ...]) -> Asked:
    """The question of a topic button: about the same people as the last one, unless it says."""
    last = desk.context.asked
    if last is not None and last.topic in SCORE_TOPICS and topic in SCORE_TOPICS:
        # Beside an answer about a score the next one is about the same score, and says so.
        text = _SIZE_ASKED if topic is Topic.RISK_AT_SCORE else last.text
        return replace(last, topic=topic, text=text, about=about or last.about)
    if last is None:
        return Asked(topic=topic, text="", about=about)
    return Asked(topic=topic, text=last.text, about=about or last.about, facts=last.facts)


def _note(desk: Desk, args: Sequence[str]) -> Reply:
    if args[0] != "delete":
        raise BadPayloadError(f"a note can be deleted by a button, not {args[0]}")
    return notes.delete(desk, NoteId(number_in(args[1])))
