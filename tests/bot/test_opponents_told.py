"""Who comes next, told by the round or as what is right after a slip: a match, and nothing else."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.fixture
def pool(fresh: Talk) -> Talk:
    fresh.say("we are petronella and bronagh")
    fresh.say("pool: oduya/halvorsen, tamsin/yuki, dov/marisela")
    return fresh


@pytest.mark.parametrize(
    "said",
    [
        "qf now v lochlan/mireille",
        "playing lochlan and mireille next",
        "bracket r1 v lochlan and mireille bo3 to 11",
        "semis against lochlan & mireille, court 4",
        "no its lochlan and mireille",
        "hang on its lochlan/mireille next",
        "r16 lochlan and mireille 2:30 crt 5",
        "ok final now lochlan and mireille",
        "quarterfinal vs lochlan and mireille at 3pm",
    ],
)
def test_a_pair_nobody_knows_is_the_next_match_once_added(pool: Talk, said: str) -> None:
    assert pool.say(said) == "No lochlan and mireille in your book yet."
    assert pool.say("yes").startswith("Next: Lochlan and Mireille")


@pytest.mark.parametrize(
    "said",
    [
        "hang on its dov next",
        "its dov next not tamsin",
        "its dov next, not tamsin and yuki",
        "not tamsin, dov next",
        "hold on next is dov/marisela not tamsin/yuki",
        "sorry its dov and marisela next",
        "we got dov in round 2",
        "now facing dov and marisela",
        "oh wait dov is next actually",
    ],
)
def test_a_pair_of_the_pool_comes_first(pool: Talk, said: str) -> None:
    assert "Next: Dov and Marisela, one game to 11." in pool.say(said)
    assert pool.say("lost 7-11").startswith("Lost 7-11")
    assert "3 Dov/Marisela: lost 7-11" in pool.say("pool")


@pytest.mark.parametrize(
    "said", ["semi is dov/marisela again", "final v dov marisela", "bronze match dov and marisela"]
)
def test_a_match_of_a_bracket_is_not_of_the_pool(pool: Talk, said: str) -> None:
    assert pool.say(said).startswith("Next: Dov and Marisela, best of 3 to 11.")
    pool.say("won 2-0")
    assert "Pool: 0 won, 0 lost, 3 to play." in pool.say("pool")


def test_a_game_of_a_bracket_never_ends_a_pool_match(pool: Talk) -> None:
    pool.say("bracket r1 v lochlan and mireille bo3 to 11")
    pool.say("we won g1 11-3")
    assert "Game 1 ours, 11-3." in pool.tap("add lochlan and mireille")
    assert pool.say("we won g2 11-7").startswith("Won 11-3 11-7.")
    assert "Pool: 0 won, 0 lost, 3 to play." in pool.say("pool")


@pytest.mark.parametrize(
    "said",
    [
        "semi was tough",
        "the final was close, dov got tired",
        "its windy",
        "playing with dov next",
        "dov now lobs",
        "playing dov",
        "no its marisela who lobs",
        "is dov next?",
    ],
)
def test_what_only_sounds_like_it_announces_nothing(pool: Talk, said: str) -> None:
    before = pool.context.match
    assert "Next: " not in pool.say(said)
    assert pool.context.match == before
    assert not any(one.announces for one in pool.context.pendings)
