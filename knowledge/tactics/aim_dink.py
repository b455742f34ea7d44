"""Where to dink: whom, which foot and by which lane, with a change-up and what would flip it."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import MAX_REASONS, Advice, Confidence, Reason
from knowledge.regex import regex
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import aim_attack
from knowledge.tactics import dink_words as words
from knowledge.tactics.attack_answer import aimed
from knowledge.tactics.attack_whether import whether
from knowledge.tactics.dink_aims import SOFT, attack_at
from knowledge.tactics.dink_answer import DinkAnswer, answer_dink
from knowledge.tactics.dink_ball import ball_taken, is_told
from knowledge.tactics.dink_lanes import Lane
from knowledge.tactics.dink_picture import picture
from knowledge.tactics.dink_reasons import gain_over_any_aim, more, numbers, reasons
from knowledge.tactics.dink_unknown import choices, unless
from knowledge.tactics.told_ball import plain_words
from knowledge.vocabulary import BallQuality, Topic


def advise(situation: Situation) -> Advice:
    """The call, its change-up and trigger, what would flip it, and the picture.

    A ball that is better sped up, at somebody of whom notes speak, is the speed-up's own answer:
    same ball, same call.
    """
    answer = answer_dink(situation)
    is_general = all(one.profile.notes == 0 for one in answer.question.pair)
    ask = answer.ranking.ask()
    sped_up = _sped_up(answer, situation)
    if sped_up is not None:
        return replace(sped_up, topic=Topic.AIM_DINK, unless=unless(answer, ask, situation))
    best = answer.best
    flip = unless(answer, ask, situation)
    return Advice(
        topic=Topic.AIM_DINK,
        call=_call(answer, situation, is_general=is_general),
        reasons=(
            *_about_the_line(answer, situation),
            *reasons(answer, named=not is_general or _is_named(situation)),
        )[:MAX_REASONS],
        number=_number(answer),
        unless=flip,
        assumed=_assumed(answer, situation, flip, is_general=is_general),
        confidence=Confidence.GENERAL_RULE if is_general else answer.ranking.confidence,
        numbers=numbers(answer),
        choices=choices(answer, ask, situation, is_general=is_general),
        picture=None
        if best is None
        else picture(
            best,
            answer.change,
            ours=situation.ours,
            theirs=answer.question.pair,
            striker_side=answer.question.striker_side,
        ),
        more=more(answer, ball_taken(situation)),
    )


def _sped_up(answer: DinkAnswer, situation: Situation) -> Advice | None:
    if answer.best is not None or answer.ranking.best.option.id == SOFT:
        return None
    found = aimed(situation)
    attacks = found.is_settled and whether(situation, found).attacks
    return aim_attack.advise(situation) if attacks else None


_LINE = regex(r"\bdown the line\b|\bline dinks?\b|\b(?:the|or) line\b(?! (?:or|calls?)\b)")
_LINE_ONLY = Reason(text="The line: when they lean in, 1-2 a game", source=COMMON_PRACTICE)


def _about_the_line(answer: DinkAnswer, situation: Situation) -> tuple[Reason, ...]:
    """When the line is on, where it was asked for and is not the call."""
    asks = _LINE.search(plain_words(situation.asked.words)) is not None
    is_line = answer.best is not None and answer.best.lane is Lane.LINE
    is_soft = answer.best is None
    return (_LINE_ONLY,) if asks and not is_line and not is_soft else ()


def _number(answer: DinkAnswer) -> str | None:
    """What the call is worth; nothing where it may as well be another one."""
    if answer.best is None or answer.ranking.confidence is Confidence.TOSS_UP:
        return None
    return words.worth(gain_over_any_aim(answer))


def _call(answer: DinkAnswer, situation: Situation, *, is_general: bool) -> str:
    best = answer.best
    if best is not None and is_general and not _is_named(situation):
        return words.nameless(best)
    if best is not None:
        return words.call(best, names_wing=words.names_wing(best, situation.asked.wing))
    option = answer.ranking.best.option.id
    if option == SOFT:
        stretched = answer.question.ball is BallQuality.STRETCHED
        return words.STRETCHED_CALL if stretched else words.SOFT_CALL
    target = next(one for one in answer.question.pair if attack_at(one).id == option)
    return words.attack_call(target)


def _is_named(situation: Situation) -> bool:
    return any(one.player in situation.asked.about for one in situation.theirs)


def _assumed(
    answer: DinkAnswer, situation: Situation, flip: str | None, *, is_general: bool
) -> str | None:
    """The ball where something was said of it; else the greatest unknown that was taken."""
    best, ball = answer.best, ball_taken(situation) if is_told(situation) else words.NEUTRAL
    if is_general:
        return f"No notes on them. {ball}" if is_told(situation) else words.GENERAL
    if is_told(situation) or best is None:
        return ball
    if best.target.side is None:
        return f"I don't know {best.target.name}'s side."
    if best.wing is None:
        is_asked = "left-handed?" in (flip or "")
        return words.hand_taken(best.target.name, is_asked=is_asked)
    if answer.question.striker_side is None:
        return "From either of our courts."
    return ball
