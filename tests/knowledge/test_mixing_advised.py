"""The mix as a reply carries it: who is in, what is said of our pattern, and from when on."""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

import pytest
from noted_players import match, often_noted, player

from knowledge.advice import CALL_LIMIT, AdvisedMix
from knowledge.effects import OptionId
from knowledge.mixing import MIN_LOGGED_AIMS, MIXED_TOPICS, cost_when_guessed, of_ten
from knowledge.mixing.advised import _how_often
from knowledge.planning.mixes import attack_mix, third_mix
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import advise
from knowledge.vocabulary import PlayerId, Side, Topic, Trait

OKAFOR = player(3, "Okafor", Side.LEFT, "hand right", *often_noted("body_jam weakness"))
LINDQVIST = player(
    4,
    "Lindqvist",
    Side.RIGHT,
    "hand right",
    *often_noted("body_jam weakness", 3),
    *often_noted("forward_speed weakness", 3),
)
HIPS = ("paddle:3", "other:3", "paddle:4", "other:4")


def logged(
    situation: Situation, *aims: str, won: tuple[bool | None, ...] | None = None
) -> Situation:
    return replace(
        situation,
        recent_aims=MappingProxyType({situation.topic: aims}),
        aims_won=MappingProxyType({} if won is None else {situation.topic: won}),
    )


def attack(*aims: str, won: tuple[bool | None, ...] | None = None) -> AdvisedMix:
    mix = attack_mix(logged(match(Topic.AIM_ATTACK, OKAFOR, LINDQVIST), *aims, won=won))
    assert mix is not None
    return mix


@pytest.mark.parametrize("topic", [Topic.AIM_ATTACK, Topic.THIRD_SHOT])
def test_the_default_is_what_the_call_says(topic: Topic) -> None:
    advice = advise(match(topic, OKAFOR, LINDQVIST))
    mix = advice.mix
    assert mix is not None
    assert mix.default.share > 0
    assert mix.change_up is not None
    assert mix.change_up.label != mix.default.label
    assert mix.default.label.split()[-1] in advice.call
    assert sum(one.share for one in mix.shares) == pytest.approx(1)
    assert all(len(one.call) <= CALL_LIMIT for one in mix.shares)


@pytest.mark.parametrize("topic", sorted(MIXED_TOPICS))
def test_no_mix_without_anybody_to_guess(topic: Topic) -> None:
    assert advise(Situation(topic=topic)).mix is None


def test_dinks_groove_them_instead() -> None:
    """coaching 2.0, mixing: for dinks the value falls after three to one place."""
    assert Topic.AIM_DINK not in MIXED_TOPICS
    dinked = player(3, "Okafor", Side.LEFT, "hand right", *often_noted("backhand_dink weakness"))
    assert advise(match(Topic.AIM_DINK, dinked, LINDQVIST)).mix is None


def test_what_a_guess_costs_goes_with_the_skill_it_meets() -> None:
    """Sizes: common practice, no source (engineering 1.6)."""
    assert cost_when_guessed(Topic.AIM_ATTACK) == pytest.approx(0.10)
    assert cost_when_guessed(Topic.AIM_OVERHEAD) == pytest.approx(0.06)
    assert cost_when_guessed(Topic.AIM_SERVE) == pytest.approx(0.02)
    weak = player(3, "Okafor", None, *often_noted("counter weakness")).profile.skill(Trait.COUNTER)
    strong = player(3, "Okafor", None, *often_noted("counter strength")).profile.skill(
        Trait.COUNTER
    )
    costs = [cost_when_guessed(Topic.AIM_ATTACK, one) for one in (weak, None, strong)]
    assert costs == sorted(costs)
    assert 0.05 < costs[0] < 0.10 < costs[2] < 0.15
    with pytest.raises(KeyError):
        cost_when_guessed(Topic.AIM_DINK)


def test_a_hip_that_meets_a_strong_counter_gets_fewer_balls() -> None:
    """Both hips stay in; the wing that punishes a guessed ball less gets more of them."""

    def share_at_okafor(*notes: str) -> float:
        one = player(3, "Okafor", Side.LEFT, *often_noted("body_jam weakness"), *notes)
        mix = attack_mix(match(Topic.AIM_ATTACK, one, LINDQVIST))
        assert mix is not None
        assert all(each.share > 0 for each in mix.shares if each.option in ("other:3", "paddle:4"))
        return sum(each.share for each in mix.shares if each.option.endswith(":3"))

    strong = share_at_okafor("counter_backhand strength")
    assert strong < share_at_okafor() < share_at_okafor("counter_backhand weakness")


def test_a_third_that_we_do_not_own_is_never_in_the_mix() -> None:
    def mix_of_ours(*notes: str) -> AdvisedMix | None:
        ours = (player(1, "Mira", Side.RIGHT, *notes), player(2, "Tom", Side.LEFT, *notes))
        return third_mix(match(Topic.THIRD_SHOT, OKAFOR, LINDQVIST, ours=ours))

    both = mix_of_ours()
    assert both is not None
    assert {one.option.partition(":")[0] for one in both.shares} == {"drop", "drive"}
    assert mix_of_ours("forehand_drive weakness") is None
    assert mix_of_ours("third_shot_drop weakness") is None


def test_the_third_is_the_strikers_own_where_ours_differ() -> None:
    ours = (
        player(1, "Mira", Side.RIGHT, "third_shot_drop weakness"),
        player(2, "Tom", Side.LEFT),
    )
    situation = match(Topic.THIRD_SHOT, OKAFOR, LINDQVIST, ours=ours)
    assert third_mix(replace(situation, striker=PlayerId(1))) is None
    assert third_mix(replace(situation, striker=PlayerId(2))) is not None
    assert third_mix(situation) is None


