"""What a report says of one trait that is asked after; what is right: by the notes it is given."""

from __future__ import annotations

import pytest
from noted_players import TODAY, player

from knowledge.planning.trait_told import led_by, trait_told
from knowledge.trait_asked import TraitAsked
from knowledge.vocabulary import Trait, Value

HALE = player(3, "Hale", None, "hand right", "poaching often", "foot_speed weakness")


@pytest.mark.parametrize(
    ("trait", "value", "call"),
    [
        (Trait.HAND, Value.RIGHT, "Yes. Hale: right-handed."),
        (Trait.HAND, Value.LEFT, "No. Hale: right-handed."),
        (Trait.HAND, None, "Hale: right-handed."),
        (Trait.HEIGHT, Value.TALL, "Not noted: Hale's height."),
        (Trait.POACHING, Value.OFTEN, "Yes. Hale: poaches a lot."),
        (Trait.POACHING, Value.RARELY, "No. Hale: poaches a lot."),
        (Trait.FOOT_SPEED, Value.STRENGTH, "No. Hale: slow feet."),
        (Trait.POACHING, Value.STRENGTH, "Not noted: Hale's poaching."),
    ],
)
def test_one_player(trait: Trait, value: Value | None, call: str) -> None:
    told, reasons = trait_told([HALE], TraitAsked(trait=trait, value=value), today=TODAY)
    assert told == call
    assert bool(reasons) is not call.startswith("Not noted")
    assert all("1 note" in str(one.source) for one in reasons)


def test_two_players_are_told_by_name_and_nothing_twice() -> None:
    other = player(4, "Ruiz", None, "hand left")
    told, reasons = trait_told([other, HALE], TraitAsked(trait=Trait.HAND), today=TODAY)
    assert told == "Ruiz: lefty. Hale: right-handed."
    assert led_by(reasons, reasons[::-1]) == reasons


def test_of_several_nothing_is_noted_once_and_whole() -> None:
    other = player(4, "Okonjo-Castellan", None)
    asked = TraitAsked(trait=Trait.THIRD_SHOT_DROP)
    told, reasons = trait_told([HALE, other], asked, today=TODAY)
    assert told == "Not noted of either: third-shot drop."
    assert not reasons
