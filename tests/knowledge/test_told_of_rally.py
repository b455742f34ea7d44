"""A net cord, a rally with somebody hurt, a foot at a bounced ball: told from what is much alike.

The serve alone has to clear the kitchen: 2022 edition, 4.A.2; an injury stops no rally: 2018, 11.F;
only a volley is a kitchen fault: 2026, 11.A.
"""

from __future__ import annotations

import pytest

from knowledge.rulebook.finding import find_rule
from knowledge.rulebook.theirs_to_call import tells_their_touch


def found(said: str, before: str = "") -> str | None:
    rule = find_rule(said, before=before).rule
    return None if rule is None else rule.name


@pytest.mark.parametrize(
    "said",
    [
        "ugh that was a net cord and it died on our side. do we replay",
        "net cord, it died on our side, do we replay",
        "it clipped the tape and dropped dead on our side, redo?",
        "net cord dropped dead in our kitchen mid point, play it again?",
    ],
)
def test_a_net_cord_in_a_rally_has_nothing_to_clear(said: str) -> None:
    assert found(said) == "net cord"


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("net cord serve dropped into the kitchen, replay?", "serve net kitchen"),
        ("net cord on my serve do we replay", "serve net"),
        ("is there still a let", "serve net"),
    ],
)
def test_that_of_a_serve_is_a_serves(said: str, name: str) -> None:
    assert found(said) == name


@pytest.mark.parametrize(
    "said",
    [
        "okafor foot faulted when he hit that, his toe was on the line, but the ball had bounced",
        "ball bounced, then okafor hit it with his toe on the kitchen line, fault?",
        "he volleyed it with a toe on the line but it had bounced",
        "my toe was on the kitchen line but the ball bounced first legal?",
    ],
)
def test_a_foot_in_at_a_bounced_ball_is_legal(said: str) -> None:
    assert found(said) == "kitchen enter"


@pytest.mark.parametrize(
    "said",
    [
        "he volleyed it before it bounced with a toe on the line, fault?",
        "he hit it out of the air with a toe on the line",
        "she volleyed and her momentum carried her in after the ball bounced",
        "he stepped in the kitchen on a volley, but the ball bounced out",
    ],
)
def test_a_volley_stays_a_fault(said: str) -> None:
    rule = find_rule(said).rule
    assert rule is not None
    assert rule.ruling.call.startswith("Fault")


@pytest.mark.parametrize(
    "said",
    [
        "imani rolled her ankle, do we get the point",
        "he twisted his knee do we replay",
        "her calf cramped up, who gets the point",
    ],
)
def test_whose_rally_it_is_with_somebody_hurt(said: str) -> None:
    assert found(said) == "hurt in the rally"


def test_a_ball_that_hit_somebody_keeps_its_rule() -> None:
    assert found("ball hit his sore shoulder, whose point") == "ball hits player"


@pytest.mark.parametrize("said", ["wait he touched the net", "okafor brushed the tape on that one"])
def test_a_touch_of_theirs_is_told(said: str) -> None:
    assert tells_their_touch(said, ours=["Tom", "Mira"])


@pytest.mark.parametrize(
    "said", ["i touched the net", "tom touched the net", "my partner touched the net, fault?"]
)
def test_a_touch_of_ours_is_not(said: str) -> None:
    assert not tells_their_touch(said, ours=["Tom", "Mira"])
