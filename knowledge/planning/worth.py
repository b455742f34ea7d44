"""What knowing a trait of an opponent is worth to us: the order of a report.

Points and shares as in `sizes`: common practice, no source. `use` says what to do where the
trait is a weakness (or a habit is rare), `mind` where it is a strength (or frequent).
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from knowledge.dataclass import dataclass
from knowledge.vocabulary import Trait


@dataclass(frozen=True, slots=True, kw_only=True)
class Worth:
    """A trait's size and share; `ours` is the shot of ours that uses or answers it."""

    points: float
    share: float
    use: str
    mind: str
    ours: Trait | None = None
    habit: bool = False

    @property
    def per_100(self) -> float:
        return self.points * self.share / 100


SKILLS: Mapping[Trait, Worth] = MappingProxyType(
    {
        Trait.THIRD_SHOT_DROP: Worth(
            points=3,
            share=50,
            use="Return at {name}",
            mind="Return away from {name}",
            ours=Trait.RETURN,
        ),
        Trait.BACKHAND_DINK: Worth(
            points=3,
            share=35,
            use="Dink {name}'s backhand",
            mind="Dink away from {name}'s backhand",
            ours=Trait.BACKHAND_DINK,
        ),
        Trait.FOREHAND_DINK: Worth(
            points=3,
            share=30,
            use="Dink {name}'s forehand",
            mind="Dink away from {name}'s forehand",
            ours=Trait.FOREHAND_DINK,
        ),
        Trait.BODY_JAM: Worth(
            points=5,
            share=20,
            use="Speed up into {name}'s body",
            mind="Speed up wide of {name}",
            ours=Trait.SPEED_UP,
        ),
        Trait.COUNTER: Worth(
            points=4,
            share=15,
            use="Speed up at {name}",
            mind="Keep it low to {name}",
            ours=Trait.SPEED_UP,
        ),
        Trait.COUNTER_BACKHAND: Worth(
            points=4,
            share=12,
            use="Speed up at {name}'s backhand",
            mind="Keep hands battles off {name}'s backhand",
            ours=Trait.SPEED_UP,
        ),
        Trait.COUNTER_FOREHAND: Worth(
            points=4,
            share=10,
            use="Speed up at {name}'s forehand",
            mind="Keep hands battles off {name}'s forehand",
            ours=Trait.SPEED_UP,
        ),
        Trait.SPEED_UP: Worth(
            points=5,
            share=15,
            use="Leave {name} the high dinks",
            mind="Paddle up against {name}",
            ours=Trait.COUNTER,
        ),
        Trait.FORWARD_SPEED: Worth(
            points=2,
            share=45,
            use="Keep {name} back: deep returns",
            mind="Expect {name} at the line",
            ours=Trait.RETURN_DEPTH,
        ),
        Trait.TRANSITION: Worth(
            points=3,
            share=25,
            use="Keep {name} in mid-court",
            mind="Finish before {name} settles",
        ),
        Trait.FOREHAND_DRIVE: Worth(
            points=4,
            share=20,
            use="Let {name} drive",
            mind="Return deep against {name}'s drive",
            ours=Trait.HANDLES_PACE,
        ),
        Trait.BACKHAND_DRIVE: Worth(
            points=3,
            share=15,
            use="Serve {name}'s backhand",
            mind="Serve {name}'s forehand",
            ours=Trait.SERVE,
        ),
        Trait.RETURN_DEPTH: Worth(
            points=4,
            share=15,
            use="Drive {name}'s short returns",
            mind="Stay back for {name}'s return",
            ours=Trait.FOREHAND_DRIVE,
        ),
        Trait.RETURN: Worth(
            points=2,
            share=25,
            use="Serve hard at {name}",
            mind="Serve deep at {name}",
            ours=Trait.SERVE,
        ),
        Trait.HANDLES_PACE: Worth(
            points=4,
            share=15,
            use="Drive at {name}",
            mind="Play soft at {name}",
            ours=Trait.FOREHAND_DRIVE,
        ),
        Trait.HANDLES_NO_PACE: Worth(
            points=3,
            share=15,
            use="Play soft at {name}",
            mind="Keep {name} moving",
        ),
        Trait.HANDLES_SPIN: Worth(
            points=2, share=15, use="Spin it at {name}", mind="Play {name} flat"
        ),
        Trait.BACKHAND_VOLLEY: Worth(
            points=2,
            share=25,
            use="Third at {name}'s backhand",
            mind="Keep thirds off {name}'s backhand",
            ours=Trait.THIRD_SHOT_DROP,
        ),
        Trait.FOREHAND_VOLLEY: Worth(
            points=2,
            share=25,
            use="Third at {name}'s forehand",
            mind="Keep thirds off {name}'s forehand",
            ours=Trait.THIRD_SHOT_DROP,
        ),
        Trait.RESET: Worth(
            points=4,
            share=12,
            use="Attack {name} twice",
            mind="Expect {name}'s reset",
        ),
        Trait.PATIENCE: Worth(
            points=2,
            share=30,
            use="Outlast {name} in the dinks",
            mind="Take the high one from {name}",
            ours=Trait.PATIENCE,
        ),
        Trait.FOOT_SPEED: Worth(points=3, share=20, use="Move {name}", mind="Play {name}'s body"),
        Trait.MOVES_LEFT: Worth(
            points=3, share=15, use="Pull {name} left", mind="Pull {name} right"
        ),
        Trait.MOVES_RIGHT: Worth(
            points=3, share=15, use="Pull {name} right", mind="Pull {name} left"
        ),
        Trait.GETS_LOW: Worth(
            points=2, share=25, use="Keep it at {name}'s feet", mind="Move {name}"
        ),
        Trait.REACH: Worth(points=2, share=20, use="Go wide of {name}", mind="Go at {name}'s body"),
        Trait.SERVE: Worth(
            points=2,
            share=25,
            use="Step in on {name}'s serve",
            mind="Stand back for {name}'s serve",
            ours=Trait.RETURN,
        ),
        Trait.LOB_DEFENSE: Worth(
            points=3,
            share=5,
            use="Lob {name} off a dead dink",
            mind="Keep it low to {name}",
            ours=Trait.LOB,
        ),
        Trait.OVERHEAD: Worth(
            points=4,
            share=6,
            use="Lob {name} off a dead dink",
            mind="Keep it low to {name}",
            ours=Trait.LOB,
        ),
        Trait.LOB: Worth(points=2, share=5, use="Lean in on {name}", mind="Watch {name}'s lob"),
        Trait.FITNESS: Worth(
            points=1, share=50, use="Make {name} run early", mind="Keep rallies short"
        ),
        Trait.NERVES: Worth(
            points=2, share=15, use="Keep the ball on {name} late", mind="Stay level late"
        ),
        Trait.COMMUNICATION: Worth(
            points=2,
            share=20,
            use="Play between them",
            mind="Play {name}'s feet",
        ),
    }
)

