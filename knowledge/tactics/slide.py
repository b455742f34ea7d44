"""Where to stand once the ball is in play: depth, sliding with the ball, the split step."""

from __future__ import annotations

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.court_picture import CourtPicture
from knowledge.dataclass import dataclass
from knowledge.evidence import TraitEstimate
from knowledge.regex import regex
from knowledge.situation import OnCourt, Situation
from knowledge.sources import COMMON_PRACTICE, RULEBOOK_2025, Source, SourceKind
from knowledge.tactics import slide_picture
from knowledge.tactics.serve_depth_told import serves_short
from knowledge.vocabulary import BallKind, Topic, Trait

SPLIT_SAVES_S = 0.868 - 0.764
"""Step and reach without and with a split step (Uzu et al. 2009, J. Sports Sci. 27:1233)."""

UZU_2009 = Source(kind=SourceKind.PUBLISHED, citation="Uzu et al. 2009")

HALF_STEP_M = 0.4
"""Half a step off the kitchen line. Common practice, no source."""

OFTEN_LEVEL = 0.25
"""A habit or strength at this level, on (-1, 1), changes where we stand. Our own guess."""

_SPLIT = Reason(
    text=f"Land a small hop as they hit: {SPLIT_SAVES_S:.1f} s quicker to reach", source=UZU_2009
)
_SLIDE = Reason(text="Slide together: one takes the line, one the middle", source=COMMON_PRACTICE)
_GIVE = Reason(text="Leave the sharp cross: the hardest ball to make", source=COMMON_PRACTICE)
_BOUNCE_TWICE = "Serve and return must bounce"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Stand:
    """One answer: the call, why, how far off the line or back, and the picture's ball."""

    call: str
    reasons: tuple[Reason, ...]
    off_line_m: float = 0.0
    caution: str | None = None


_BY_BALL = {
    BallKind.DINK: _Stand(
        call="Hold the line; slide with the dink, cover line and middle.",
        reasons=(_SLIDE, _GIVE, _SPLIT),
    ),
    BallKind.FLOATING: _Stand(
        call="Step in to the line; meet it high and in front.",
        reasons=(
            Reason(text="In front you hit down; falling back you lift", source=COMMON_PRACTICE),
            Reason(text="The one it floats to hits, partner holds", source=COMMON_PRACTICE),
        ),
    ),
    BallKind.DRIVE: _Stand(
        call="Stand half a step off the line; split as they swing.",
        reasons=(
            Reason(text="Half a step buys time; a full one gives feet", source=COMMON_PRACTICE),
            _SPLIT,
            _SLIDE,
        ),
        off_line_m=HALF_STEP_M,
    ),
    BallKind.SPEED_UP: _Stand(
        call="Stay set at the line, paddles up; split as they swing.",
        reasons=(
            Reason(text="The one in front of the ball takes line and body", source=COMMON_PRACTICE),
            Reason(text="The partner closes the middle, not the sideline", source=COMMON_PRACTICE),
            _SPLIT,
        ),
    ),
    BallKind.LOB: _Stand(
        call="Stand half a step off the line; turn and run for lobs.",
        reasons=(
            Reason(text="Half a step back still reaches the dinks", source=COMMON_PRACTICE),
            Reason(text="Call it early; partner crosses to cover", source=COMMON_PRACTICE),
        ),
        off_line_m=HALF_STEP_M,
        caution="Turn and run for a lob; never backpedal.",
    ),
}

_FOLLOW = _Stand(
    call="Follow the ball: cover line and middle, give the cross.",
    reasons=(_SLIDE, _GIVE, _SPLIT),
)

_LINE_LEFT = _Stand(
    call="Ball in front of you? Line and body first, then middle.",
    reasons=(
        Reason(text="The one in front of the ball takes line and body", source=COMMON_PRACTICE),
        Reason(text="The partner closes the middle, not the sideline", source=COMMON_PRACTICE),
        _SLIDE,
    ),
)
"""For a pair of whom one drifts in and leaves the line."""

_RECEIVE = _Stand(
    call="Receive a step behind the baseline; partner at the line.",
    reasons=(
        Reason(text="A deep serve jams you; in is quicker than back", source=COMMON_PRACTICE),
        Reason(text=f"{_BOUNCE_TWICE}: partner is safe up there", source=RULEBOOK_2025),
        Reason(text="Return deep and walk in behind it", source=COMMON_PRACTICE),
    ),
)

_RECEIVE_SHORT = _Stand(
    call="Wait on the baseline, weight forward; step in as it dips.",
    reasons=(
        Reason(text="Met early and high it leaves them no time", source=COMMON_PRACTICE),
        Reason(text=f"{_BOUNCE_TWICE}: let it come up first", source=RULEBOOK_2025),
        Reason(text="Return deep and keep walking to the line", source=COMMON_PRACTICE),
    ),
)
"""Against who serves short: nearer by a step, where a deep one can still be met."""

