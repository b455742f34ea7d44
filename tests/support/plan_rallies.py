"""A doubles rally as a chain of shots, played for many simulated pairs at once.

The rally, from our view. We serve every other rally, to the right and the left court in turn.

1. The serve goes in or not. The receiver meets it with the wing of that lane, or jammed.
2. The return goes in or not, deep or short.
3. The third is a drop or a drive at one of them or the middle: missed, sat up, met evenly, or
   punished. Theirs, off our return, comes from whoever we returned at.
4. From the line both dink in turn. A dink of ours at a foot of one of them is missed, missed back,
   popped up, dinked back or attacked; the lane counts. Theirs are of usual quality.
5. A ball that sits up is sped up at a place on a body: won or lost, hands and jam deciding.

Every ball meets a skill z, in standard deviations: the true one of the wing it goes to, more where
it was waited for (plan_reading), more where a partner who was ready for it and is better takes it.
One standard deviation moves the log-odds of a shot's outcome by SLOPE. All rates are those of good
club and tournament players: common practice, no source, and nothing here is read from the engine's
sizes. Outside: the side that serves wins 44 in 100, as good players say (no source); 80 of 100
rallies have 3 to 10 shots, where professional men's doubles have 60 (International Journal of
Performance Analysis in Sport, read): ours are shorter.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

import numpy as np
from numpy.typing import NDArray
from plan_choices import DINK_ON, OPTIONS, Decision
from plan_reading import Draws, Floats, Ints, Reader
from plan_targets import Met

Flags = NDArray[np.bool_]

SLOPE: Final = 0.5
"""Log-odds of a shot's outcome for one standard deviation of the skill that it meets."""

OUR_MISSES: Final[Mapping[str, float]] = MappingProxyType(
    {
        "serve corner": 0.06,
        "serve body": 0.04,
        "return": 0.06,
        "third short": 0.08,
        "third deep": 0.13,
        "speed-up": 0.08,
    }
)
THIRDS: Final[Mapping[tuple[str, bool], tuple[float, float]]] = MappingProxyType(
    {
        ("drop", True): (-1.5, -0.5),
        ("drop", False): (-1.5, 0.0),
        ("drive", True): (-0.7, -0.5),
        ("drive", False): (-1.5, 0.4),
    }
)
"""Log-weights of a third that sits up for us and of one that is punished, by shot and by a short
return or a deep one: off a short one a drive, off a deep one a drop."""

MET_EVENLY: Final = 0.4
"""The log-weight of a third that is met evenly, ours and theirs."""

FIRST_DINK_OURS: Final = 0.4
"""How often the first dink after our third is ours to aim."""

RETURN_MISSED: Final = -2.6
"""Log-odds: 7 in 100."""

DEPTH_WEIGHT: Final = 0.6
OUR_RETURN_DEEP: Final = 0.55
THEIR_THIRD: Final = ((-1.9, -0.2), (-2.3, -0.7))
"""Off our deep and our short return: log-odds of a miss, log-weight of one that sits up."""

DINK_REPLY: Final = (-2.5, -1.6, -2.0)
"""Log-weights of a dink of ours missed back, popped up and attacked, against one dinked back."""

ATTACKS_WITH_SKILL: Final = 0.8
SPEED_UP_WINS: Final = 0.5
"""Log-odds of the hands battle after a speed-up that is in, at a usual pair of hands."""

THEIR_SERVE_MISSES: Final = 0.05
THEIR_DINK: Final = (0.03, 0.10, 0.08)
"""A dink of theirs that we miss, that we pop up, and one that sits up for us."""

ATTACKED_CHANCE: Final = 0.42
"""Our chance once they speed up a ball that sits up for them."""

PUNISHED_CHANCE: Final = 0.30
"""Our chance after a third of ours that sat up while we were still back."""

LONGEST: Final = 12
"""Dinks of ours in a rally; the few that go on are even."""

FIRST_DINK: Final = 16
PER_DINK: Final = 10
DRAWS: Final = FIRST_DINK + PER_DINK * LONGEST
"""Random numbers that a rally may use, each for one purpose, so that plans are paired."""


def _sigmoid(value: Floats) -> Floats:
    found: Floats = 1 / (1 + np.exp(-value))
    return found


def _which(uniform: Floats, *log_weights: Floats | float) -> Ints:
    """Which of several outcomes: their weights are e to these."""
    weights = np.exp(np.stack(np.broadcast_arrays(*log_weights), axis=1))
    reached = np.cumsum(weights, axis=1)
    found: Ints = (uniform[:, None] * reached[:, -1:] >= reached[:, :-1]).sum(axis=1)
    return found


