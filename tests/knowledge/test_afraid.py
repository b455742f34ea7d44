"""Fear of a person beside us on court is heard; fear of a shot, or of pace, is none.

The line follows general guidance, from memory: away from it, to people who can help.
"""

from __future__ import annotations

from knowledge.afraid import afraid_of_somebody
from knowledge.distress import Distress, distress_of

OURS = ("Ottavia Lind", "Bram Veld")
AFRAID = (
    "Bram shouts at me on court and i am afraid of him",
    "im afraid of bram and dont want to play on",
    "i'm scared of my partner when he gets angry",
    "i dont feel safe next to him on court",
    "he threw his paddle at me",
    "he slapped me on the changeover",
    "bram scares me",
)
NOT_AFRAID = (
    "i am afraid of Timo",
    "i'm scared of him at the net",
    "im scared of her serve",
    "bram is scared of the net",
    "im afraid of bram missing",
    "he pushed me back with deep returns",
    "he punches me volleys",
    "her serve kicks at me",
    "she keeps pushing me with her dinks",
    "timo throws the ball at me",
    "is it allowed that he shouts at me",
)


def test_fear_of_a_partner_is_no_nerves_and_fear_of_a_shot_is() -> None:
    assert {distress_of(said, ours=OURS) for said in AFRAID} == {Distress.AFRAID}
    assert [said for said in NOT_AFRAID if afraid_of_somebody(said, ours=OURS)] == []