HABITS: Mapping[Trait, Worth] = MappingProxyType(
    {
        Trait.POACHING: Worth(
            points=4,
            share=25,
            use="Play {name}'s middle",
            mind="Go behind {name} once",
            habit=True,
        ),
        Trait.SQUEEZES_MIDDLE: Worth(
            points=3,
            share=20,
            use="Play the middle",
            mind="Hit behind {name}",
            habit=True,
        ),
        Trait.CRASH: Worth(
            points=4,
            share=15,
            use="Expect {name} to hold",
            mind="Return at {name}",
            habit=True,
        ),
        Trait.ERNIE: Worth(
            points=5,
            share=8,
            use="Dink the line at {name}",
            mind="Dink middle: {name} jumps",
            habit=True,
        ),
        Trait.AROUND_POST: Worth(
            points=4,
            share=5,
            use="Dink wide at {name}",
            mind="Dink middle to {name}",
            habit=True,
        ),
        Trait.TOPSPIN: Worth(
            points=3,
            share=15,
            use="Let {name}'s high drives go",
            mind="Expect {name}'s ball to dip",
            habit=True,
        ),
        Trait.FOOTWORK_KITCHEN_FAULTS: Worth(
            points=2,
            share=10,
            use="Ignore {name}'s feet",
            mind="Short balls at {name}'s feet",
            habit=True,
        ),
        Trait.LEAVES_OUT_BALLS: Worth(
            points=3,
            share=5,
            use="Drive shoulder high at {name}",
            mind="Aim lower at {name}",
            habit=True,
        ),
        Trait.THIRD_SHOT_DROP: Worth(
            points=2,
            share=30,
            use="Expect {name}'s drive",
            mind="Crowd {name}'s drop",
            habit=True,
        ),
        Trait.LOB: Worth(
            points=3,
            share=6,
            use="Lean in on {name}",
            mind="Watch {name}'s lob",
            habit=True,
        ),
        Trait.STACKS: Worth(
            points=2,
            share=15,
            use="Return deep middle",
            mind="Return at the one crossing",
            habit=True,
        ),
    }
)

FACTS: Mapping[Trait, Worth] = MappingProxyType(
    {
        Trait.HAND: Worth(points=3, share=60, use="", mind=""),
        Trait.SIDE_PLAYED: Worth(points=2, share=60, use="", mind=""),
        Trait.READY_POSITION: Worth(points=5, share=25, use="", mind=""),
        Trait.TWO_HANDED_BACKHAND: Worth(points=3, share=20, use="", mind=""),
        Trait.HEIGHT: Worth(points=3, share=5, use="", mind=""),
    }
)
"""Facts are not good or bad, but they turn other calls round."""
