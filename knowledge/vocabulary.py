"""The glossary: every closed set of words and every id that the three packages share.

One word per thing, the trade's own. Values are what code, tests, the database and the
`--json` contract write, so a rename here is a migration.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType
from typing import NewType

from knowledge.dataclass import dataclass

PlayerId = NewType("PlayerId", int)
"""A player's number in one book; never unique across books."""

EvidenceId = NewType("EvidenceId", str)
"""Names one datum behind an estimate: `note:64:1` or `rally:3:17`."""

RallyPoints = NewType("RallyPoints", float)
"""Rally-win chance for us in hundredths: one point is one rally in a hundred, at an even rally."""

RallyChance = NewType("RallyChance", float)
"""Chance in [0, 1] that we win one rally."""

LOGIT_PER_POINT = 0.04
"""Log-odds of one rally point: d(logit x) = dx / (x (1 - x)) = 0.01 / 0.25 at an even rally."""

POINT = 0.01
"""One rally point, in chances: one rally in a hundred."""


class Topic(StrEnum):
    """What a question is about."""

    COVER_MIDDLE = "cover_middle"
    AIM_DINK = "aim_dink"
    AIM_SERVE = "aim_serve"
    AIM_RETURN = "aim_return"
    THIRD_SHOT = "third_shot"
    AIM_ATTACK = "aim_attack"
    AIM_OVERHEAD = "aim_overhead"
    DROP_ON_DEEP_OPPONENTS = "drop_on_deep_opponents"
    LOB = "lob"
    RESET_OR_COUNTER = "reset_or_counter"
    TAKE_OR_LET_BOUNCE = "take_or_let_bounce"
    ERNIE_OR_POST = "ernie_or_post"
    WHOM_TO_TARGET = "whom_to_target"
    STACK_OR_NOT = "stack_or_not"
    WHERE_TO_STAND = "where_to_stand"
    RISK_AT_SCORE = "risk_at_score"
    WIN_CHANCE = "win_chance"
    TIMEOUT_NOW = "timeout_now"
    CHOOSE_END_OR_SERVE = "choose_end_or_serve"
    OPPONENT_REPORT = "opponent_report"
    GAME_PLAN = "game_plan"
    CUE = "cue"
    ADJUST = "adjust"
    RULES_QUESTION = "rules_question"
    WEATHER_OR_BODY = "weather_or_body"
    ANSWER_PATTERN = "answer_pattern"
    PROBE = "probe"
    PAIR_UP = "pair_up"
    LET_IT_GO = "let_it_go"
    TRANSITION = "transition"
    BEING_TARGETED = "being_targeted"
    RESET_HEAD = "reset_head"
    SMALLTALK_OR_UNKNOWN = "smalltalk_or_unknown"


class Side(StrEnum):
    """A side of the court as its own pair sees it, facing the net.

    Right is the even court, left the odd court.
    """

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> Side:
        return Side.RIGHT if self is Side.LEFT else Side.LEFT


class Hand(StrEnum):
    LEFT = "left"
    RIGHT = "right"
    AMBIDEXTROUS = "ambidextrous"


class Wing(StrEnum):
    FOREHAND = "forehand"
    BACKHAND = "backhand"

    @property
    def other(self) -> Wing:
        return Wing.BACKHAND if self is Wing.FOREHAND else Wing.FOREHAND


class Level(StrEnum):
    """Playing level, as the trade grades it; sets the default rally chances."""

    L3_0 = "3.0"
    L3_5 = "3.5"
    L4_0 = "4.0"
    L4_5 = "4.5"
    L5_0 = "5.0"


class BallQuality(StrEnum):
    """How good a ball we have: easy (high, in balance), neutral, stretched (wide or low)."""

    EASY = "easy"
    NEUTRAL = "neutral"
    STRETCHED = "stretched"


class BallKind(StrEnum):
    """The kind of ball that comes to us, by how long we can look at it."""

    DINK = "dink"
    FLOATING = "floating"
    DRIVE = "drive"
    SPEED_UP = "speed_up"
    LOB = "lob"


class Value(StrEnum):
    """What an observation says about a trait."""

    STRENGTH = "strength"
    WEAKNESS = "weakness"
    OFTEN = "often"
    RARELY = "rarely"
    LEFT = "left"
    RIGHT = "right"
    AMBIDEXTROUS = "ambidextrous"
    YES = "yes"
    NO = "no"
    FOREHAND = "forehand"
    NEUTRAL = "neutral"
    BACKHAND = "backhand"
    TALL = "tall"
    SHORT = "short"


