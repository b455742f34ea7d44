"""Claims made of the right words, of which the words beside them say another thing.

A claim stays as it was read, is turned (another trait, another value, denied) or goes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from bot.chat.note_called_in_vain import called_in_vain
from bot.chat.note_height_told import height_told, of_little
from bot.chat.note_hits_hard import hits_hard
from bot.chat.note_less_than_thought import less_than_thought
from bot.chat.note_line import NoteLine
from bot.chat.note_lob_over_us import lob_over_us
from bot.chat.note_mixed_depth import is_mixed_depth
from bot.chat.note_off_a_wing import speed_up_off_a_wing
from bot.chat.note_seldom import seldom
from bot.chat.note_sides_shared import sides_shared
from bot.chat.note_slow_back import slow_back
from bot.chat.note_stroke_speed import speed_of_a_stroke
from bot.chat.note_when_set import only_when_set
from bot.chat.note_witness_inside import seen_by_another
from bot.chat.said import Claim

_READERS: tuple[Callable[[Claim, NoteLine], Claim | None], ...] = (
    called_in_vain,
    less_than_thought,
    is_mixed_depth,
    speed_up_off_a_wing,
    hits_hard,
    lob_over_us,
    of_little,
    seen_by_another,
    seldom,
    slow_back,
    speed_of_a_stroke,
    only_when_set,
)
"""Each gives the claim back as the words around it leave it, None where they leave nothing."""


def as_told(claims: Iterable[Claim], note: NoteLine) -> tuple[Claim, ...]:
    """The claims as the whole note tells them, of two that come to the same the first.

    What was moved to a trait by the words that judge it outweighs what else was read of that trait.
    """
    read = [(claim, told) for claim in claims if (told := _read(claim, note)) is not None]
    moved = {
        (told.player, told.trait): told.value for was, told in read if was.trait is not told.trait
    }
    kept: dict[object, Claim] = {}
    stated = [told for _, told in read]
    for one in (*stated, *sides_shared(stated, note), *height_told(note)):
        if moved.get((one.player, one.trait), one.value) is one.value:
            kept.setdefault((one.player, one.trait, one.value, one.denied, one.tag), one)
    return tuple(kept.values())


def _read(claim: Claim, note: NoteLine) -> Claim | None:
    told: Claim | None = claim
    for reader in _READERS:
        told = reader(told, note) if told is not None else None
    return told
