"""What is known of me, asked by me: no answer about the opponents. Our own wordings."""

from __future__ import annotations

from talk import Talk


def test_what_is_asked_of_me_is_told_of_me(fresh: Talk) -> None:
    for said in (
        "devi here, playing with soren",
        "add ike okoye and tamsin brandt",
        "next: ike okoye and tamsin brandt",
        "okoye is tall",
        "im righty, i play right",
    ):
        fresh.say(said)
    for asked in ("what did i note about me", "notes on myself"):
        assert "right-handed, plays right" in fresh.say(asked), asked
    for asked in ("how did i do", "what do u know about me", "report on me"):
        assert fresh.say(asked).startswith("Know of Devi"), asked
    assert "database" in fresh.say("what do you know about me")
    for asked in ("what do you have on okoye", "what did i note about okoye"):
        assert "Okoye" in fresh.say(asked).split("\n")[0], asked
