"""What a clause of a note claims where its words are in no lexicon: a linear model with its doubt.

One column of weights for each trait and one for each value, trained by
tests/train/train_claims.py on notes of many writers and shipped as `data/claims.npz`. A trait and
a value that both stand out make a claim; a logistic curve, fitted on writers the model had not
read, says how likely it is, with what the rules read among its signals. So the model adds what
the rules overlooked and drops what they misread.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from math import exp, log1p
from typing import Any

import numpy as np

from bot.chat.feature_table import Indices, Numbers, Vector
from bot.chat.features import Seen
from bot.chat.linear_model import LinearModel, places_of, unpacked
from bot.chat.note_claims import Judged
from knowledge.vocabulary import TRAITS, Trait, TraitKind, Value

TRAIT_COLUMNS = tuple(Trait)
VALUE_COLUMNS = tuple(Value)
COLUMNS = (*TRAIT_COLUMNS, *VALUE_COLUMNS)

Label = tuple[Trait, Value]

CONSIDERED_FROM = 0.12
"""A trait's score from which it is weighed at all; below it nothing was ever right."""

OFFERED_FROM = 0.3
"""The chance from which a claim too doubtful to make is still worth a button: on the open note
voices about two in five of those offered may be read in the note; of those below, few."""

RULES_STAND_FROM = 0.35
"""The chance below which even what the rules read is dropped. Plain words of the lexicon outweigh
some doubt of the model, whose writers were asked for words that are not plain; where it is deeper,
dropping spares more inventions than it costs claims (on the open note voices)."""

MADE_BESIDE_FROM = 0.8
"""The chance from which a claim is added to a clause whose words the rules have read: most clauses
make one claim, and the words that spoke for it speak for its neighbours too."""

_SPOKE_FOR = 0.2  # of the strongest word's vote; weaker words carry nothing


@dataclass(frozen=True, slots=True, kw_only=True)
class Candidate:
    """A claim that may be made, what speaks for it, and the trait's place among the columns."""

    label: Label
    signals: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Likely:
    """A claim of a clause, and the chance that it is meant."""

    judged: Judged
    chance: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """The claims that a clause makes, and those that it may make, in order of place."""

    made: tuple[Judged, ...]
    doubted: tuple[Likely, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimModel:
    """The weights, the curve over `signals`, and the chance from which a claim is made."""

    linear: LinearModel
    bias: float
    curve: tuple[float, ...]
    made_from: float
    recipe: Mapping[str, Any]

    def chance(self, signals: Sequence[float]) -> float:
        sum_ = self.bias + sum(w * x for w, x in zip(self.curve, signals, strict=True))
        return 1 / (1 + exp(-sum_))

    def weigh(
        self,
        seen: Seen,
        judged: Sequence[Judged],
        *,
        only_rules: bool = False,
        only_often: bool = False,
    ) -> Weighed:
        """The claims of a clause: the rules' that stand, and those only the model sees.

        In doubt is what is likely from `OFFERED_FROM` on, but not enough. What the rules found
        only denied stays as it is: "not slow" says little, but surely. With `only_rules` the
        model adds nothing: it does not know what was only once so. With `only_often` it adds no
        skill: who speeds up a lot need not be good at it.
        """
        vector = self.linear.table.vector(seen)
        by_rule = {(one.trait, one.value): one for one in judged if not one.denied}
        denied = [one for one in judged if one.denied]
        found = candidates(self.linear.scores(vector), seen.words, by_rule)
        chances = {one.label: self.chance(one.signals) for one in found}
        stand = [
            by_rule[label]
            for label, chance in chances.items()
            if label in by_rule and chance >= RULES_STAND_FROM
        ]
        settled = {one.trait for one in (*denied, *stand)}
        places = places_of(seen)[vector.known]
        likely = [
            Likely(
                judged=by_rule.get(label) or self._made(label, vector, places),
                chance=chance,
            )
            for label, chance in chances.items()
            if label[0] not in settled
            and (label in by_rule or not only_rules)
            and chance >= min(OFFERED_FROM, self.made_from)
        ]
        needed = MADE_BESIDE_FROM if stand else self.made_from
        sure = [
            one
            for one in likely
            if (one.judged.trait, one.judged.value) not in by_rule
            and one.chance >= needed
            and not (only_often and _is_skill(one.judged.trait))
        ]
        added = [one.judged for one in sure]
        doubted = [one for one in likely if one not in sure]
        doubted.sort(key=lambda one: one.judged.start)
        made = sorted((*stand, *added), key=lambda one: one.start)
        return Weighed(made=(*denied, *made), doubted=tuple(doubted))

    def _made(self, label: Label, vector: Vector, places: Indices) -> Judged:
        """The claim with the words that spoke for its trait."""
        column = COLUMNS.index(label[0])
        votes = self.linear.votes(vector, places, winner=column, other=None)
        telling = np.flatnonzero(votes >= _SPOKE_FOR * votes.max(initial=0))
        strongest = int(votes.argmax())
        return Judged(
            trait=label[0],
            value=label[1],
            denied=False,
            start=int(telling[0]),
            stop=int(telling[-1]) + 1,
            at=strongest,
        )


def _is_skill(trait: Trait) -> bool:
    return TRAITS[trait].kind is TraitKind.SKILL


def candidates(
    scores: Numbers, words: int, by_rule: Mapping[Label, object]
) -> tuple[Candidate, ...]:
    """The likeliest value of every trait that stands out, and all that the rules read."""
    ruled = {trait for trait, _ in by_rule}
    best, second = np.sort(scores[: len(TRAIT_COLUMNS)])[:-3:-1]
    found = []
    for at, trait in enumerate(TRAIT_COLUMNS):
        score = float(scores[at])
        if score <= CONSIDERED_FROM and trait not in ruled:
            continue
        values = {value: float(scores[COLUMNS.index(value)]) for value in TRAITS[trait].values}
        likeliest = max(values, key=lambda value: values[value])
        for value, spoken in values.items():
            is_ruled = (trait, value) in by_rule
            if not is_ruled and (value is not likeliest or score <= CONSIDERED_FROM):
                continue
            rival = max((other for one, other in values.items() if one is not value), default=0.0)
            ahead = spoken - rival
            found.append(
                Candidate(
                    label=(trait, value),
                    signals=(
                        score,
                        spoken,
                        score - float(second if score >= best else best),
                        ahead,
                        min(score, ahead),
                        min(score, spoken),
                        score * max(ahead, 0.0),
                        float(is_ruled),
                        is_ruled * score,
                        is_ruled * ahead,
                        float(trait in ruled and not is_ruled),
                        (trait in ruled and not is_ruled) * ahead,
                        float(bool(ruled) and trait not in ruled),
                        log1p(words),
                        score * log1p(words),
                        float(best),
                    ),
                )
            )
    return tuple(found)


@cache
def the_claim_model() -> ClaimModel:
    """The model shipped with the bot."""
    return load_claim_model(files("bot.chat").joinpath("data/claims.npz").read_bytes())


def load_claim_model(content: bytes) -> ClaimModel:
    linear, recipe, _ = unpacked(content)
    curve = recipe["curve"]
    return ClaimModel(
        linear=linear,
        bias=curve["bias"],
        curve=tuple(curve["weights"]),
        made_from=curve["made_from"],
        recipe=recipe,
    )


def dump_claim_model(model: ClaimModel) -> bytes:
    """The model as the bytes of an .npz file that `load_claim_model` reads."""
    return model.linear.packed(model.recipe)