@dataclass(slots=True, kw_only=True)
class Court:
    """The rallies that all simulated pairs play at once: who they meet, how they read us.

    Its methods take the rows that a stage is played in; `luck` holds as many columns as one block
    of pairs, and every block has the same.
    """

    met: Met
    draws: Draws
    reader: Reader
    slope: float
    won: Flags
    shots: Ints
    luck: Floats

    @classmethod
    def of(cls, met: Met, draws: Draws, reader: Reader, *, slope: float = SLOPE) -> Court:
        size = met.columns
        return cls(
            met=met,
            draws=draws,
            reader=reader,
            slope=slope,
            won=np.zeros(size, dtype=bool),
            shots=np.zeros(size, dtype=np.int64),
            luck=np.zeros((DRAWS, 1)),
        )

    def play(self, number: int, luck: Floats) -> Flags:
        """Whether we won this rally, pair by pair."""
        self.luck = luck
        self.shots[:] = 0
        rows = np.arange(self.met.columns)
        if number % 2:
            self._receiving(rows)
        else:
            serve = (Decision.SERVE_RIGHT, Decision.SERVE_LEFT)[number // 2 % 2]
            self._serving(serve, rows)
        return self.won.copy()

    def _chance(self, number: int, rows: Ints) -> Floats:
        found: Floats = self.luck[number, rows % self.luck.shape[1]]
        return found

    def _ends(self, rows: Ints, where: Flags, won: Flags | bool) -> Flags:
        """Those rallies end so; which of them go on."""
        self.won[rows[where]] = np.broadcast_to(won, rows.shape)[where]
        return ~where

    def _at(self, decision: Decision, number: int, rows: Ints) -> tuple[Ints, Floats]:
        """What we play and the skill it meets."""
        played = self.draws.draw(decision, self._chance(number, rows), rows)
        ready = self.reader.ready(decision, rows)
        skill = self.met.skill(decision, ready, rows) + self.reader.gained(decision, ready)
        return played, skill[np.arange(len(rows)), played]

    def _aimed(self, decision: Decision, number: int, rows: Ints) -> tuple[Ints, Floats]:
        """The same, and they see it."""
        played, skill = self._at(decision, number, rows)
        self.reader.saw(decision, played, rows)
        self.shots[rows] += 1
        return played, skill

    def _serving(self, serve: Decision, rows: Ints) -> None:
        lane, skill = self._aimed(serve, 0, rows)
        is_body = lane == OPTIONS[serve].index("body")
        misses = np.where(is_body, OUR_MISSES["serve body"], OUR_MISSES["serve corner"])
        on = self._ends(rows, self._chance(1, rows) < misses, won=False)
        rows, skill = rows[on], skill[on]
        self.shots[rows] += 1
        misses = _sigmoid(RETURN_MISSED - self.slope * skill)
        on = self._ends(rows, self._chance(2, rows) < misses, won=True)
        rows, skill = rows[on], skill[on]
        depth = self.met.return_depth[rows, int(serve is Decision.SERVE_LEFT)]
        is_deep = self._chance(3, rows) < _sigmoid(self.slope * (skill + DEPTH_WEIGHT * depth))
        left = np.concatenate(
            [
                self._third(Decision.THIRD_SHORT, rows[~is_deep]),
                self._third(Decision.THIRD_DEEP, rows[is_deep]),
            ]
        )
        self._dinks(left, ours=self._chance(10, left) < FIRST_DINK_OURS)

    def _third(self, decision: Decision, rows: Ints) -> Ints:
        """Our third; which rallies go on from the line."""
        option, skill = self._aimed(decision, 4, rows)
        short = decision is Decision.THIRD_SHORT
        missed = OUR_MISSES["third short" if short else "third deep"]
        on = self._ends(rows, self._chance(5, rows) < missed, won=False)
        rows, option, moved = rows[on], option[on], self.slope * skill[on]
        self.shots[rows] += 1
        drive, drop = (THIRDS[shot, short] for shot in ("drive", "drop"))
        is_drive = option >= len(OPTIONS[decision]) // 2
        sits_up, punished = (np.where(is_drive, drive[n], drop[n]) for n in (0, 1))
        result = _which(self._chance(6, rows), sits_up - moved, MET_EVENLY, punished + moved)
        self._ends(rows, result == 2, won=self._chance(7, rows) < PUNISHED_CHANCE)
        dinked_on = self._attack(rows[result == 0], 8)
        return np.concatenate([rows[result == 1], dinked_on])

    def _receiving(self, rows: Ints) -> None:
        self.shots[rows] += 1
        on = self._ends(rows, self._chance(1, rows) < THEIR_SERVE_MISSES, won=True)
        rows = rows[on]
        _, skill = self._aimed(Decision.RETURN, 0, rows)
        on = self._ends(rows, self._chance(2, rows) < OUR_MISSES["return"], won=False)
        rows, moved = rows[on], self.slope * skill[on]
        is_deep = self._chance(3, rows) < OUR_RETURN_DEEP
        self.shots[rows] += 1
        missed, sits_up = (np.where(is_deep, *pair) for pair in zip(*THEIR_THIRD, strict=True))
        on = self._ends(rows, self._chance(4, rows) < _sigmoid(missed - moved), won=True)
        rows, moved, sits_up = rows[on], moved[on], sits_up[on]
        result = _which(self._chance(5, rows), sits_up - moved, MET_EVENLY)
        dinked_on = self._attack(rows[result == 0], 8)
        left = np.concatenate([rows[result == 1], dinked_on])
        self._dinks(left, ours=np.ones(len(left), dtype=bool))

    def _dinks(self, rows: Ints, ours: Flags) -> None:
        """Dinks in turn: first theirs, where it is not our turn."""
        rows = np.concatenate([rows[ours], self._their_dink(11, rows[~ours])])
        for first in range(FIRST_DINK, DRAWS, PER_DINK):
            if not len(rows):
                return
            from_right = self._chance(first, rows) < 0.5
            rows = np.concatenate(
                [
                    self._our_dink(Decision.DINK_RIGHT, first + 1, rows[from_right]),
                    self._our_dink(Decision.DINK_LEFT, first + 1, rows[~from_right]),
                ]
            )
            rows = self._their_dink(first + 7, rows)
        self.won[rows] = self._chance(15, rows) < 0.5

    def _our_dink(self, decision: Decision, first: int, rows: Ints) -> Ints:
        option, skill = self._aimed(decision, first, rows)
        lane = int(decision is Decision.DINK_LEFT)
        missed = self._chance(first + 1, rows) < self.met.dink_misses[lane, option]
        on = self._ends(rows, missed, won=False)
        rows, option, moved = rows[on], option[on], self.slope * skill[on]
        self.shots[rows] += 1
        risk = self.met.dink_risk[lane, option] + self.met.poached[rows, option]
        error, pop_up, attack = DINK_REPLY
        result = _which(
            self._chance(first + 2, rows),
            error - moved,
            pop_up - moved,
            0.0,
            attack + ATTACKS_WITH_SKILL * moved + risk,
        )
        self._ends(rows, result == 0, won=True)
        self._ends(rows, result == 3, won=self._chance(first + 3, rows) < ATTACKED_CHANCE)
        dinked_on = self._attack(rows[result == 1], first + 4)
        return np.concatenate([rows[result == 2], dinked_on])

    def _their_dink(self, number: int, rows: Ints) -> Ints:
        """Theirs comes: missed or popped up by us, or high enough to speed up; else we dink."""
        missed, popped_up, sat_up = np.cumsum(THEIR_DINK)
        value = self._chance(number, rows)
        part = (value - missed) / (popped_up - missed)
        lost = (value < missed) | ((value < popped_up) & (part >= ATTACKED_CHANCE))
        self._ends(rows, value < popped_up, won=~lost)
        sits_up = (value >= popped_up) & (value < sat_up)
        dinked_on = self._attack(rows[sits_up], number + 1)
        return np.concatenate([rows[value >= sat_up], dinked_on])

    def _attack(self, rows: Ints, number: int) -> Ints:
        """A ball to speed up; the rallies of those who rather dink on."""
        option, skill = self._at(Decision.ATTACK, number, rows)
        fires = option != OPTIONS[Decision.ATTACK].index(DINK_ON)
        left: Ints = rows[~fires]
        rows, option = rows[fires], option[fires]
        self.reader.saw(Decision.ATTACK, option, rows)
        self.shots[rows] += 2
        misses = OUR_MISSES["speed-up"] + self.met.attack_misses[option]
        wins = (1 - misses) * _sigmoid(SPEED_UP_WINS - self.slope * skill[fires])
        self.won[rows] = self._chance(number + 1, rows) < wins
        return left
