"""A score that nobody has yet is asked about: nothing is counted. Calls by the 2025 rulebook."""

from __future__ import annotations

from talk import Talk


def test_who_serves_after_a_rally_and_what_a_score_is_worth(fresh: Talk) -> None:
    fresh.say("we are ana and bo")
    fresh.say("next: gell and rudd")
    fresh.tap("add gell and rudd")
    fresh.say("9-9-1 us")
    stored = fresh.stored()["entry"]
    for asked in ("do they get the serve if we miss", "if we lose this who serves"):
        assert fresh.say(asked).startswith("If they win this rally: 9-9-2. We serve."), asked
    assert fresh.say("do we keep the serve if they net it").startswith(
        "If you win this rally: 10-9-1. We serve."
    )
    assert "At 13-13-1, they serve." in fresh.say("whats it worth if its 13-13-1 them")
    assert "At 8-8-2, " in fresh.say("what now at 8-8-2")
    assert fresh.say("6 switches ends right?").startswith("Change ends after each game.")
    assert fresh.stored()["entry"] == stored
    fresh.say("9-9-2 us")
    assert fresh.say("do they serve if we lose it").startswith(
        "If they win this rally: 9-9-1. They serve"
    )