class Trait(StrEnum):
    """What can be observed of a player. TRAITS says which values each takes."""

    HAND = "hand"
    SIDE_PLAYED = "side_played"
    TWO_HANDED_BACKHAND = "two_handed_backhand"
    READY_POSITION = "ready_position"
    HEIGHT = "height"
    FOREHAND_DINK = "forehand_dink"
    BACKHAND_DINK = "backhand_dink"
    FOREHAND_DRIVE = "forehand_drive"
    BACKHAND_DRIVE = "backhand_drive"
    THIRD_SHOT_DROP = "third_shot_drop"
    SERVE = "serve"
    RETURN = "return"
    RETURN_DEPTH = "return_depth"
    FOREHAND_VOLLEY = "forehand_volley"
    BACKHAND_VOLLEY = "backhand_volley"
    COUNTER = "counter"
    COUNTER_FOREHAND = "counter_forehand"
    COUNTER_BACKHAND = "counter_backhand"
    SPEED_UP = "speed_up"
    RESET = "reset"
    TRANSITION = "transition"
    OVERHEAD = "overhead"
    LOB = "lob"
    LOB_DEFENSE = "lob_defense"
    HANDLES_PACE = "handles_pace"
    HANDLES_NO_PACE = "handles_no_pace"
    HANDLES_SPIN = "handles_spin"
    BODY_JAM = "body_jam"
    FOOT_SPEED = "foot_speed"
    FORWARD_SPEED = "forward_speed"
    MOVES_LEFT = "moves_left"
    MOVES_RIGHT = "moves_right"
    REACH = "reach"
    GETS_LOW = "gets_low"
    FITNESS = "fitness"
    PATIENCE = "patience"
    NERVES = "nerves"
    COMMUNICATION = "communication"
    POACHING = "poaching"
    ERNIE = "ernie"
    AROUND_POST = "around_post"
    FOOTWORK_KITCHEN_FAULTS = "footwork_kitchen_faults"
    CRASH = "crash"
    SQUEEZES_MIDDLE = "squeezes_middle"
    LEAVES_OUT_BALLS = "leaves_out_balls"
    TOPSPIN = "topspin"
    STACKS = "stacks"


class TraitKind(StrEnum):
    FACT = "fact"
    SKILL = "skill"
    HABIT = "habit"
    SKILL_AND_HABIT = "skill_and_habit"


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitRow:
    """One trait: its kind, the values it takes, and how a reply names it."""

    kind: TraitKind
    values: tuple[Value, ...]
    label: str


_SKILL = (Value.STRENGTH, Value.WEAKNESS)
_HABIT = (Value.OFTEN, Value.RARELY)


def _skill(label: str) -> TraitRow:
    return TraitRow(kind=TraitKind.SKILL, values=_SKILL, label=label)


def _habit(label: str) -> TraitRow:
    return TraitRow(kind=TraitKind.HABIT, values=_HABIT, label=label)


def _both(label: str) -> TraitRow:
    return TraitRow(kind=TraitKind.SKILL_AND_HABIT, values=_SKILL + _HABIT, label=label)


def _fact(label: str, *values: Value) -> TraitRow:
    return TraitRow(kind=TraitKind.FACT, values=values, label=label)


