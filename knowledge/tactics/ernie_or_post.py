"""The jump at the corner and the ball round the post: ours, and keeping them off theirs."""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import BallFacts, Footing
from knowledge.court import KITCHEN_DEPTH_M
from knowledge.effects import Truth
from knowledge.engine import Part
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import ernie_sizes as sizes
from knowledge.tactics import ernie_words as words
from knowledge.tactics.aim_words import sum_lines
from knowledge.tactics.conditions import VOLLEYS, marks_weak
from knowledge.tactics.ernie_answer import ErnieAnswer, answer_ernie
from knowledge.tactics.ernie_effects import BEHIND, ROUND
from knowledge.tactics.ernie_geometry import least_past_sideline_m, nearest_landing_m
from knowledge.tactics.ernie_picture import jump_picture, post_picture
from knowledge.tactics.ernie_said import Kind
from knowledge.tactics.told_reasons import (
    GENERAL,
    figures,
    is_general,
    noted,
    noted_against_others,
    plain,
    ruled,
    weak_shot,
)
from knowledge.vocabulary import Side, Topic

REASONS = 3


def advise(situation: Situation) -> Advice:
    """The answer to whichever of the four is asked."""
    answer = answer_ernie(situation)
    match answer.said.kind:
        case Kind.OUR_ERNIE:
            advice = _jump(answer, situation)
        case Kind.OUR_POST:
            advice = _round(answer, situation)
        case _:
            advice = _keep_off(answer)
    return replace(
        advice,
        confidence=Confidence.GENERAL_RULE if _is_general(answer) else answer.ranking.confidence,
        more=sum_lines(answer.ranking.best.parts, what=answer.ranking.best.option.label),
        choices=_choices(answer, situation),
    )


def _jump(answer: ErnieAnswer, situation: Situation) -> Advice:
    corner, said = answer.corner, answer.said
    if corner is None:
        call = words.stay_call(answer)
    elif said.asks_where:
        call = words.AIM_CALL
    elif said.asks_who_covers:
        call = words.COVER_CALL
    else:
        is_named = corner.hitter is not None and (
            corner.hitter.player in situation.asked.about or bool(_noted(answer))
        )
        asker = situation.striker or situation.asker
        call = words.jump_call(corner, answer, asker=asker, named=is_named)
    return Advice(
        topic=Topic.ERNIE_OR_POST,
        call=call,
        reasons=_why_jump(answer),
        number=words.jump_number(),
        unless=words.jump_unless(answer),
        assumed=GENERAL if _is_general(answer) else None,
        caution=_jump_caution(answer),
        numbers=figures(
            answer.ranking,
            line_share_off_the_set_up=sizes.LINE_OFF_THE_SET_UP,
            line_share_that_pays=sizes.line_share_that_pays(covered=True),
            line_share_that_pays_alone=sizes.line_share_that_pays(covered=False),
        ),
        picture=None if corner is None else jump_picture(corner, situation.ours),
    )


def _jump_caution(answer: ErnieAnswer) -> str | None:
    if answer.corner is None:
        return None
    return words.BODY_CAUTION if answer.said.asks_where else words.JUMP_CAUTION


def _why_jump(answer: ErnieAnswer) -> tuple[Reason, ...]:
    if answer.corner is None:
        gap = Reason(text="The middle behind the jump is a gap", source=COMMON_PRACTICE)
        return (*_weak(answer), *noted(_against_the_next(answer)), gap)[:REASONS]
    if answer.said.asks_where:
        return plain("At the feet they counter worst", "Then the open middle; expect it back")
    if answer.said.asks_who_covers:
        return plain("The middle behind the jump is a gap", "Go with the jump, before they hit")
    legal = ruled("erne", "Feet outside, at the hit and landing")
    return (*_noted(answer)[:1], *plain("Go when the hitter looks down, line only"), legal)


def _weak(answer: ErnieAnswer) -> list[Reason]:
    """Which volley of ours, by our own profile, leaves the jump out."""
    jumpers = [corner.jumper for corner in answer.left_out if corner.jumper is not None]
    found = [
        weak_shot(one, trait)
        for one in jumpers
        for trait in VOLLEYS.values()
        if marks_weak(one, trait)
    ]
    return list(dict.fromkeys(found))


