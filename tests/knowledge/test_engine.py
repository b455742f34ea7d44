"""The engine against closed forms and scipy: sums, doubt, groups, the clip, and what to ask.

Formulas: our engineering notes, sections 1.2 to 1.5; numbers below are worked by hand from them.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.stats import norm

from knowledge.advice import Confidence
from knowledge.beliefs import RULE_OF_THUMB_CLIP_POINTS, believe
from knowledge.effects import (
    ALWAYS,
    Condition,
    Decision,
    Effect,
    EffectId,
    FactId,
    Mechanism,
    Option,
    OptionId,
    Points,
    TraitScale,
    Truth,
)
from knowledge.engine import Ranking, rank
from knowledge.evidence import NOTHING_KNOWN, TraitEstimate
from knowledge.normal import chances_of_being_best, logistic, logit
from knowledge.situation import Situation
from knowledge.sources import COMMON_PRACTICE, Source, book, computed
from knowledge.vocabulary import LOGIT_PER_POINT, PlayerId, RallyChance, Topic, Trait

A, B = OptionId("a"), OptionId("b")
SOMEWHERE = Situation(topic=Topic.AIM_DINK)


def effect(
    name: str,
    mean: float,
    *,
    sd: float = 1.0,
    on: OptionId = A,
    mechanism: Mechanism = Mechanism.TIME,
    source: Source = COMMON_PRACTICE,
    when: Condition = ALWAYS,
    scale: TraitScale | None = None,
    states: str | None = None,
) -> Effect:
    return Effect(
        id=EffectId(name),
        on=frozenset({on}),
        points=Points(mean=mean, sd=sd),
        mechanism=mechanism,
        because=name,
        source=source,
        when=when,
        scale=scale,
        states=states,
    )


def fact(name: str, truth: Truth, prevalence: float = 0.5) -> Condition:
    return Condition(
        name=name, fact=FactId(name), prevalence=prevalence, test=lambda _situation: truth
    )


def ranked(
    *effects: Effect, neutral: float = 0.5, options: tuple[str, ...] = ("a", "b")
) -> Ranking:
    return rank(
        Decision(
            options=tuple(Option(id=OptionId(each), label=each) for each in options),
            effects=effects,
            neutral=RallyChance(neutral),
            share=10,
        ),
        SOMEWHERE,
    )


def scale(
    level: float, variance: float, *, both_ways: bool = False, towards: int = 1
) -> TraitScale:
    return TraitScale(
        estimate=TraitEstimate(level=level, variance=variance),
        towards=towards,
        player=PlayerId(3),
        trait=Trait.BACKHAND_DINK,
        both_ways=both_ways,
    )


effects = st.lists(
    st.tuples(
        st.floats(-12, 12),
        st.floats(0, 5),
        st.sampled_from(list(Mechanism)),
        st.sampled_from([COMMON_PRACTICE, book(notes=2), computed("a model")]),
        st.sampled_from(list(Truth)),
    ),
    max_size=8,
)


@given(effects, st.floats(0.1, 0.9))
def test_the_parts_and_the_clip_add_up_to_the_difference_shown(
    rows: list[tuple[float, float, Mechanism, Source, Truth]], neutral: float
) -> None:
    found = ranked(
        *(
            effect(
                f"e{place}",
                mean,
                sd=sd,
                mechanism=how,
                source=source,
                when=fact(f"f{place}", truth),
            )
            for place, (mean, sd, how, source, truth) in enumerate(rows)
        ),
        neutral=neutral,
    ).of(A)
    assert found.points == pytest.approx(100 * (found.chance - neutral), abs=1e-7)


@given(effects)
def test_a_part_has_the_sign_of_its_effect(
    rows: list[tuple[float, float, Mechanism, Source, Truth]],
) -> None:
    found = ranked(
        *(effect(f"e{n}", mean, mechanism=how) for n, (mean, _, how, _, _) in enumerate(rows))
    ).of(A)
    for part in found.parts:
        assert part.points * part.effect.points.mean >= 0


def test_one_point_is_one_rally_in_a_hundred_at_an_even_rally() -> None:
    chance = ranked(effect("one", 1)).of(A).chance
    assert chance == pytest.approx(0.51, abs=1e-4)
    assert LOGIT_PER_POINT == 0.04


def test_points_shrink_where_the_rally_is_nearly_won() -> None:
    chance = ranked(effect("ten", 10), neutral=0.95).of(A).chance
    assert chance == pytest.approx(logistic(logit(0.95) + 0.4))
    assert 0.95 < chance < 0.97


def test_an_unknown_condition_counts_with_its_prevalence_and_its_doubt() -> None:
    belief = believe(effect("maybe", 10, sd=2, when=fact("f", Truth.UNKNOWN, 0.3)), Truth.UNKNOWN)
    draws = np.concatenate([np.zeros(7), np.full(3, 10.0)])
    assert belief.mean == pytest.approx(draws.mean())
    assert belief.variance == pytest.approx(draws.var() + 0.3 * 2**2)


def test_a_trait_scales_between_none_and_full() -> None:
    half = believe(effect("half", 6, sd=2, scale=scale(0.5, 0.1)), Truth.YES)
    assert half.mean == pytest.approx(3)
    assert half.variance == pytest.approx(0.25 * 4 + 0.1 * (36 + 4))
    opposite = believe(effect("opposite", 6, sd=2, scale=scale(-0.5, 0.1)), Truth.YES)
    assert opposite.mean == 0
    both = believe(effect("both", 6, sd=2, scale=scale(-0.5, 0.1, both_ways=True)), Truth.YES)
    assert both.mean == pytest.approx(-3)
    against = believe(effect("against", 6, scale=scale(-0.5, 0.1, towards=-1)), Truth.YES)
    assert against.mean == pytest.approx(3)


def test_no_notes_leave_the_mean_and_add_the_doubt() -> None:
    nothing = scale(NOTHING_KNOWN.level, NOTHING_KNOWN.variance)
    belief = believe(effect("nothing", 6, sd=0, scale=nothing), Truth.YES)
    assert belief.mean == 0
    assert belief.variance == pytest.approx(36 / 3)


def test_in_a_group_the_largest_counts_in_full_and_the_rest_a_quarter_by_sign() -> None:
    found = ranked(
        effect("big", 4), effect("small", 2), effect("bad", -3), effect("less bad", -1)
    ).of(A)
    declared = 4 + 2 / 4 - 3 - 1 / 4
    assert found.logit == pytest.approx(LOGIT_PER_POINT * declared)
    apart = ranked(effect("big", 4), effect("small", 2, mechanism=Mechanism.COVER)).of(A)
    assert apart.logit == pytest.approx(LOGIT_PER_POINT * 6)


def test_variances_take_the_squares_of_the_weights() -> None:
    found = ranked(effect("big", 4, sd=3), effect("small", 2, sd=2)).of(A)
    floor = 2.0
    assert found.logit_variance == pytest.approx(
        LOGIT_PER_POINT**2 * (floor**2 + 3**2 + (2 / 4) ** 2)
    )


def three(source: Source) -> list[Effect]:
    kinds = (Mechanism.TIME, Mechanism.COVER, Mechanism.HABIT)
    return [effect(str(kind), 9, mechanism=kind, source=source) for kind in kinds]


@pytest.mark.parametrize("source", [COMMON_PRACTICE, book(notes=5)])
def test_rules_of_thumb_are_clipped_even_where_notes_make_them_apply(source: Source) -> None:
    found = ranked(*three(source)).of(A)
    assert found.logit == pytest.approx(LOGIT_PER_POINT * RULE_OF_THUMB_CLIP_POINTS)
    assert found.clipped_points < 0
    assert len(found.parts) == 3
    assert sum(part.points for part in found.parts) > found.points


def test_what_is_computed_is_not_clipped() -> None:
    found = ranked(*three(computed("a model"))).of(A)
    assert found.logit == pytest.approx(LOGIT_PER_POINT * 27)
    assert found.clipped_points == 0.0


def test_a_computed_effect_replaces_the_rule_of_thumb_that_states_the_same() -> None:
    rule = effect("rule", 5, states="lane", mechanism=Mechanism.COVER)
    measured = effect("measured", 2, states="lane", source=computed("a model"))
    found = ranked(rule, measured).of(A)
    assert [part.effect.id for part in found.parts] == ["measured"]
    assert ranked(rule).of(A).chance > found.chance
    not_here = effect("measured", 2, states="lane", source=computed("m"), when=fact("f", Truth.NO))
    assert [part.effect.id for part in ranked(rule, not_here).of(A).parts] == ["rule"]


def test_a_condition_that_does_not_hold_leaves_nothing() -> None:
    found = ranked(effect("no", 9, when=fact("f", Truth.NO)))
    assert found.of(A).parts == ()
    assert found.gain() == 0.0


@example([(0.0, 0.4), *[(0.36, 0.08)] * 3])
@given(st.lists(st.tuples(st.floats(-0.6, 0.6), st.floats(0.08, 0.4)), min_size=1, max_size=6))
def test_the_chance_of_being_best_agrees_with_numeric_integration(
    beliefs: list[tuple[float, float]],
) -> None:
    means, sds = [m for m, _ in beliefs], [s for _, s in beliefs]
    found = chances_of_being_best(means, [s * s for s in sds])
    assert sum(found) == pytest.approx(1)
    for place, (mean, sd) in enumerate(beliefs):

        def density(z: float, place: int = place, mean: float = mean, sd: float = sd) -> float:
            x = mean + sd * z
            others = [(m, s) for n, (m, s) in enumerate(beliefs) if n != place]
            return (
                math.exp(-z * z / 2)
                / math.sqrt(2 * math.pi)
                * math.prod(0.5 * (1 + math.erf((x - m) / (s * math.sqrt(2)))) for m, s in others)
            )

        oracle, _ = quad(density, -8, 8, limit=200)
        assert found[place] == pytest.approx(oracle, abs=2e-4)  # normal._make_nodes


def test_two_options_have_the_closed_form() -> None:
    found = chances_of_being_best([0.3, 0.1], [0.04, 0.05])
    assert found[0] == pytest.approx(norm.cdf(0.2 / math.sqrt(0.09)))


@pytest.mark.parametrize(
    ("points", "word"),
    [(0, Confidence.TOSS_UP), (2, Confidence.LEAN), (6, Confidence.CLEAR)],
)
def test_words_for_confidence(points: float, word: Confidence) -> None:
    assert ranked(effect("e", points)).confidence is word


def test_knowing_is_worth_the_better_choice_it_allows() -> None:
    """By hand: yes (half the time) makes a +8 and no leaves b at +2; now a has 4 on average."""
    found = ranked(
        effect("if so", 8, when=fact("f", Truth.UNKNOWN)),
        effect("always", 2, on=B),
    )
    yes, no = logistic(0.32), logistic(0.08)
    informed = (yes + no) / 2
    uninformed = max((yes + 0.5) / 2, no)
    unknown = found.ask()
    assert unknown is not None
    assert unknown.worth == pytest.approx(100 * (informed - uninformed))
    assert (unknown.if_yes, unknown.if_no) == (A, B)


def test_what_cannot_change_the_choice_is_worth_nothing_and_is_not_asked() -> None:
    found = ranked(effect("more", 8, when=fact("f", Truth.UNKNOWN)), effect("a", 1))
    assert found.unknowns[0].worth == pytest.approx(0)
    assert found.ask() is None


def test_a_negated_condition_flips_with_its_fact() -> None:
    left = fact("plays left", Truth.UNKNOWN)
    found = ranked(effect("left", 6, when=left), effect("right", 6, when=~left, on=B))
    unknown = found.ask()
    assert unknown is not None
    assert {unknown.if_yes, unknown.if_no} == {A, B}
    assert (~~left).name == left.name


def test_a_trait_that_nobody_noted_is_up_for_asking_and_a_sure_one_is_not() -> None:
    unsure = effect("unsure", 8, sd=0, scale=scale(0, 1 / 3, both_ways=True))
    found = ranked(unsure)
    unknown = found.ask()
    assert unknown is not None
    assert unknown.fact == "trait:3:backhand_dink"
    step = math.sqrt(1 / 3)
    informed = (logistic(LOGIT_PER_POINT * 8 * step) + 0.5) / 2
    assert unknown.worth == pytest.approx(100 * (informed - 0.5), abs=1e-6)
    sure = effect("sure", 8, sd=0, scale=scale(0.9, 0.001, both_ways=True))
    assert ranked(sure).ask() is None


@given(effects)
def test_knowing_never_hurts(
    rows: list[tuple[float, float, Mechanism, Source, Truth]],
) -> None:
    found = ranked(
        *(
            effect(
                f"e{n}", mean, on=A if n % 2 else B, mechanism=how, when=fact(f"f{n % 3}", truth)
            )
            for n, (mean, _, how, _, truth) in enumerate(rows)
        )
    )
    assert all(unknown.worth >= -1e-9 for unknown in found.unknowns)


def test_a_decision_that_makes_no_sense_is_refused() -> None:
    with pytest.raises(ValueError, match="options"):
        ranked(options=())
    with pytest.raises(ValueError, match="options"):
        ranked(options=("a", "a"))
    with pytest.raises(ValueError, match="not an option"):
        ranked(effect("e", 1, on=OptionId("c")))
    with pytest.raises(ValueError, match="share an id"):
        ranked(effect("e", 1), effect("e", 2))
    with pytest.raises(ValueError, match="between 0 and 1"):
        ranked(neutral=1.0)


def test_one_option_is_best_for_sure() -> None:
    found = ranked(options=("a",))
    assert found.best.p_best == 1
    assert found.gain() == 0.0
    with pytest.raises(KeyError):
        found.of(B)
