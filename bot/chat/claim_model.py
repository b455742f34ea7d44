"""What a note claims of a player where its words are in no lexicon: small networks in doubt.

A score for every trait and, from what the trait's head looked at, one for every value it takes and
for every value denied. How well and how often are asked apart: "drops everything, half in the net".
Trained by tests/train/train_claims.py on notes of many writers and shipped as `data/claims.npz`.
What the rules read is among what it sees: it adds what they overlooked and drops what they misread.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from importlib.resources import files
from typing import Any

import numpy as np
import numpy.typing as npt

from bot.chat.network import Looked, Network
from knowledge.dataclass import dataclass
from knowledge.reading.feature_table import Numbers
from knowledge.reading.stored import Source, arrays_of, as_bytes, as_text, packed_file
from knowledge.vocabulary import TRAITS, Trait, Value

SKILL = frozenset({Value.STRENGTH, Value.WEAKNESS})

Said = tuple[Value, bool]
"""A value, and whether it is denied."""

SAID_COLUMNS: tuple[Said, ...] = tuple(
    (value, denied) for denied in (False, True) for value in Value
)

OFFERED_FROM = 0.2
"""The chance from which a claim too doubtful to make is still worth a button. From .15 a third more
buttons find one claim in a thousand more."""

MADE_FROM = 0.75
"""The chance from which a claim is made. A wrong one costs more than a tap: by either of two labels
.7 finds 94.4 of 100 claims of the voices that may be read at once and invents 3.9; .75 finds 94.1
and invents 3.6; .8 finds 93.5 and invents 3.1. Of four later ones .75 finds 2 more than .8, and
invents no more."""

ADDED_TO_PLAIN_FROM = 0.9
"""The same in a clause of which the rules know every word: what they don't read there is rarely
said ("big backhand, weak forehand" would be a drive too). Invented are 3.3 instead of 3.6."""

RULES_STAND_FROM = 0.4
"""The chance below which what the rules read is not claimed but a button: the model has read many
more ways to say it than the lexicon holds. From .3 on, and facts from .1, 3.3 claims in a hundred
are invented."""

PLAIN_STANDS_FROM = 0.1
"""The same where the rules know every word of the clause: from .4 "no backhand" would be a button,
and two claims in 320 of four late voices fewer are invented; of nine others none."""

FACTS_STAND_FROM = 0.3
"""The same for a hand, a side or a height, which a note often says in passing ("speeds up from the
right side")."""

RULES_COUNT = 2.1
"""How many times likelier than what the rules read its contrary must be to stand in its place. Set
on the cases of tests/cases/notes.toml; without it (1) the open voices' claims are found 93.1 times
in a hundred instead of 93.5, and invented 8.1 instead of 8.4."""

RULES_OFFERED_FROM = 0.1
"""The chance from which what the rules read and the model doubts is offered as a button."""

_SPOKE_FOR = 0.25  # of the word most looked at; what got less carries nothing


def _heads() -> Iterator[tuple[Trait, frozenset[Value]]]:
    for trait in Trait:
        values = frozenset(TRAITS[trait].values)
        yield trait, values & SKILL or values
    for trait in Trait:
        values = frozenset(TRAITS[trait].values)
        if values > SKILL:
            yield trait, values - SKILL


HEADS = tuple(_heads())
"""What is asked of a note: a trait, and the values of which it says one at most. How often comes
last for the few traits of which how well is asked too."""

TAKES = np.array([[value in values for value, _ in SAID_COLUMNS] for _, values in HEADS])
"""Which values, affirmed or denied (columns), a head (row) may find."""


def head_of(trait: Trait, value: Value) -> int:
    """The row that is asked for this value of the trait."""
    return next(
        row for row, (asked, values) in enumerate(HEADS) if asked is trait and value in values
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Likely:
    """A claim that may be meant, its chance, and the words `start` up to `stop` that speak for it.

    `at` is the word that speaks loudest. `denied`: only that it is not so is meant.
    """

    trait: Trait
    value: Value
    chance: float
    start: int
    stop: int
    at: int
    denied: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimNetwork:
    """One reader: the network, one head for each of HEADS, and the layers beneath a head.

    `inner` (3 width, n) with a bias per head (heads, n), then `outer` (n, values) with its bias.
    """

    network: Network
    inner: Numbers
    inner_bias: Numbers
    outer: Numbers
    outer_bias: Numbers

    def values(self, looked: Looked, row: int) -> Numbers:
        """The chance of each value, where the head's trait is spoken of."""
        hidden = np.maximum(looked.seen[row] @ self.inner + self.inner_bias[row], 0)
        sums = np.where(TAKES[row], hidden @ self.outer + self.outer_bias, -np.inf)
        values = np.exp(sums - sums.max())
        chances: Numbers = values / values.sum()
        return chances


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimModel:
    """Several readers, trained alike from other beginnings: a chance is the mean of theirs.

    One alone is sure of much that it would read otherwise had it begun otherwise (Lakshminarayanan,
    Pritzel and Blundell 2017, Simple and Scalable Predictive Uncertainty Estimation Using Deep
    Ensembles, from memory).
    """

    readers: tuple[ClaimNetwork, ...]
    recipe: Mapping[str, Any]

    def read(self, words: Sequence[Sequence[int]], *, above: float) -> tuple[Likely, ...]:
        """Every value of every trait that is likelier than `above`, head by head.

        `words` are the keys of each word's features (note_features.see_note).
        """
        if not words:
            return ()
        looks = [reader.network.read(words) for reader in self.readers]
        traits = np.mean([1 / (1 + np.exp(-looked.scores)) for looked in looks], axis=0)
        found: list[Likely] = []
        for row in map(int, np.flatnonzero(traits > above)):
            chances = np.mean(
                [
                    reader.values(looked, row) / (1 + np.exp(-looked.scores[row]))
                    for reader, looked in zip(self.readers, looks, strict=True)
                ],
                axis=0,
            )
            places = np.mean([looked.places[row] for looked in looks], axis=0)
            found += [
                _likely(row, int(column), float(chances[column]), places)
                for column in np.flatnonzero(chances > above)
            ]
        return tuple(found)


def _likely(row: int, column: int, chance: float, places: Numbers) -> Likely:
    strongest = int(places.argmax())
    telling = places >= _SPOKE_FOR * places[strongest]
    start = stop = strongest
    while start and telling[start - 1]:
        start -= 1
    while stop + 1 < len(telling) and telling[stop + 1]:
        stop += 1
    value, denied = SAID_COLUMNS[column]
    return Likely(
        trait=HEADS[row][0],
        value=value,
        denied=denied,
        chance=chance,
        start=start,
        stop=stop + 1,
        at=strongest,
    )


@cache
def the_claim_model() -> ClaimModel:
    """The model shipped with the bot."""
    return load_claim_model(files("bot.chat").joinpath("data/claims.npz"))


_LAYERS = ("inner", "inner_bias", "outer", "outer_bias")


def load_claim_model(source: Source) -> ClaimModel:
    arrays = arrays_of(source)
    recipe = json.loads(as_text(arrays["recipe"]))
    readers = (_reader(arrays, f"reader{number}_") for number in range(len(recipe["seeds"])))
    return ClaimModel(readers=tuple(readers), recipe=recipe)


def _reader(arrays: Mapping[str, npt.NDArray[Any]], prefix: str) -> ClaimNetwork:
    own = {
        name.removeprefix(prefix): array
        for name, array in arrays.items()
        if name.startswith(prefix)
    }
    return ClaimNetwork(
        network=Network.load(own), **{name: own[name].astype(np.float32) for name in _LAYERS}
    )


def dump_claim_model(model: ClaimModel) -> bytes:
    """The model as the bytes of an .npz file that `load_claim_model` reads."""
    arrays: dict[str, Any] = {"recipe": as_bytes(json.dumps(dict(model.recipe)))}
    for number, reader in enumerate(model.readers):
        layers = {name: getattr(reader, name).astype(np.float16) for name in _LAYERS}
        for name, array in (reader.network.arrays() | layers).items():
            arrays[f"reader{number}_{name}"] = array
    return packed_file(arrays)
