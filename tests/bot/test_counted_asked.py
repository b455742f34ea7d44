"""Whose point it was is as it was counted, games as they stand; a miss called in is no rally."""

from __future__ import annotations

from talk import Talk


def test_behind_a_rally_it_is_as_counted_and_else_asked(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("we serve")
    assert demo.say("is that our point").startswith("Ask the referee")
    demo.say("hale hit it out")
    assert demo.say("so is that our point?").startswith("Your rally")
    demo.say("lost it")
    assert demo.say("thats our point?").startswith("Their rally")


def test_a_ball_of_ours_that_they_call_in_is_no_miss(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    demo.say("we serve")
    before = demo.stored()
    for said in (
        "our ball was out but they called it in",
        "my drive went long but hale said it was in",
    ):
        assert "so it's in" in demo.say(said)
    assert demo.stored() == before
    assert demo.say("my ball was out but they called it in, our point").startswith("1-0-2")


def test_what_we_want_undone_of_their_call_is_theirs_alone(demo: Talk) -> None:
    demo.say("hale called a ball out that was clearly in")
    assert demo.say("can they get it reversed").startswith("No: only the caller")


def test_another_rule_asked_behind_such_a_call_is_answered_too(demo: Talk) -> None:
    demo.say("next: ruiz and hale")
    told = demo.say("ball was out but hale called it in, and do we need to win by 2")
    assert "so it's in" in told
    assert "Win by two" in told
    assert "Win by two" not in demo.say("they called it out and it was in, do we replay")


def test_the_score_in_games_is_the_games_that_stand(demo: Talk) -> None:
    for said in ("next: ruiz and hale", "we serve", "won 11-7"):
        demo.say(said)
    for asked in ("whats the score in games", "how many games is it", "games so far"):
        assert demo.say(asked).startswith("Game 1 ours, 11-7."), asked
