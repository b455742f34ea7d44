"""What our book says of simulated opponents: noisy notes, and rates of rallies logged before.

Whoever writes a note looks at one trait of one opponent, sees it with an error, and writes only
what stands out; some notes say the opposite of what was seen. Hands and ready positions are facts
of every book that has been opened at all. Frequencies are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

import numpy as np
from noted_players import TODAY
from plan_players import HABITS, SKILLS, TruePair, TruePlayer

from knowledge.evidence import Observation, RateTally, profile
from knowledge.situation import OnCourt
from knowledge.vocabulary import EvidenceId, PlayerId, Rate, Seen, Trait, Value

FIRST: Final = 3
"""Our opponents' numbers begin here: Okafor is 3, Lindqvist 4."""

NAMES: Final = ("Okafor", "Lindqvist")
AUTHORS: Final = ("mira", "tom", "sam")
STANDS_OUT: Final = 0.5
"""Nearer to the usual than this, in standard deviations, nobody writes it down."""

OLDEST_DAYS: Final = 120
HEARSAY: Final = 0.25
"""Part of the notes that a friend told us."""

SLOPE: Final = 0.5
"""Log-odds of a rate for one standard deviation of skill: of a hundred returns the usual 93 make
it, of a good returner 96."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scouting:
    """How much a book holds and how good it is.

    `sight_sd` is the error of what is seen, in skill's standard deviations; `wrong` the part of
    the notes that say the opposite. `rallies` were logged against them before.
    """

    notes: int = 10
    sight_sd: float = 0.7
    wrong: float = 0.05
    rallies: int = 40
    opened: bool = True


NOTHING: Final = Scouting(notes=0, rallies=0, opened=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Book:
    """Both opponents as our book has them, and how many of its notes are wrong about the truth."""

    theirs: tuple[OnCourt, OnCourt]
    notes: int
    false_notes: int


def unnoted(pair: TruePair) -> tuple[OnCourt, OnCourt]:
    """The opponents by name and side, and nothing else."""
    return _on_court(pair, [], [])


def scouted_book(pair: TruePair, scouting: Scouting, rng: np.random.Generator) -> Book:
    """What a book of that kind says of them."""
    notes, false = [], 0
    for number in range(scouting.notes):
        note, is_true = _note(pair, number, scouting, rng)
        notes.append(note)
        false += not is_true
    facts = [fact for place in (0, 1) for fact in _facts(pair[place], place)]
    tallies = [
        tally
        for place in (0, 1)
        for tally in _tallies(pair[place], place, scouting.rallies // 4, rng)
    ]
    told = [*notes, *(facts if scouting.opened else [])]
    return Book(theirs=_on_court(pair, told, tallies), notes=scouting.notes, false_notes=false)


def _on_court(
    pair: TruePair, notes: list[Observation], tallies: list[RateTally]
) -> tuple[OnCourt, OnCourt]:
    first, second = (
        OnCourt(
            profile=profile(
                PlayerId(FIRST + place), NAMES[place], notes, today=TODAY, tallies=tallies
            ),
            side=pair[place].side,
        )
        for place in (0, 1)
    )
    return first, second


def _note(
    pair: TruePair, number: int, scouting: Scouting, rng: np.random.Generator
) -> tuple[Observation, bool]:
    """A note, and whether it is right about which side of the usual they are on."""
    traits = (*SKILLS, *HABITS)
    while True:
        place, trait = int(rng.integers(2)), traits[int(rng.integers(len(traits)))]
        truth = pair[place].skills[trait]
        seen = truth + scouting.sight_sd * rng.standard_normal()
        if abs(seen) >= STANDS_OUT:
            break
    is_up = (seen > 0) is not (rng.random() < scouting.wrong)
    is_hearsay = rng.random() < HEARSAY
    return (
        _observation(
            place,
            f"note:{number + 1}:1",
            trait,
            _value(trait, is_up=bool(is_up)),
            seen=Seen.HEARSAY if is_hearsay else Seen.LIVE,
            author=AUTHORS[int(rng.integers(len(AUTHORS)))],
            age_days=int(rng.integers(1, OLDEST_DAYS)),
        ),
        bool(is_up) is (truth > 0),
    )


def _value(trait: Trait, *, is_up: bool) -> Value:
    if trait in HABITS:
        return Value.OFTEN if is_up else Value.RARELY
    return Value.STRENGTH if is_up else Value.WEAKNESS


def _facts(one: TruePlayer, place: int) -> Iterator[Observation]:
    for trait, value in ((Trait.HAND, Value(one.hand.value)), (Trait.READY_POSITION, one.ready)):
        yield _observation(place, f"note:{9000 + place}:{trait}", trait, value)


def _observation(
    place: int,
    evidence: str,
    trait: Trait,
    value: Value,
    *,
    seen: Seen = Seen.LIVE,
    author: str = "mira",
    age_days: int = 1,
) -> Observation:
    return Observation(
        evidence=EvidenceId(evidence),
        player=PlayerId(FIRST + place),
        trait=trait,
        value=value,
        weight=1.0,
        seen=seen,
        author=author,
        day=TODAY - age_days,
        words="",
    )


_LOGGED = (
    (Rate.RETURN_IN, Trait.RETURN, 0.93),
    (Rate.RETURN_DEEP, Trait.RETURN_DEPTH, 0.5),
    (Rate.THIRD_FORWARD, Trait.THIRD_SHOT_DROP, 0.6),
)
"""Rates that a log tells of, the skill behind each, and the usual rate: common practice."""


def _tallies(
    one: TruePlayer, place: int, chances: int, rng: np.random.Generator
) -> Iterator[RateTally]:
    """Each of the two returns a quarter of the logged rallies and hits a quarter of the thirds."""
    if chances == 0:
        return
    for rate, trait, level in _LOGGED:
        log_odds = np.log(level / (1 - level)) + SLOPE * one.skills[trait]
        made = int(rng.binomial(chances, 1 / (1 + np.exp(-log_odds))))
        names = [EvidenceId(f"rally:{place}:{rate}:{n}") for n in range(chances)]
        yield RateTally(
            player=PlayerId(FIRST + place),
            rate=rate,
            day=TODAY - 1,
            made=tuple(names[:made]),
            missed=tuple(names[made:]),
            logged=4 * chances,
        )
