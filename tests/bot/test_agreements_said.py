"""Whose middle it is, shared out between the two of us by saying so."""

from __future__ import annotations

import pytest
from voices import EVENING

from bot.chat.said import AgreementSaid
from bot.chat.understand import understand
from knowledge.vocabulary import AgreementKey


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("tom takes mid on dinks, mira on drives", "slow Tom, fast Mira"),
        ("we agreed mira takes mid on drives, tom on dinks", "slow Tom, fast Mira"),
        ("mira fh mid on drives tom on dinks", "slow Tom, fast Mira"),
        ("tom fh mid on dinks mira on drives", "slow Tom, fast Mira"),
        ("ok new rule: drives in the middle are miras, dinks toms", "slow Tom, fast Mira"),
        ("slow mid mira, fast mid tom", "slow Mira, fast Tom"),
    ],
)
def test_the_middle_shared_out_by_speed_is_an_agreement(text: str, value: str) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, AgreementSaid)
    assert (said.key, said.value) == (AgreementKey.MIDDLE, value)


def test_we_agreed_knows_the_short_word_for_the_middle() -> None:
    (said,) = understand("we agreed mid is the lefty's", chat=EVENING)
    assert isinstance(said, AgreementSaid)
    assert said.key is AgreementKey.MIDDLE


@pytest.mark.parametrize(
    "text",
    [
        "who takes mid on drives, mira or tom, dinks too",
        "should tom take mid on dinks and mira on drives",
        "tom takes mid on dinks, mira on drives?",
        "tom takes mid",
        "okafor takes mid on dinks, lindqvist on drives",
        "tom takes mid on dinks and mira on drives and we keep losing",
        "tom takes mid on dinks and drives, mira too",
    ],
)
def test_what_asks_or_tells_more_settles_nothing(text: str) -> None:
    assert not any(isinstance(one, AgreementSaid) for one in understand(text, chat=EVENING))


@pytest.mark.parametrize(
    ("text", "owner"),
    [
        ("tom's fh is bigger than mine so middle is his, always", "Tom"),
        ("mira's forehand is better tbh, so the mid is hers", "Mira"),
        ("the middle is tom's from now on", "Tom"),
        ("my backhand is stronger so i take the middle", "Mira"),
        ("the middle is mine", "Mira"),
    ],
)
def test_whose_the_middle_is_said_outright_is_an_agreement(text: str, owner: str) -> None:
    (said,) = understand(text, chat=EVENING)
    assert isinstance(said, AgreementSaid)
    assert (said.key, said.value) == (AgreementKey.MIDDLE, f"{owner} takes the middle")


@pytest.mark.parametrize(
    "text",
    [
        "is the middle mine", "okafor is slow so the middle is his", "the middle is lindqvists",
        "if my forehand is better so the middle is mine", "the middle is open so tom drives",
    ],
)  # fmt: skip
def test_the_middle_asked_about_or_theirs_is_no_agreement(text: str) -> None:
    assert not any(isinstance(one, AgreementSaid) for one in understand(text, chat=EVENING))


def test_i_and_he_are_named_in_what_is_settled_of_the_middle() -> None:
    settled = {
        "agreed: i take slow middle, Tom takes fast": "slow Mira, fast Tom",
        "we agreed he takes the fast middle and i take the slow ones": "slow Mira, fast Tom",
        "deal: slow middle is mine, fast middle is Tom's": "slow Mira, fast Tom",
        "agreed: my partner takes dinks in the middle, i take drives": "slow Tom, fast Mira",
        "agreed i take the middle": "Mira takes the middle",
    }
    for text, value in settled.items():
        (said,) = understand(text, chat=EVENING)
        assert isinstance(said, AgreementSaid)
        assert said.value == value
