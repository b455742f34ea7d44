"""They are back and we are at the line: keep them there, drop it, or put it away."""

from __future__ import annotations

from types import MappingProxyType
from typing import Final

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.ball_facts import Depth, Footing
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, SAID
from knowledge.tactics import deep_words as words
from knowledge.tactics.aim_words import NOBODY_NAMED, rallies, sum_lines
from knowledge.tactics.deep_answer import DeepAnswer, answer_deep, question_of
from knowledge.tactics.deep_effects import RACE, SUM, DeepShot
from knowledge.tactics.deep_outcomes import BASELINE_M, DEEP_ENOUGH_M, deep
from knowledge.tactics.told_reasons import shot_confidence
from knowledge.vocabulary import Topic, Trait, Value

REASONS: Final = 3
JUST_S: Final = 0.05
"""Less than this either way is not told as a number of tenths."""

FALLS: Final = "Backing up for it? Turn and run; no backpedal."


def advise(situation: Situation) -> Advice:
    """The call, the race behind it, and what would turn it."""
    if situation.asked.facts.theirs is Depth.AT_LINE:
        return _not_deep()
    answer = answer_deep(situation)
    confidence = _confidence(answer)
    return Advice(
        topic=Topic.DROP_ON_DEEP_OPPONENTS,
        call=_call(answer),
        reasons=_reasons(answer),
        now="Then close in together: next one is higher.",
        number=None if confidence is Confidence.TOSS_UP else _number(answer),
        unless=_unless(answer),
        assumed=_assumed(situation),
        caution=FALLS if situation.asked.facts.footing is Footing.BACKWARD else None,
        confidence=confidence,
        numbers=_numbers(answer),
        choices=_choices(situation),
        more=sum_lines(answer.ranking.best.parts, what="Against deep at the feet"),
    )


def _confidence(answer: DeepAnswer) -> Confidence:
    """How sure the shot is; at whom is the smaller question."""
    if answer.driver is None:
        return Confidence.GENERAL_RULE
    return shot_confidence(answer.ranking)


def _not_deep() -> Advice:
    return Advice(
        topic=Topic.DROP_ON_DEEP_OPPONENTS,
        call=words.AT_THE_LINE,
        reasons=(
            Reason(text="A drop is for who stands 18 ft back or more", source=COMMON_PRACTICE),
        ),
        unless="They back off again? Keep them there.",
        confidence=Confidence.GENERAL_RULE,
    )


def _call(answer: DeepAnswer) -> str:
    named = answer.best.target if answer.is_about_one else None
    match answer.best.shot:
        case DeepShot.DROP:
            return words.drop_call(named, slow=answer.question.said_slow)
        case DeepShot.PUT_AWAY:
            return words.PUT_AWAY
        case DeepShot.DEEP:
            return words.COMING_IN if answer.question.coming_in else words.deep_call(named)


def _reasons(answer: DeepAnswer) -> tuple[Reason, ...]:
    """Notes first, then the race or the height, then why."""
    found: list[Reason] = []
    if answer.driver is not None:
        found.append(Reason(text=answer.driver.effect.because, source=answer.driver.source))
    noted = answer.noted_speed
    if noted is not None:
        found.append(noted)
    elif answer.question.said_slow and answer.best.shot is DeepShot.DROP:
        found.append(Reason(text="Slow forward, as you say", source=SAID))
    found.append(_computed(answer))
    found += [Reason(text=text, source=COMMON_PRACTICE) for text in _WHY[answer.best.shot]]
    return tuple(list(dict.fromkeys(found))[:REASONS])


_WHY: Final = {
    DeepShot.DEEP: ("A drop lets good movers in for free", "Deep at the feet comes back up"),
    DeepShot.DROP: ("Open face, no backswing: hide it", "Reached late, it comes back high"),
    DeepShot.PUT_AWAY: ("If you can put it away, put it away",),
}


def _computed(answer: DeepAnswer) -> Reason:
    if answer.best.shot is DeepShot.PUT_AWAY:
        of_ten = min(9, round(10 * answer.question.put_away().worth))
        text = f"From that height it wins about {of_ten} of 10"
        return Reason(text=text, source=SUM)
    slack = answer.slack_s
    if abs(slack) < JUST_S:
        return Reason(text="A drop: they just about get a paddle to it", source=RACE)
    if slack > 0:
        return Reason(text=f"A drop: they get there with {slack:.1f} s to spare", source=RACE)
    return Reason(text=f"A drop dies {-slack:.1f} s before they get there", source=RACE)


def _number(answer: DeepAnswer) -> str | None:
    other, name = answer.other
    if other.shot is answer.best.shot:
        return None
    gain = 100 * (answer.ranking.best.chance - answer.ranking.of(other.id).chance)
    return f"{rallies(gain).removesuffix('.')} over {name}."


def _unless(answer: DeepAnswer) -> str | None:
    match answer.best.shot:
        case DeepShot.PUT_AWAY:
            return "Below the net? Deep at the slower one's feet."
        case DeepShot.DROP:
            return "High enough to hit down? Put it away."
    if not answer.may_drop:
        return "High enough to hit down? Put it away."
    if answer.question.their_depth_m < DEEP_ENOUGH_M:
        return "Slow forward and behind 18 ft: drop it soft."
    return "Slow forward or wrong-footed? Drop it soft."


def _assumed(situation: Situation) -> str | None:
    facts = situation.asked.facts
    if facts.height_m is None and situation.asked.ball is None:
        is_usual = question_of(situation).their_depth_m == BASELINE_M
        return f"Taken as net high or lower{', they near the baseline' if is_usual else ''}."
    return None if situation.theirs else NOBODY_NAMED


def _numbers(answer: DeepAnswer) -> MappingProxyType[str, float]:
    question = answer.question
    found: dict[str, float] = {
        "points_over_next": float(answer.ranking.gain()),
        "p_best": answer.ranking.best.p_best,
        "chance": float(answer.ranking.best.chance),
        "chance_sd": answer.ranking.best.sd,
        "share": answer.ranking.share,
        "deep_worth": deep().worth,
        "put_away_worth": question.put_away().worth,
        "put_away_misses": question.put_away().errs,
        "drop_slack_s": answer.slack_s,
        "height_m": question.height_m,
    }
    if answer.may_drop:
        best = answer.best_drop
        found |= {"drop_worth": best.worth, "drop_wins": best.wins, "drop_misses": best.errs}
    return MappingProxyType(found)


def _choices(situation: Situation) -> tuple[Choice, ...]:
    found = []
    facts = situation.asked.facts
    if facts.height_m is None and situation.asked.ball is None:
        found.append(_choice("it sits up", MatchFact.BALL, "easy"))
    for one in situation.theirs:
        if not one.profile.skill(Trait.FORWARD_SPEED).evidence:
            found.append(
                Choice(
                    label=f"{one.name}: slow forward",
                    topic=Topic.DROP_ON_DEEP_OPPONENTS,
                    fact=Trait.FORWARD_SPEED.value,
                    value=Value.WEAKNESS.value,
                    about=one.player,
                )
            )
    if facts.theirs is None:
        found.append(_choice("one is up", MatchFact.THEIRS, Depth.ONE_BACK))
        found.append(_choice("they come in", MatchFact.THEIRS, Depth.COMING_IN))
    return tuple(found)


def _choice(label: str, fact: MatchFact, value: str) -> Choice:
    return Choice(
        label=label, topic=Topic.DROP_ON_DEEP_OPPONENTS, fact=fact.value, value=str(value)
    )
