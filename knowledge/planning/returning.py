"""Where to return and where to serve against these two."""

from __future__ import annotations

from knowledge.advice import Arrow
from knowledge.court import HALF_LENGTH_M, METRES_PER_FOOT, Point, at_baseline, x_of_side_m
from knowledge.engine import Decision, Effect, Mechanism, Option
from knowledge.planning import sizes
from knowledge.planning.line import Line, Phase
from knowledge.planning.weighing import from_fact, from_trait, is_weak, option, weigh
from knowledge.situation import OnCourt, Situation
from knowledge.vocabulary import RallyPoints, Side, Trait, Value, Wing

MIDDLE = "middle"
BACKHAND = "backhand"
BODY = "body"
WIDE = "wide"

DEPTH_FT = 3.0
"""How far inside the baseline the arrow of a deep ball ends; rules of thumb say the last 5 ft."""

LEFT_HANDERS = 0.1
"""Share of left-handers where nobody noted the hand. From memory: about one player in ten."""


def return_line(situation: Situation) -> Line | None:
    """Whom to return at; None without an opponent."""
    if not situation.theirs:
        return None
    weighed = weigh(return_decision(situation), situation, plain=MIDDLE)
    target = _named(situation, weighed.best)
    aiming = [one for one in situation.ours if not is_weak(one, Trait.RETURN)]
    if target is None or not weighed.evidence or (situation.ours and not aiming):
        return general_return_line()
    only = aiming[0] if len(aiming) < len(situation.ours) else None
    return Line(
        phase=Phase.RETURN,
        do=f"{only.name} returns at {target.name}" if only else f"Return deep at {target.name}",
        because=weighed.because,
        we_serve=False,
        cue=f"Return deep at {target.name}. Run in.",
        points=weighed.gain,
        share=sizes.RETURN_SHARE / 2 if only else sizes.RETURN_SHARE,
        evidence=weighed.evidence,
        against=weighed.against,
        who=only.player if only else None,
        arrow=_return_arrow(target),
    )


def return_decision(situation: Situation) -> Decision:
    """Whom to return at, as a question to the engine."""
    return Decision(
        options=(option(MIDDLE, "deep middle"), *(_at(one) for one in situation.theirs)),
        effects=tuple(_return_effects(situation)),
        neutral=sizes.RECEIVING_CHANCE,
        share=sizes.RETURN_SHARE,
    )


def general_return_line() -> Line:
    """The return without a book."""
    return Line(
        phase=Phase.RETURN,
        do="Return high, deep, middle; then run in",
        we_serve=False,
        cue="Return high and deep. Run in.",
        points=RallyPoints(0.0),
        share=sizes.RETURN_SHARE,
    )


def serve_line(situation: Situation, receiver: OnCourt, court: Side | None) -> Line:
    """Where to serve at this receiver, standing in `court` as they see it (None: not known)."""
    weighed = weigh(serve_decision(receiver), situation, plain=MIDDLE)
    if not weighed.evidence or weighed.best == MIDDLE:
        return general_serve_line()
    place = _serve_place(weighed.best, receiver, court)
    return Line(
        phase=Phase.SERVE,
        do=f"Serve {receiver.name} {place}",
        because=weighed.because,
        we_serve=True,
        cue=f"Serve {receiver.name} {place}.",
        points=weighed.gain,
        share=sizes.SERVE_SHARE / 2,
        evidence=weighed.evidence,
        against=weighed.against,
    )


def serve_decision(receiver: OnCourt) -> Decision:
    """Where to serve at this receiver, as a question to the engine."""
    return Decision(
        options=(
            option(MIDDLE, "deep middle"),
            option(BACKHAND, "deep backhand"),
            option(BODY, "body"),
            option(WIDE, "deep and wide"),
        ),
        effects=tuple(_serve_effects(receiver)),
        neutral=sizes.SERVING_CHANCE,
        share=sizes.SERVE_SHARE,
    )


def general_serve_line() -> Line:
    """The serve without a book."""
    return Line(
        phase=Phase.SERVE,
        do="Serve deep; stay back for the third",
        we_serve=True,
        cue="Serve deep. Stay back for the third.",
        points=RallyPoints(0.0),
        share=sizes.SERVE_SHARE,
    )


