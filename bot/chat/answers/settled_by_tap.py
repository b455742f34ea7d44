"""The other branch of an answer: the last question again, with one thing settled by a tap."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.ball_taps import with_ball_fact
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.player_tapped import player_tapped
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.score_facts import with_score_fact
from bot.chat.answers.tapped_note import tapped_note
from bot.chat.context import Asked
from bot.chat.payload import BadPayloadError, word_in, yes_or_no
from bot.chat.render import rows
from bot.chat.reply import Reply
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
    PlayerId,
    Side,
    Topic,
    Trait,
    Value,
    Wing,
)


def settle(desk: Desk, args: Sequence[str]) -> Reply:
    """The answer with what the button says; BadPayloadError for what no button says."""
    topic, fact, value = word_in(Topic, args[0]), args[1], args[2]
    about = player_tapped(desk, args[3]) if len(args) > 3 else None
    last = desk.context.asked
    asked = last if last is not None and last.topic is topic else Asked(topic=topic, text="")
    if fact in {*Trait}:
        if about is None:
            raise BadPayloadError("a trait needs its player")
        noted = observe(desk, about, word_in(Trait, fact), word_in(Value, value))
        reply = answer_asked(desk, asked)
        return replace(reply, buttons=(*reply.buttons, *noted.buttons))
    asked = with_fact(desk, asked, word_in(MatchFact, fact), value, about)
    return answer_asked(desk, asked)


def observe(desk: Desk, player: PlayerId, trait: Trait, value: Value) -> Reply:
    """One tap of a profile is a note of its own: its words say what was tapped."""
    if value not in TRAITS[trait].values:
        raise BadPayloadError(f"{trait} takes no {value}")
    name = desk.view.short_name(player)
    words = f"{name}: {TRAITS[trait].label} {value}"
    note, change = tapped_note(desk, player, trait, value, words=words)
    text = wording("book.tapped").format(name=name, trait=TRAITS[trait].label, value=value)
    return Reply(text=text, buttons=rows([undo_button(change)]), about=("note", note))


def with_fact(
    desk: Desk, asked: Asked, fact: MatchFact, value: str, about: PlayerId | None
) -> Asked:
    """The question with that fact settled; what stands for the match goes into the context."""
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