TRAITS: Mapping[Trait, TraitRow] = MappingProxyType(
    {
        Trait.HAND: _fact("hand", Value.LEFT, Value.RIGHT, Value.AMBIDEXTROUS),
        Trait.SIDE_PLAYED: _fact("side played", Value.LEFT, Value.RIGHT),
        Trait.TWO_HANDED_BACKHAND: _fact("two-handed backhand", Value.YES, Value.NO),
        Trait.READY_POSITION: _fact(
            "ready position", Value.FOREHAND, Value.NEUTRAL, Value.BACKHAND
        ),
        Trait.HEIGHT: _fact("height", Value.TALL, Value.SHORT),
        Trait.FOREHAND_DINK: _skill("forehand dink"),
        Trait.BACKHAND_DINK: _skill("backhand dink"),
        Trait.FOREHAND_DRIVE: _skill("forehand drive"),
        Trait.BACKHAND_DRIVE: _skill("backhand drive"),
        Trait.THIRD_SHOT_DROP: _both("third-shot drop"),
        Trait.SERVE: _skill("serve"),
        Trait.RETURN: _skill("return"),
        Trait.RETURN_DEPTH: _skill("return depth"),
        Trait.FOREHAND_VOLLEY: _skill("forehand volley"),
        Trait.BACKHAND_VOLLEY: _skill("backhand volley"),
        Trait.COUNTER: _skill("counter"),
        Trait.COUNTER_FOREHAND: _skill("forehand counter"),
        Trait.COUNTER_BACKHAND: _skill("backhand counter"),
        Trait.SPEED_UP: _skill("speed-up"),
        Trait.RESET: _skill("reset"),
        Trait.TRANSITION: _skill("mid-court play"),
        Trait.OVERHEAD: _skill("overhead"),
        Trait.LOB: _both("lob"),
        Trait.LOB_DEFENSE: _skill("lob defence"),
        Trait.HANDLES_PACE: _skill("pace"),
        Trait.HANDLES_NO_PACE: _skill("slow balls"),
        Trait.HANDLES_SPIN: _skill("spin"),
        Trait.BODY_JAM: _skill("balls at the body"),
        Trait.FOOT_SPEED: _skill("foot speed"),
        Trait.FORWARD_SPEED: _skill("speed coming forward"),
        Trait.MOVES_LEFT: _skill("moving left"),
        Trait.MOVES_RIGHT: _skill("moving right"),
        Trait.REACH: _skill("reach"),
        Trait.GETS_LOW: _skill("getting low"),
        Trait.FITNESS: _skill("fitness"),
        Trait.PATIENCE: _skill("patience"),
        Trait.NERVES: _skill("nerves"),
        Trait.COMMUNICATION: _skill("communication"),
        Trait.POACHING: _habit("poaching"),
        Trait.ERNIE: _habit("Ernies"),
        Trait.AROUND_POST: _habit("shots round the post"),
        Trait.FOOTWORK_KITCHEN_FAULTS: _habit("kitchen faults"),
        Trait.CRASH: _habit("crashing"),
        Trait.SQUEEZES_MIDDLE: _habit("squeezing the middle"),
        Trait.LEAVES_OUT_BALLS: _habit("leaving out balls"),
        Trait.TOPSPIN: _habit("topspin"),
        Trait.STACKS: _habit("stacking"),
    }
)


class Tag(StrEnum):
    """The condition under which an observation was made, where one was said."""

    PULLED_WIDE = "when pulled wide"
    MOVING_FORWARD = "moving forward"
    MOVING_BACK = "moving back"
    LATE = "late"
    UNDER_PRESSURE = "under pressure"


class Seen(StrEnum):
    """How we know: watched it ourselves, or were told."""

    LIVE = "live"
    HEARSAY = "hearsay"


class Ending(StrEnum):
    """How a rally ended: a winner, or an error that the other side forced or did not."""

    WINNER = "winner"
    FORCED_ERROR = "forced_error"
    UNFORCED_ERROR = "unforced_error"

    @property
    def is_error(self) -> bool:
        return self is not Ending.WINNER


class Stroke(StrEnum):
    """The stroke that a rally ended with."""

    SERVE = "serve"
    RETURN = "return"
    THIRD = "third"
    DRIVE = "drive"
    DROP = "drop"
    DINK = "dink"
    SPEED_UP = "speed_up"
    COUNTER = "counter"
    RESET = "reset"
    VOLLEY = "volley"
    OVERHEAD = "overhead"
    LOB = "lob"


class Rate(StrEnum):
    """What a player did or did not do in a logged rally, counted: made of so many.

    Each is of the player named: their serve went in, their return went in, or deep; their third
    got them forward; a rally that their side lost by an error did not end on their paddle.
    """

    SERVE_IN = "serve_in"
    RETURN_IN = "return_in"
    RETURN_DEEP = "return_deep"
    THIRD_FORWARD = "third_forward"
    STEADY = "steady"


class AgreementKey(StrEnum):
    """What a pair settles beforehand."""

    MIDDLE = "middle"
    LOBS = "lobs"
    SIDES = "sides"
    STACK = "stack"
    FIRST_SERVER = "first_server"
    POACH_SIGNAL = "poach_signal"
    TIMEOUT_CALLER = "timeout_caller"
    OUT_CALLER = "out_caller"

    @property
    def label(self) -> str:
        """How a reply names it."""
        return self.value.replace("_", " ")


class Mode(StrEnum):
    """How much a chat says unasked."""

    MATCH = "match"
    BREAK = "break"
    OPEN = "open"
