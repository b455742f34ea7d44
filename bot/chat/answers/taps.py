"""Taps: a payload decodes to the same command or question that a text would have been."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from bot.chat.answers import note_offers, notes, undo
from bot.chat.answers.advised import SCORE_TOPICS
from bot.chat.answers.ball_taps import with_ball_fact
from bot.chat.answers.booking import EXAMPLES, example_text, set_mode
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.explaining import explain
from bot.chat.answers.imports import press_import
from bot.chat.answers.list_pages import turn_to
from bot.chat.answers.match_taps import press_score
from bot.chat.answers.mixes import pick, show_mix
from bot.chat.answers.newcomers import add_player
from bot.chat.answers.of_people import press_of_people
from bot.chat.answers.own_rates import use_log
from bot.chat.answers.pair_card import press_card
from bot.chat.answers.plan_pages import plan_page
from bot.chat.answers.player_tapped import player_tapped
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.reminders import press_zone
from bot.chat.answers.score_facts import with_score_fact
from bot.chat.answers.scout_taps import press_scout
from bot.chat.answers.several import take_later
from bot.chat.answers.tapped_note import tapped_note
from bot.chat.answers.write_down import writes_down
from bot.chat.context import Asked, Pending
from bot.chat.payload import BadPayloadError, Tap, Verb, number_in, word_in, yes_or_no
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.said import PlanAsk
from bot.chat.wording import wording
from knowledge.advice import MatchFact
from knowledge.situation import Familiarity, Formation
from knowledge.tactics.ball_words import FIELDS
from knowledge.tactics.changes import troubles
from knowledge.tactics.symptoms import symptoms
from knowledge.tactics.weather_entries import entry_of
from knowledge.vocabulary import (
    TRAITS,
    BallKind,
    BallQuality,
    Mode,
    PlayerId,
    Side,
    Topic,
    Trait,
    Value,
    Wing,
)
from scouting_db.values import ChangeId, InboxId, NoteId

TAPPED_WEIGHT = 1.0

_SIZE_ASKED = "how big is this rally"
"""What the button under a chance asks: the number is wanted, not the shot."""

ReadAgain = Callable[[Desk, str, int | None], Reply]
"""Takes a message up again with a name settled; the note it already is, if it is one."""


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
            return _settle(desk, args)
        case Verb.WHY:
            return explain(desk, word_in(Topic, args[0]))
        case Verb.MIX:
            return show_mix(desk, word_in(Topic, args[0]))
        case Verb.PICK:
            return pick(desk, word_in(Topic, args[0]))
        case Verb.WHO:
            return _who(desk, number_in(args[0]), player_tapped(desk, args[1]), read_again)
        case Verb.ADD:
            return _add(desk, number_in(args[0]), read_again)
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
            return _observe(desk, player, word_in(Trait, args[1]), word_in(Value, args[2]))
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
            return _later(desk, number_in(args[0]), read_again)
        case Verb.PAGE:
            return turn_to(desk, args[0], number_in(args[1]), number_in(args[2]))
        case Verb.INVITE | Verb.MEMBER | Verb.BOOK | Verb.FORGET:
            return press_of_people(desk, tapped)
        case Verb.IMPORT:
            return press_import(desk, InboxId(number_in(args[0])))
        case Verb.ZONE:
            return press_zone(desk, args[0])
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


def _settle(desk: Desk, args: Sequence[str]) -> Reply:
    """The other branch of an answer: the last question again, with one thing settled."""
    topic, fact, value = word_in(Topic, args[0]), args[1], args[2]
    about = player_tapped(desk, args[3]) if len(args) > 3 else None
    last = desk.context.asked
    asked = last if last is not None and last.topic is topic else Asked(topic=topic, text="")
    if fact in {*Trait}:
        if about is None:
            raise BadPayloadError("a trait needs its player")
        noted = _observe(desk, about, word_in(Trait, fact), word_in(Value, value))
        reply = answer_asked(desk, asked)
        return replace(reply, buttons=(*reply.buttons, *noted.buttons))
    asked = _with_fact(desk, asked, word_in(MatchFact, fact), value, about)
    return answer_asked(desk, asked)


def _with_fact(
    desk: Desk, asked: Asked, fact: MatchFact, value: str, about: PlayerId | None
) -> Asked:
    match fact:
        case MatchFact.BALL:
            return replace(asked, ball=word_in(BallQuality, value))
        case MatchFact.BALL_KIND:
            return replace(asked, ball_kind=word_in(BallKind, value))
        case MatchFact.WING:
            return replace(asked, wing=word_in(Wing, value))
        case MatchFact.WE_SERVE:
            return replace(asked, we_serve=yes_or_no(value))
        case MatchFact.STRIKER:
            return replace(asked, striker_side=word_in(Side, value))
        case MatchFact.PULLED_WIDE:
            return replace(asked, pulled_wide=_named(about))
        case MatchFact.ABOUT:
            return replace(asked, about=(_named(about),))
        case MatchFact.SIDE:
            desk.context = desk.context.with_side(_named(about), word_in(Side, value))
        case MatchFact.FAMILIARITY:
            desk.context = replace(desk.context, familiarity=word_in(Familiarity, value))
        case MatchFact.FORMATION:
            desk.context = replace(desk.context, formation=word_in(Formation, value))
        case MatchFact.SYMPTOM:
            return replace(asked, text=_symptom(value))
        case MatchFact.WEATHER:
            return replace(asked, text=_weather(value))
        case _ if fact in FIELDS:
            return with_ball_fact(asked, fact, value)
        case _:
            return with_score_fact(asked, fact, value)
    return asked


def _symptom(value: str) -> str:
    """The words that name a symptom, theirs or ours; BadPayloadError for one we do not know."""
    known = {one.id for one in symptoms()} | {one.id for one in troubles()}
    if value not in known:
        raise BadPayloadError(f"no symptom: {value}")
    return value.replace("_", " ")


def _weather(value: str) -> str:
    """The words that name an entry on weather or bodies; BadPayloadError for none of ours."""
    if entry_of(value) is None:
        raise BadPayloadError(f"no weather or body entry: {value}")
    return value.replace("_", " ")


def _named(about: PlayerId | None) -> PlayerId:
    if about is None:
        raise BadPayloadError("this needs its player")
    return about


def _who(desk: Desk, number: int, player: PlayerId, read_again: ReadAgain) -> Reply:
    """One of the alike names is meant: take the message up again with the name in full."""
    pending = desk.context.pending(number)
    if pending is None or not pending.waits_for_name:
        return Reply(text=wording("unclear.too_old"))
    if pending.candidates and player not in pending.candidates:
        return Reply(text=wording("unclear.too_old"))
    return _take_up(desk, pending, desk.view.name_of(player), read_again)


def _later(desk: Desk, number: int, read_again: ReadAgain) -> Reply:
    """The next of several questions that came in one message."""
    pending = desk.context.pending(number)
    if pending is None or pending.waits_for_name:
        return Reply(text=wording("unclear.too_old"))
    if writes_down(pending):
        desk.context = desk.context.without_pending(number)
    return take_later(desk, pending) or read_again(desk, pending.text, None)


def _add(desk: Desk, number: int, read_again: ReadAgain) -> Reply:
    """The unknown name is a new player: add them, and take the message up again."""
    pending = desk.context.pending(number)
    if pending is None or not pending.typed:
        return Reply(text=wording("unclear.too_old"))
    player = add_player(desk, pending.typed)
    for other in pending.also:
        beside = add_player(desk, other)
        text = pending.text.replace(other, desk.view.name_of(beside), 1)
        pending = replace(pending, text=text)
    return _take_up(desk, pending, desk.view.name_of(player), read_again)


def _take_up(desk: Desk, pending: Pending, name: str, read_again: ReadAgain) -> Reply:
    desk.context = desk.context.without_pending(pending.number)
    text = (
        pending.text.replace(pending.typed, name, 1) if pending.typed else f"{name}: {pending.text}"
    )
    return read_again(desk, text, pending.note)


def _note(desk: Desk, args: Sequence[str]) -> Reply:
    if args[0] != "delete":
        raise BadPayloadError(f"a note can be deleted by a button, not {args[0]}")
    return notes.delete(desk, NoteId(number_in(args[1])))


def _observe(desk: Desk, player: PlayerId, trait: Trait, value: Value) -> Reply:
    """One tap of a profile is a note of its own: its words say what was tapped."""
    if value not in TRAITS[trait].values:
        raise BadPayloadError(f"{trait} takes no {value}")
    name = desk.view.short_name(player)
    words = f"{name}: {TRAITS[trait].label} {value}"
    note, change = tapped_note(desk, player, trait, value, words=words)
    text = wording("book.tapped").format(name=name, trait=TRAITS[trait].label, value=value)
    return Reply(text=text, buttons=rows([undo_button(change)]), about=("note", note))
