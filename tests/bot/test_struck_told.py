"""One of us struck by a body or a paddle: no sore elbow, no note, no rally. Our own wordings."""

from __future__ import annotations

from talk import Talk

from knowledge.tactics.contact import CALL

STRUCK = [
    "okafor elbowed me at the net",
    "lindqvist kicked me in the shin",
    "okafor ran into tom at the post on his ernie",
    "okafor's paddle hit my hand",
    "i got elbowed in the face",
    "we crashed into each other me and tom",
]
NOT_STRUCK = [
    "okafor elbows his way to the middle",
    "okafor pushed me back with deep returns",
    "okafor slapped me with a forehand",
    "lindqvist kicks the serve up at me",
    "my elbow hurts",
    "okafor ran into my drive",
]


def test_a_body_that_struck_one_of_us_is_looked_after_and_judged_by_the_referee(demo: Talk) -> None:
    stored = demo.stored()
    assert {said: demo.say(said).split("\n")[0] for said in STRUCK} == dict.fromkeys(STRUCK, CALL)
    assert demo.stored() == stored
    assert [said for said in NOT_STRUCK if CALL in demo.say(said)] == []


def test_who_is_afraid_of_a_partner_is_told_so_again_and_a_nervous_one_is_not(demo: Talk) -> None:
    afraid = demo.say("i am afraid of my partner he yells at me").split("\n")[0]
    assert afraid.startswith("Step aside now")
    assert demo.say("what do i say").split("\n")[0] == afraid
    assert demo.say("and me?").split("\n")[0] == afraid
    assert demo.say("im nervous now").split("\n")[0] != afraid
