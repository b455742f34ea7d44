"""Questions: gather what is known, let the engine advise, render the reply."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.names import ask_which, by_pair, settled
from bot.chat.context import Asked, SaidState
from bot.chat.gather import gather
from bot.chat.question import Question, Slots
from bot.chat.render import render, render_more
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.advice import Advice
from knowledge.game import GameFormat, GameState, faults, start
from knowledge.situation import Situation
from knowledge.tactics import PAGES, advise
from knowledge.vocabulary import Mode, PlayerId, Topic

PLAN_VARIANT = "A"


def answer(desk: Desk, question: Question) -> Reply:
    """The answer, or which of several alike names is meant: the only question we ask first."""
    mentions = by_pair(desk, question.slots.mentions)
    about = settled(mentions)
    if about is None:
        return ask_which(desk, question.text, mentions)
    slots = question.slots
    pulled = _pulled_wide(desk, question.text, about)
    asked = Asked(
        topic=question.topic,
        text=question.text,
        about=about,
        wing=slots.wing,
        ball=slots.ball,
        ball_kind=slots.ball_kind,
        pulled_wide=pulled,
        we_serve=slots.serving,
        score=_score_said(slots),
    )
    return answer_asked(desk, asked, offers=question.offers)


_PULLED_WIDE = re.compile(r"\b(?:pulled|dragged|drawn|stuck|taken) (?:out )?wide\b", re.IGNORECASE)


def _pulled_wide(desk: Desk, text: str, about: Sequence[PlayerId]) -> PlayerId | None:
    """The one of ours whom the question says to be pulled wide."""
    ours = [player for player in about if player in desk.ours]
    return ours[0] if len(ours) == 1 and _PULLED_WIDE.search(text) else None


def answer_asked(desk: Desk, asked: Asked, *, offers: tuple[Topic, ...] = ()) -> Reply:
    """Answer a question as remembered: a text and a tap take the same road from here."""
    advice, situation = advice_on(desk, asked)
    desk.context = replace(
        desk.context.looking_at(*(asked.about or desk.context.focus)), asked=asked
    )
    desk.trace |= {"advice": advice, "topic": asked.topic}
    _keep_plan(desk, advice, situation)
    return render(
        advice,
        against=[one.name for one in situation.theirs] if asked.topic in PAGES else (),
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


def explain_last(desk: Desk) -> Reply:
    """The reasons of the last answer, for a typed "why?"."""
    if desk.context.asked is None:
        return Reply(text=wording("unclear.why"))
    return explain(desk, desk.context.asked.topic)


def advice_on(desk: Desk, asked: Asked) -> tuple[Advice, Situation]:
    """What the engine says, and what it was told. A score in the question stands for it alone."""
    said = None if asked.score is None else _state_of(asked.score, desk.format())
    match = None if said else desk.match_state()
    situation = gather(
        asked,
        desk.context,
        desk.view,
        game=said or (match.game if match else None),
        agreements=desk.agreements(),
        today=desk.day,
    )
    return advise(situation), situation


def _score_said(slots: Slots) -> SaidState | None:
    """A score inside a question, from our side; a bare call is ours unless it says they serve."""
    score = slots.score
    if score is None:
        return None
    serving = slots.serving if score.we_serve is None else score.we_serve
    we_serve = True if serving is None else serving
    if score.call is not None:
        first, second = score.call.serving, score.call.receiving
        ours, theirs = (first, second) if we_serve else (second, first)
        return SaidState(ours, theirs, score.call.server, we_serve)
    if score.ours is None or score.theirs is None:
        return None
    return SaidState(score.ours, score.theirs, score.server, we_serve)


def _state_of(said: SaidState, format: GameFormat) -> GameState | None:
    """The game at that score, None where it cannot happen; without a number server 1 serves."""
    two = format.has_two_servers
    state = replace(
        start(format, we_serve=said.we_serve),
        ours=said.ours,
        theirs=said.theirs,
        server=(said.server or 1) if two else None,
        starter_serves=None if two else True,
        we_started=None,
    )
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
