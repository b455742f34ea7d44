"""What to hit from the back, after running down their lob: high again, soft, or a drive."""

from __future__ import annotations

from typing import Final

from knowledge.advice import Reason
from knowledge.ball_facts import Depth
from knowledge.effects import Decision, Effect, Mechanism, Option, OptionId
from knowledge.engine import Ranking, rank
from knowledge.situation import Situation, Wind
from knowledge.sources import COMMON_PRACTICE
from knowledge.tactics import lob_sizes as sizes
from knowledge.tactics.conditions import marks_weak, rule_of_thumb, skill
from knowledge.tactics.lob_runner import FROM_THE_BACK
from knowledge.vocabulary import Trait

LOB_BACK, DROP, DRIVE = OptionId("lob back"), OptionId("drop"), OptionId("drive")

SAID: Final = {
    LOB_BACK: "Back there: high and deep, or soft to the middle",
    DROP: "Back there: soft to the middle, or high and deep",
    DRIVE: "Back there: nothing flat; take pace off",
}

CALLS: Final = {
    LOB_BACK: "Lob it back high and deep, to the middle.",
    DROP: "Drop it soft to the middle, then come in.",
    DRIVE: "Roll it low to the middle; no full swing.",
}


def answer_from_the_back(situation: Situation) -> Ranking:
    """Lob back, drop or drive; a shot that all of ours mark as weak is no choice."""
    options = [Option(id=DRIVE, label="drive")]
    for id, label, needs in (
        (LOB_BACK, "lob back high and deep", Trait.LOB),
        (DROP, "soft to the middle", Trait.THIRD_SHOT_DROP),
    ):
        if not _all_weak(situation, needs):
            options.append(Option(id=id, label=label))
    if len(options) == 1:
        options.append(Option(id=LOB_BACK, label="lob back high and deep"))
    known = {option.id for option in options}
    return rank(
        Decision(
            options=tuple(options),
            effects=tuple(one for one in _back_effects(situation) if one.on <= known),
            neutral=FROM_THE_BACK,
            share=sizes.LOB_SHARE,
        ),
        situation,
    )


def _all_weak(situation: Situation, trait: Trait) -> bool:
    runner = tuple(one for one in situation.ours if one.player == situation.asker)
    ours = runner or situation.ours
    return bool(ours) and all(marks_weak(one, trait) for one in ours)


def _back_effects(situation: Situation) -> list[Effect]:
    found = [
        rule_of_thumb(
            "back",
            LOB_BACK,
            sizes.BACK_BUYS_TIME,
            Mechanism.TIME,
            "High and deep buys the way back in",
        ),
        rule_of_thumb(
            "drive",
            DRIVE,
            sizes.DRIVE_FROM_BACK,
            Mechanism.THEIR_REPLY,
            "No drive from the back: two set volleys wait",
        ),
    ]
    if situation.wind is Wind.BEHIND_US:
        found.append(
            rule_of_thumb(
                "wind",
                LOB_BACK,
                sizes.WIND_BEHIND_10_MPH,
                Mechanism.OUR_ERROR,
                "Wind behind: a lob back sails out",
            )
        )
    if situation.asked.facts.theirs is Depth.COMING_IN:
        found.append(
            rule_of_thumb(
                "coming in",
                DROP,
                sizes.DROP_AT_RUNNER,
                Mechanism.THEIR_REPLY,
                "They follow it in: low at the feet",
            )
        )
    for one in situation.theirs:
        found.append(
            skill(
                one,
                Trait.OVERHEAD,
                sizes.THEIR_OVERHEAD,
                Mechanism.THEIR_ERROR,
                on=(LOB_BACK,),
                named=f"{one.name}'s overhead",
            )
        )
    for one in situation.ours:
        for trait, on in ((Trait.LOB, LOB_BACK), (Trait.THIRD_SHOT_DROP, DROP)):
            found.append(
                skill(
                    one,
                    trait,
                    sizes.OWN_TOUCH.times(1 / len(situation.ours)),
                    Mechanism.OUR_ERROR,
                    on=(on,),
                    named=f"{one.name}'s {'lob' if trait is Trait.LOB else 'drop'}",
                )
            )
    return found


def back_reasons(back: Ranking) -> tuple[Reason, ...]:
    """What speaks for the answer, and against a drive."""
    best = [
        Reason(text=part.effect.because, source=part.effect.source)
        for part in sorted(back.best.parts, key=lambda one: not one.evidence)
        if part.points > 0 and (part.evidence or part.effect.scale is None)
    ]
    no_drive = Reason(text="No drive from the back: two set volleys wait", source=COMMON_PRACTICE)
    soft = Reason(text="Soft and middle gives no angle", source=COMMON_PRACTICE)
    return tuple(dict.fromkeys([*best[:1], no_drive, soft]))[:3]
