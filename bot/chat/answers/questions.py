"""Questions: gather what is known, let the engine advise, render the reply."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.context import Asked
from bot.chat.gather import gather
from bot.chat.question import Question
from bot.chat.render import render, render_more
from bot.chat.reply import Reply
from knowledge.advice import Advice
from knowledge.game import GameState, faults, start
from knowledge.situation import Situation
from knowledge.tactics import advise
from knowledge.vocabulary import Mode, Topic

PLAN_VARIANT = "A"


def answer(desk: Desk, question: Question) -> Reply:
    """The answer, or which of several alike names is meant: the only question we ask first."""
    mentions = by_pair(desk, question.slots.mentions)
    about = settled(mentions)
    if about is None:
        return ask_which(desk, question.text, mentions)
    slots = question.slots
    asked = Asked(
        topic=question.topic,
        text=question.text,
        about=about,
        wing=slots.wing,
        ball=slots.ball,
        ball_kind=slots.ball_kind,
        we_serve=slots.serving,
    )
    said = _state_said(desk, question)
    return answer_asked(desk, asked, offers=question.offers, said=said)


def answer_asked(
    desk: Desk, asked: Asked, *, offers: tuple[Topic, ...] = (), said: GameState | None = None
) -> Reply:
    """Answer a question as remembered: a text and a tap take the same road from here."""
    advice, situation = advice_on(desk, asked, said=said)
    desk.context = replace(
        desk.context.looking_at(*(asked.about or desk.context.focus)), asked=asked
    )
    desk.trace |= {"advice": advice, "topic": asked.topic}
    _keep_plan(desk, advice, situation)
    return render(
        advice,
        against=[one.name for one in situation.theirs],
        short=desk.context.mode is Mode.MATCH,
        offers=offers,
    )


def explain(desk: Desk, topic: Topic) -> Reply:
    """The reasons in full, for the last question of that topic."""
    asked = desk.context.asked
    if asked is None or asked.topic is not topic:
        asked = Asked(topic=topic, text="")
    advice, _ = advice_on(desk, asked)
    desk.trace |= {"advice": advice, "topic": topic}
    return render_more(advice)


def advice_on(
    desk: Desk, asked: Asked, *, said: GameState | None = None
) -> tuple[Advice, Situation]:
    """What the engine says, and what it was told."""
    match = desk.match_state()
    situation = gather(
        asked,
        desk.context,
        desk.view,
        game=said or (match.game if match else None),
        agreements=desk.agreements(),
    )
    return advise(situation), situation


def _state_said(desk: Desk, question: Question) -> GameState | None:
    """The state of a score inside a question: used for this answer, never stored."""
    score = question.slots.score
    if score is None:
        return None
    ours, theirs, we_serve = score.ours, score.theirs, score.we_serve
    server = score.server
    if score.call is not None:
        we_serve = True if we_serve is None else we_serve
        first, second = score.call.serving, score.call.receiving
        ours, theirs = (first, second) if we_serve else (second, first)
        server = score.call.server
    if ours is None or theirs is None:
        return None
    format = question.slots.format or desk.format()
    serving = True if we_serve is None else we_serve
    opening = start(format, we_serve=serving)
    known = server or (1 if format.has_two_servers else None)
    state = replace(opening, ours=ours, theirs=theirs, server=known, starter_serves=None)
    if not format.has_two_servers:
        state = replace(state, starter_serves=True)
    return None if faults(state) else state


def _keep_plan(desk: Desk, advice: Advice, situation: Situation) -> None:
    """A game plan about known people is stored, so that it can be recalled and compared."""
    if advice.topic is not Topic.GAME_PLAN or not advice.lines or len(situation.theirs) != 2:
        return
    theirs = desk.pair_of([one.player for one in situation.theirs])
    lines = [line.text for line in advice.lines]
    before = desk.book.latest_plan(theirs, variant=PLAN_VARIANT)
    if before is None or list(before.lines) != lines:
        ours = desk.pair_of([one.player for one in situation.ours])
        desk.book.store_plan(our_pair=ours, their_pair=theirs, variant=PLAN_VARIANT, lines=lines)