_SERVE = _Stand(
    call="Stay back, both of you, until their return bounces.",
    reasons=(
        Reason(text=f"{_BOUNCE_TWICE}: no volley before the fourth", source=RULEBOOK_2025),
        Reason(text="A deep return at your feet is worse going in", source=COMMON_PRACTICE),
        Reason(text="Then go in behind a good third, and split", source=COMMON_PRACTICE),
    ),
)

_LEAVES_LINE = regex(
    r"\b(?:drift\w*|overcover\w*|down the line"
    r"|(?:line|alley|side|outside)(?: is)?(?: always| wide| left)* (?:open|uncovered)"
    r"|leav\w+ (?:\w+ ){0,4}(?:line|alley|side|sideline))\b"
)
"""How it is said that one of ours stands too far in."""
_RECEIVING_WORDS = ("receiv", "return")
_SERVING_WORDS = ("serving", "after we serve", "after i serve", "after the serve", "our serve")


def advise(situation: Situation) -> Advice:
    """Depth and movement for the ball asked about, or for what these opponents like to do."""
    stand = _stand(situation)
    return Advice(
        topic=Topic.WHERE_TO_STAND,
        call=stand.call,
        reasons=_with_book(situation, stand.reasons),
        caution=stand.caution,
        confidence=Confidence.GENERAL_RULE,
        choices=_choices(situation),
        picture=_picture(situation, stand),
    )


def in_words(situation: Situation) -> tuple[str, ...]:
    """The same for the "why" of the rule answer."""
    stand = _stand(situation)
    return (stand.call, *(f"{reason.text} ({reason.source})" for reason in stand.reasons))


def _stand(situation: Situation) -> _Stand:
    kind = situation.asked.ball_kind
    if kind is not None:
        return _BY_BALL[kind]
    words = situation.asked.words.lower()
    if "paddle" in words:
        return _BY_BALL[BallKind.SPEED_UP]
    if _LEAVES_LINE.search(words):
        return _LINE_LEFT
    is_short = serves_short(words)
    if is_short:
        return _RECEIVE_SHORT
    if is_short is False or any(word in words for word in _RECEIVING_WORDS):
        return _RECEIVE
    if any(word in words for word in _SERVING_WORDS):
        return _SERVE
    if "lob" in words:
        return _BY_BALL[BallKind.LOB]
    if "bang" in words or "drive" in words:
        return _BY_BALL[BallKind.DRIVE]
    return _liked(situation) or _FOLLOW


def _liked(situation: Situation) -> _Stand | None:
    """What their notes call for where the question names no ball."""
    if _noted(situation, BallKind.LOB):
        return _BY_BALL[BallKind.LOB]
    return _BY_BALL[BallKind.DRIVE] if _noted(situation, BallKind.DRIVE) else None


_THREATS = {
    BallKind.LOB: ((Trait.LOB, True), (Trait.LOB, False)),
    BallKind.DRIVE: ((Trait.FOREHAND_DRIVE, False), (Trait.BACKHAND_DRIVE, False)),
    BallKind.SPEED_UP: ((Trait.SPEED_UP, False),),
}
_DOES = {
    BallKind.LOB: "lobs",
    BallKind.DRIVE: "drives hard",
    BallKind.SPEED_UP: "speeds up well",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Threat:
    who: OnCourt
    kind: BallKind
    estimate: TraitEstimate


def _noted(situation: Situation, kind: BallKind) -> _Threat | None:
    """The opponent whose notes say most clearly that they hit this ball."""
    found = [
        _Threat(who=one, kind=kind, estimate=estimate)
        for one in situation.theirs
        for trait, is_habit in _THREATS[kind]
        if (estimate := one.profile.habit(trait) if is_habit else one.profile.skill(trait)).level
        >= OFTEN_LEVEL
    ]
    return max(found, key=lambda threat: threat.estimate.level, default=None)


def _with_book(situation: Situation, reasons: tuple[Reason, ...]) -> tuple[Reason, ...]:
    """The clearest thing noted of these two leads; three reasons at most."""
    threats = [threat for kind in _THREATS if (threat := _noted(situation, kind))]
    if not threats:
        return reasons
    first = max(threats, key=lambda threat: threat.estimate.level)
    told = Reason(
        text=f"{first.who.name} {_DOES[first.kind]}: split on that swing",
        source=first.estimate.source,
    )
    return (told, *reasons)[:3]


def _choices(situation: Situation) -> tuple[Choice, ...]:
    labels = {
        BallKind.DRIVE: "They drive",
        BallKind.DINK: "In dinks",
        BallKind.LOB: "They lob",
    }
    return tuple(
        Choice(label=label, topic=Topic.WHERE_TO_STAND, fact=MatchFact.BALL_KIND, value=kind)
        for kind, label in labels.items()
        if kind is not situation.asked.ball_kind
    )


def _picture(situation: Situation, stand: _Stand) -> CourtPicture:
    if stand is _RECEIVE_SHORT:
        return slide_picture.before_third(we_serve=False, call=stand.call, behind_m=0.0)
    if stand is _RECEIVE or stand is _SERVE:
        return slide_picture.before_third(we_serve=stand is _SERVE, call=stand.call)
    return slide_picture.in_play(situation, off_line_m=stand.off_line_m)
