"""Taps: a payload decodes to the same command or question that a text would have been."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from bot.chat.answers import matches, notes, undo
from bot.chat.answers.booking import add_player, example_text, set_mode
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.questions import answer_asked, explain
from bot.chat.context import Asked, Pending
from bot.chat.payload import BadPayloadError, Tap, Verb
from bot.chat.question import SaidScore, ScoreSaid
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.advice import MatchFact
from knowledge.game import ScoreCall
from knowledge.situation import Familiarity, Formation
from knowledge.vocabulary import (
    TRAITS,
    BallKind,
    BallQuality,
    PlayerId,
    Seen,
    Side,
    Topic,
    Trait,
    Value,
    Wing,
)
from scouting_db.values import ChangeId, MatchId, NewObservation, NoteId

TAPPED_WEIGHT = 1.0

ReadAgain = Callable[[Desk, str, int | None], Reply]
"""Takes a message up again with a name settled; the note it already is, if it is one."""


def press(desk: Desk, payload: str, *, read_again: ReadAgain) -> Reply:
    """What a button does. A forged, cut or outdated payload changes nothing and says so."""
    try:
        return _press(desk, Tap.parse(payload), read_again)
    except (BadPayloadError, ValueError, KeyError, LookupError):
        return Reply(text=wording("unclear.too_old"))


def _press(desk: Desk, tapped: Tap, read_again: ReadAgain) -> Reply:
    args = tapped.args
    match tapped.verb:
        case Verb.ASK:
            about = tuple(_known(desk, arg) for arg in args[1:])
            return answer_asked(desk, _ask(desk, Topic(args[0]), about))
        case Verb.SETTLE:
            return _settle(desk, args)
        case Verb.WHY:
            return explain(desk, Topic(args[0]))
        case Verb.WHO:
            return _who(desk, int(args[0]), _known(desk, args[1]), read_again)
        case Verb.ADD:
            return _add(desk, int(args[0]), read_again)
        case Verb.UNDO:
            return undo.undo(desk, ChangeId(int(args[0])))
        case Verb.REDO:
            return undo.redo(desk, ChangeId(int(args[0])))
        case Verb.NOTE:
            return _note(desk, args)
        case Verb.RALLY:
            return matches.count_rally(
                desk, ours=_ours(args[0]), match=MatchId(int(args[1])), expected=int(args[2])
            )
        case Verb.TIMEOUT:
            return matches.call_timeout(
                desk, ours=_ours(args[0]), match=MatchId(int(args[1])), expected=int(args[2])
            )
        case Verb.SERVE:
            return matches.start_game(desk, we_serve=_ours(args[0]), match=MatchId(int(args[1])))
        case Verb.SCORE:
            score = SaidScore(call=ScoreCall.parse(args[1]), we_serve=_ours(args[0]))
            return matches.take_score(desk, ScoreSaid(text=args[1], score=score))
        case Verb.MODE:
            return set_mode(desk, args[0])
        case Verb.PROFILE:
            return _observe(desk, _known(desk, args[0]), Trait(args[1]), Value(args[2]))
        case Verb.EXAMPLE:
            return read_again(desk, example_text(int(args[0])), None)


def _known(desk: Desk, arg: str) -> PlayerId:
    """A player of this book; LookupError for any other number."""
    player = PlayerId(int(arg))
    if desk.view.player(player) is None:
        raise LookupError(f"no player {player} in this book")
    return player


def _ours(arg: str) -> bool:
    if arg not in ("us", "them"):
        raise BadPayloadError(f"us or them, not {arg}")
    return arg == "us"


def _ask(desk: Desk, topic: Topic, about: tuple[PlayerId, ...]) -> Asked:
    """The question of a topic button: about the same people as the last one, unless it says."""
    last = desk.context.asked
    text = last.text if last is not None else ""
    return Asked(topic=topic, text=text, about=about or (last.about if last else ()))


def _settle(desk: Desk, args: Sequence[str]) -> Reply:
    """The other branch of an answer: the last question again, with one thing settled."""
    topic, fact, value = Topic(args[0]), args[1], args[2]
    about = _known(desk, args[3]) if len(args) > 3 else None
    last = desk.context.asked
    asked = last if last is not None and last.topic is topic else Asked(topic=topic, text="")
    if fact in {*Trait}:
        if about is None:
            raise BadPayloadError("a trait needs its player")
        noted = _observe(desk, about, Trait(fact), Value(value))
        reply = answer_asked(desk, asked)
        return replace(reply, buttons=(*reply.buttons, *noted.buttons))
    asked = _with_fact(desk, asked, MatchFact(fact), value, about)
    return answer_asked(desk, asked)


def _with_fact(
    desk: Desk, asked: Asked, fact: MatchFact, value: str, about: PlayerId | None
) -> Asked:
    match fact:
        case MatchFact.BALL:
            return replace(asked, ball=BallQuality(value))
        case MatchFact.BALL_KIND:
            return replace(asked, ball_kind=BallKind(value))
        case MatchFact.WING:
            return replace(asked, wing=Wing(value))
        case MatchFact.WE_SERVE:
            return replace(asked, we_serve=value == "yes")
        case MatchFact.STRIKER:
            return replace(asked, striker_side=Side(value))
        case MatchFact.PULLED_WIDE:
            return replace(asked, pulled_wide=about)
        case MatchFact.ABOUT:
            return replace(asked, about=() if about is None else (about,))
        case MatchFact.SIDE:
            if about is not None:
                desk.context = desk.context.with_side(about, Side(value))
        case MatchFact.FAMILIARITY:
            desk.context = replace(desk.context, familiarity=Familiarity(value))
        case MatchFact.FORMATION:
            desk.context = replace(desk.context, formation=Formation(value))
    return asked


def _who(desk: Desk, number: int, player: PlayerId, read_again: ReadAgain) -> Reply:
    """One of the alike names is meant: take the message up again with the name in full."""
    pending = desk.context.pending(number)
    if pending is None or (pending.candidates and player not in pending.candidates):
        return Reply(text=wording("unclear.too_old"))
    return _take_up(desk, pending, desk.view.name_of(player), read_again)


def _add(desk: Desk, number: int, read_again: ReadAgain) -> Reply:
    """The unknown name is a new player: add them, and take the message up again."""
    pending = desk.context.pending(number)
    if pending is None:
        return Reply(text=wording("unclear.too_old"))
    player = add_player(desk, pending.typed)
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
    return notes.delete(desk, NoteId(int(args[1])))


def _observe(desk: Desk, player: PlayerId, trait: Trait, value: Value) -> Reply:
    """One tap of a profile is a note of its own: its words say what was tapped."""
    if value not in TRAITS[trait].values:
        raise BadPayloadError(f"{trait} takes no {value}")
    name = desk.view.short_name(player)
    note = desk.book.add_note(
        f"{name}: {TRAITS[trait].label} {value}",
        [
            NewObservation(
                player=player,
                trait=trait,
                value=value,
                weight=TAPPED_WEIGHT,
                seen=Seen.LIVE,
                origin="tapped",
            )
        ],
        parser=notes.PARSER_VERSION,
        chat=desk.chat.chat,
    )
    change = desk.record("add_note", {"note": note}, {})
    desk.changed()
    text = wording("book.tapped").format(name=name, trait=TRAITS[trait].label, value=value)
    return Reply(text=text, buttons=rows([undo_button(change)]), about=("note", note))