def backhand_corner(receiver: OnCourt, court: Side | None) -> str | None:
    """The corner of the receiver's backhand in that court: "T" or "wide"; None if not known."""
    standing = OnCourt(profile=receiver.profile, side=court)
    wing = standing.middle_wing()
    if wing is None:
        return None
    return "T" if wing is Wing.BACKHAND else "wide"


def _serve_place(best: str, receiver: OnCourt, court: Side | None) -> str:
    if best == BODY:
        return "deep into the body"
    if best == WIDE:
        return "deep and wide"
    corner = backhand_corner(receiver, court)
    if corner is None:
        return "deep to the backhand"
    return "deep backhand, down the T" if corner == "T" else "deep backhand, out wide"


def _at(one: OnCourt) -> Option:
    return option(_at_id(one), f"deep at {one.name}")


def _at_id(one: OnCourt) -> str:
    return f"at:{one.player}"


def _named(situation: Situation, id: str) -> OnCourt | None:
    return next((one for one in situation.theirs if _at_id(one) == id), None)


def _return_effects(situation: Situation) -> list[Effect]:
    effects: list[Effect] = []
    for one in situation.theirs:
        on = (_at_id(one),)
        third, worse = Trait.THIRD_SHOT_DROP, sizes.RETURN_TO_WORSE_THIRD
        effects += [
            from_trait(one, third, worse, Mechanism.THEIR_ERROR, on=on, up=False),
            from_trait(one, third, -worse, Mechanism.THEIR_ERROR, on=on, up=True),
            from_trait(
                one,
                Trait.CRASH,
                sizes.RETURN_TO_CRASHER,
                Mechanism.HABIT,
                on=on,
                up=True,
                habit=True,
            ),
            from_trait(
                one,
                Trait.FORWARD_SPEED,
                sizes.RETURN_TO_SLOW_FORWARD,
                Mechanism.TIME,
                on=on,
                up=False,
            ),
        ]
    aimed = tuple(_at_id(one) for one in situation.theirs)
    effects += [
        from_trait(
            one,
            Trait.RETURN,
            -sizes.RETURN_NEEDS_OUR_AIM,
            Mechanism.OUR_ERROR,
            on=aimed,
            up=False,
            part=1 / len(situation.ours),
        )
        for one in situation.ours
    ]
    return effects


def _serve_effects(receiver: OnCourt) -> list[Effect]:
    weaker, body = sizes.SERVE_AT_WEAKER_WING, sizes.SERVE_AT_BODY
    return [
        from_trait(
            receiver, Trait.BACKHAND_DRIVE, weaker, Mechanism.THEIR_REPLY, on=(BACKHAND,), up=False
        ),
        from_trait(
            receiver, Trait.BACKHAND_DRIVE, -weaker, Mechanism.THEIR_REPLY, on=(BACKHAND,), up=True
        ),
        from_fact(
            receiver,
            Trait.TWO_HANDED_BACKHAND,
            Value.YES,
            -weaker,
            Mechanism.THEIR_ERROR,
            on=(BACKHAND,),
            prevalence=0.3,
        ),
        from_trait(receiver, Trait.BODY_JAM, body, Mechanism.THEIR_REPLY, on=(BODY,), up=False),
        from_trait(
            receiver,
            Trait.FORWARD_SPEED,
            sizes.SERVE_WIDE_OF_SLOW_RUNNER,
            Mechanism.TIME,
            on=(WIDE,),
            up=False,
        ),
        from_trait(receiver, Trait.RETURN, weaker, Mechanism.THEIR_ERROR, on=(BACKHAND,), up=False),
    ]


def _return_arrow(target: OnCourt) -> Arrow | None:
    if target.side is None:
        return None
    start = at_baseline(target.side.other, ours=True)
    end = Point(
        x_m=x_of_side_m(target.side, ours=False),
        y_m=HALF_LENGTH_M - DEPTH_FT * METRES_PER_FOOT,
    )
    return Arrow(
        from_x_m=start.x_m,
        from_y_m=start.y_m,
        to_x_m=end.x_m,
        to_y_m=end.y_m,
        width=1.0,
        label="return",
    )
