"""Short words that lean on the answer before: of the wind, and of a partner's head."""

from __future__ import annotations

from talk import Talk


def test_the_wind_and_a_head_are_still_spoken_of(demo: Talk) -> None:
    demo.say("wind at our backs")
    assert "wind behind" in demo.say("does it change the 3rd").lower()
    assert "behind" in demo.say("return target")
    assert demo.say("we changed ends").startswith("Hit through it")
    assert "against" in demo.say("return target")
    assert demo.say("did we change ends?").startswith("Change ends after")
    demo.say("tom is frustrated")
    for said in ("what do i say", "what do i tell him"):
        assert demo.say(said).startswith("Say: "), said
    assert demo.say("how do i reset him").startswith("Breathe out together")
    assert demo.say("and me?").startswith("Breathe out, drop the shoulders")
    demo.say("5-3-1 us")
    assert demo.say("what do i say").startswith("5-3-1")
