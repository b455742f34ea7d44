""" "Both" of one of ours and one of theirs is not our pair. Wording: our own, no source."""

from __future__ import annotations

from talk import Talk


def test_two_lefties_across_the_net_leave_our_pair_as_it_is(fresh: Talk) -> None:
    for said in ("im coaching ilka and noor", "new opponent saskia", "noor plays right"):
        fresh.say(said)
    reply = fresh.say("noor vs saskia both lefty who takes middle")
    assert "Noor: left-handed; Saskia: left-handed" in reply
    assert "both left-handed" not in reply
    assert "both left-handed" in fresh.say("we are both lefty who takes the middle")