def _round(answer: ErnieAnswer, situation: Situation) -> Advice:
    facts = situation.asked.facts
    from_net_m = facts.from_net_m or KITCHEN_DEPTH_M
    least_m = least_past_sideline_m(from_net_m)
    nearest_m = nearest_landing_m(from_net_m, least_m)
    is_round = answer.best == ROUND
    side = situation.asked.striker_side or Side.RIGHT
    numbers = {"least_past_sideline_m": least_m, "from_net_m": from_net_m}
    if nearest_m is not None:
        numbers["nearest_landing_m"] = nearest_m
    return Advice(
        topic=Topic.ERNIE_OR_POST,
        call=words.post_call(answer, past=answer.said.past),
        reasons=_why_round(answer),
        number=words.post_number(
            least_m, from_net_m=from_net_m, is_said=facts.from_net_m is not None
        ),
        unless=words.post_unless(answer, past=answer.said.past),
        assumed=None if answer.said.past is not None else "Taking it as wide of the sideline.",
        caution=words.POST_CAUTION if is_round else None,
        numbers=figures(answer.ranking, **numbers),
        picture=post_picture(side, from_net_m) if is_round else None,
    )


def _why_round(answer: ErnieAnswer) -> tuple[Reason, ...]:
    legal = ruled("around the post", "Below net height is fine; it must land in")
    if answer.best != ROUND:
        against = [
            Reason(text=part.effect.because, source=part.effect.source)
            for part in _against_the_next(answer)
            if part.truth is Truth.YES
        ]
        return (*against, legal)[:REASONS]
    low = Reason(text="Their line player is the cover: keep it low", source=COMMON_PRACTICE)
    return (*_noted(answer)[:1], low, legal)


def _keep_off(answer: ErnieAnswer) -> Advice:
    is_post = answer.said.kind is Kind.THEIR_POST
    third = (
        "On that line: guard it, low and deep; block it"
        if is_post
        else "Partner watches the feet and calls the jump"
    )
    worst = max(
        (part for one in answer.ranking.ranked[1:] for part in one.parts if not part.evidence),
        key=lambda part: -part.points,
    )
    spoken = [Reason(text=worst.effect.because, source=worst.effect.source)]
    if answer.best == BEHIND:
        spoken = list(plain("Gone from the middle: hit behind the jumper"))
    found = [
        *noted_against_others(answer.ranking)[:1],
        *spoken,
        Reason(text=third, source=COMMON_PRACTICE),
    ]
    if is_post and len(found) < REASONS:
        found[1:1] = plain("Wide dinks feed it; the middle does not")
    return Advice(
        topic=Topic.ERNIE_OR_POST,
        call=words.keep_off_call(answer),
        reasons=tuple(dict.fromkeys(found))[:REASONS],
        unless=words.keep_off_unless(answer),
        assumed=GENERAL if _is_general(answer) else None,
        caution=words.AIR_CAUTION if answer.said.in_the_air else None,
        numbers=figures(answer.ranking),
    )


def _noted(answer: ErnieAnswer) -> tuple[Reason, ...]:
    """What notes say for the best option."""
    return noted(part for part in answer.ranking.best.parts if part.points > 0)


def _against_the_next(answer: ErnieAnswer) -> list[Part]:
    others = answer.ranking.ranked[1:2]
    return [part for one in others for part in one.parts if part.points < 0]


def _is_general(answer: ErnieAnswer) -> bool:
    return is_general(answer.ranking) and not answer.left_out


def _choices(answer: ErnieAnswer, situation: Situation) -> tuple[Choice, ...]:
    """The other branch of what was assumed; where to dink, against theirs."""
    facts = situation.asked.facts
    match answer.said.kind:
        case Kind.OUR_POST:
            rows = _post_rows(answer.said.past)
        case Kind.OUR_ERNIE:
            rows = _jump_rows(facts)
        case _:
            return (Choice(label="where to dink", topic=Topic.AIM_DINK),)
    found = [
        Choice(label=label, topic=Topic.ERNIE_OR_POST, fact=fact.value, value=value)
        for label, fact, value in rows
    ]
    if len(answer.corners) > 1:
        found += [
            Choice(
                label=f"from our {side}",
                topic=Topic.ERNIE_OR_POST,
                fact=MatchFact.STRIKER.value,
                value=side.value,
            )
            for side in Side
        ]
    return tuple(found)


Row = tuple[str, MatchFact, str]


def _post_rows(past: bool | None) -> list[Row]:
    rows = (
        ("past the sideline", MatchFact.PAST_SIDELINE, "yes", past is True),
        ("still inside it", MatchFact.PAST_SIDELINE, "no", past is False),
    )
    return [(label, fact, value) for label, fact, value, is_told in rows if not is_told]


def _jump_rows(facts: BallFacts) -> list[Row]:
    rows: list[Row] = []
    if facts.partner_set is not False:
        rows.append(("partner stays", MatchFact.PARTNER_SET, "no"))
    if facts.footing is None:
        rows.append(("off balance", MatchFact.FOOTING, Footing.BACKWARD.value))
    return rows
