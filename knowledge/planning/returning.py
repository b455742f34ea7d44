"""Where to return and where to serve against these two: the topics' own answers as plan lines."""

from __future__ import annotations

from dataclasses import replace

from knowledge.engine import Part
from knowledge.planning import sizes
from knowledge.planning.line import Line, Phase, worth_of
from knowledge.planning.phrases import skill_words
from knowledge.planning.weighing import said_of
from knowledge.situation import Asked, OnCourt, Situation
from knowledge.tactics.conditions import marks_weak
from knowledge.tactics.return_answer import ReturnAnswer, able, answer_return
from knowledge.tactics.return_picture import arrow_at
from knowledge.tactics.return_question import MIDDLE
from knowledge.tactics.return_words import how_deep, whom
from knowledge.tactics.serve_answer import ServeAnswer, answer_serve
from knowledge.tactics.serve_words import place
from knowledge.vocabulary import RallyPoints, Side, Topic, Trait


def return_line(situation: Situation) -> Line | None:
    """Whom to return at; None without an opponent.

    A plan speaks to both of us; a cue to whoever must return at the score.
    """
    if not situation.theirs:
        return None
    asked = replace(situation, topic=Topic.AIM_RETURN, asked=Asked(), asker=None, striker=None)
    if situation.topic is not Topic.CUE:
        asked = replace(asked, game=None)
    answer = answer_return(asked)
    driver = answer.driver
    if answer.target is None or driver is None:
        line = general_return_line(is_deep=answer.is_deep)
        return replace(line, option=MIDDLE, worth=worth_of(answer.ranking, _gain(answer)))
    return _at(answer, answer.target, driver)


def _gain(answer: ReturnAnswer) -> RallyPoints:
    return answer.ranking.gain(MIDDLE)


def _at(answer: ReturnAnswer, target: OnCourt, driver: Part) -> Line:
    question = answer.question
    aiming = able(question)
    is_one = question.returner is None and len(aiming) < len(question.ours)
    only = aiming[0] if is_one else None
    where, start = whom(answer), how_deep(answer)
    return Line(
        phase=Phase.RETURN,
        do=f"{only.name} returns at {where}" if only else f"{start} at {where}",
        because=said_of(driver.effect),
        we_serve=False,
        cue=f"{start} at {where}. Run in.",
        points=_gain(answer),
        share=sizes.RETURN_SHARE / 2 if only else sizes.RETURN_SHARE,
        option=answer.ranking.best.option.id,
        worth=worth_of(answer.ranking, _gain(answer)),
        source=driver.source,
        who=only.player if only else None,
        arrow=arrow_at(target, inside_ft=answer.aim_ft),
    )


def general_return_line(*, is_deep: bool = True) -> Line:
    """The return without a book."""
    where, cue = ("deep, middle", "deep") if is_deep else ("mid-court", "mid-court")
    return Line(
        phase=Phase.RETURN,
        do=f"Return high, {where}; then run in",
        we_serve=False,
        cue=f"Return high and {cue}. Run in.",
        points=RallyPoints(0.0),
        share=sizes.RETURN_SHARE,
    )


def serve_line(situation: Situation, receiver: OnCourt, court: Side) -> Line:
    """Where to serve at this receiver, standing in `court` as they see it."""
    answer = answer_serve(situation, receiver, court)
    server = answer.question.server
    if server is not None and marks_weak(server, Trait.SERVE):
        return _big_target(answer, server)
    driver = answer.driver
    if driver is None:
        return general_serve_line(is_deep=answer.is_deep)
    return Line(
        phase=Phase.SERVE,
        do=f"Serve {receiver.name} {place(answer)}",
        because=said_of(driver.effect),
        we_serve=True,
        cue=f"Serve {receiver.name} {place(answer)}.",
        points=answer.ranking.gain(),
        share=sizes.SERVE_SHARE / 2,
        source=driver.source,
    )


def _big_target(answer: ServeAnswer, server: OnCourt) -> Line:
    """What the middle of the box saves a weak server, over a deep one, misses and all."""
    depth = answer.question.depth
    return Line(
        phase=Phase.SERVE,
        do="Serve the middle of the box",
        because=f"{server.name} has a {skill_words(Trait.SERVE, strong=False)}",
        we_serve=True,
        cue="Serve mid-box, big target. Stay back.",
        points=RallyPoints(max(0.0, -(depth.gain.mean + depth.cost.mean))),
        share=sizes.SERVE_SHARE / 2,
        source=server.profile.skill(Trait.SERVE).source,
    )


def general_serve_line(*, is_deep: bool = True) -> Line:
    """The serve without a book."""
    depth = "deep" if is_deep else "mid-box"
    return Line(
        phase=Phase.SERVE,
        do=f"Serve {depth}; stay back for the third",
        we_serve=True,
        cue=f"Serve {depth}. Stay back for the third.",
        points=RallyPoints(0.0),
        share=sizes.SERVE_SHARE,
    )