def test_a_logged_drop_counts_as_the_drop_wherever_it_went() -> None:
    situation = match(Topic.THIRD_SHOT, OKAFOR, LINDQVIST)
    mix = third_mix(logged(situation, "drop", "drop:3", "drop:middle", "drive:4", "lob"))
    assert mix is not None
    assert mix.logged_aims == 4


def test_below_thirty_nothing_is_said_of_our_pattern() -> None:
    always = [HIPS[0]] * (MIN_LOGGED_AIMS - 1)
    few = attack(*always)
    assert few.pattern_loss_points is None
    assert few.regularity == ()
    assert few.logged_aims == MIN_LOGGED_AIMS - 1
    enough = attack(*always, HIPS[0])
    assert enough.pattern_loss_points is not None
    assert enough.regularity == ("All of your last 30 were the same choice.",)


@pytest.mark.parametrize("place", range(len(HIPS)))
def test_always_the_same_ball_gives_away_what_mixing_is_worth_and_more(place: int) -> None:
    """Whoever waits for it wins back at least what the best single option falls short by."""
    mix = attack(*[HIPS[place]] * MIN_LOGGED_AIMS)
    assert mix.pattern_loss_points is not None
    assert mix.pattern_loss_points >= mix.worth_points - 1e-9
    assert mix.pattern_loss_points > 2


def test_what_we_did_lately_changes_what_it_gives_away_not_the_mix() -> None:
    """A shot that we always play must not excuse itself."""
    assert attack(*[HIPS[2]] * 40).shares == attack().shares


def test_regular_alternation_is_named_with_what_chance_makes() -> None:
    said = attack(*["paddle:3", "paddle:4"] * 20).regularity
    assert said[0] == "You switch too regularly: 39 switches in 40, chance makes 20."
    said = attack(*["paddle:3"] * 20, *["paddle:4"] * 20).regularity
    assert said[0] == "You repeat too regularly: 1 switch in 40, chance makes 20."


def test_an_order_that_chance_makes_is_called_that() -> None:
    """Written down once: 17 runs, where chance makes 16 of fifteen each (Wald and Wolfowitz)."""
    flips = "ababbaabbbabaababbabaaabbabaab"
    aims = [{"a": "paddle:3", "b": "paddle:4"}[one] for one in flips]
    assert attack(*aims).regularity[0] == "No order seen in your last 30; few tell little."


def test_win_rates_are_compared_only_with_thirty_of_each() -> None:
    aims = ("paddle:3", "paddle:4") * 30
    unequal = tuple(place % 2 == 0 or place % 12 == 1 for place in range(60))
    assert attack(*aims, won=unequal).regularity[-1] == (
        "They win unequally: more than chance makes of it."
    )
    alike = tuple(place % 4 < 2 for place in range(60))
    assert attack(*aims, won=alike).regularity[-1] == (
        "They win alike, as far as these rallies tell."
    )
    for short in (aims[:-1], aims[:40]):
        won = unequal[: len(short)]
        assert not any("They win" in one for one in attack(*short, won=won).regularity)
    unknown: tuple[bool | None, ...] = (None,) * 60
    assert not any("They win" in one for one in attack(*aims, won=unknown).regularity)


def test_what_the_counts_of_ten_give_away_is_against_the_best_guess() -> None:
    """From the definition: the value less the average unguessed chance, plus the worst guess."""
    mix = attack()
    counts = of_ten({OptionId(one.option): one.share for one in mix.shares})
    assert all(one.share > 0 for one in mix.shares)
    # All of one cost here, 10 in 100: an option is as good unguessed as its guess leaves it.
    unguessed = {one.option: mix.value + 0.1 * one.guess for one in mix.shares}
    average = sum(unguessed[one] * count / 10 for one, count in counts.items())
    worst = average - 0.1 * max(counts.values()) / 10
    assert mix.of_ten_loss_points == pytest.approx(100 * (mix.value - worst))


def test_choices_that_are_no_option_now_count_nowhere() -> None:
    assert attack("paddle:9", "chest", "middle").logged_aims == 0


def test_a_change_up_is_counted_by_the_game_while_it_is_rare() -> None:
    """In words of the trade: once or twice a game (coaching 2.0); beyond that a share of ten."""
    assert _how_often(2, share=15) == "once a game"
    assert _how_often(4, share=15) == "1-2 a game"
    assert _how_often(4, share=50) == "4 of 10"


def names(mix: AdvisedMix) -> set[str]:
    return {one.label for one in mix.shares}


def test_every_hip_of_both_is_named() -> None:
    unknown: OnCourt = player(5, "Hale", None, *often_noted("body_jam weakness"))
    mix = attack_mix(match(Topic.AIM_ATTACK, unknown))
    assert mix is not None
    assert names(mix) == {"Hale's paddle hip", "Hale's off-hand hip"}


def test_the_pattern_is_that_of_the_last_twenty() -> None:
    """Older choices are forgotten: after twenty spread evenly nothing of the old habit is left."""
    spread = HIPS * 5
    habit_before, none_before = attack(*[HIPS[0]] * 30, *spread), attack(*spread, *spread)
    assert habit_before.logged_aims == 50
    assert habit_before.pattern_loss_points == none_before.pattern_loss_points
    assert attack(*spread, *[HIPS[0]] * 30).pattern_loss_points != none_before.pattern_loss_points
