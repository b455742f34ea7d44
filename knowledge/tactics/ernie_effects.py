"""What speaks for a jump at the corner, for a ball round the post, and against theirs."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from knowledge.dataclass import dataclass
from knowledge.effects import Effect, Mechanism, OptionId, Points
from knowledge.situation import OnCourt, Situation
from knowledge.tactics import ernie_sizes as sizes
from knowledge.tactics.conditions import (
    DINKS,
    VOLLEYS,
    backhand_in_middle,
    grows_with,
    other_of,
    rule_of_thumb,
    skill,
)
from knowledge.tactics.ernie_geometry import ROUND_THE_POST
from knowledge.tactics.ernie_said import ErnieSaid
from knowledge.tactics.told_ball import balanced, told
from knowledge.vocabulary import TRAITS, Hand, Side, Trait, Value, Wing

STAY = OptionId("stay")
ROUND = OptionId("round the post")
OVER = OptionId("over the net")
MIDDLE = OptionId("middle")
ACROSS = OptionId("across")
LINE = OptionId("line")
BEHIND = OptionId("behind the jumper")


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """A corner of our kitchen, who of ours would jump there and whose line dink it waits for."""

    side: Side | None
    jumper: OnCourt | None
    hitter: OnCourt | None

    @property
    def id(self) -> OptionId:
        return OptionId(f"jump:{self.side or 'either'}")

    @property
    def wing(self) -> Wing | None:
        """The jumper's wing: the ball passes on their right at our left corner."""
        hand = None if self.jumper is None else self.jumper.hand
        if self.side is None or hand not in (Hand.LEFT, Hand.RIGHT):
            return None
        is_right_hand_side = self.side is Side.LEFT
        is_forehand = (hand is Hand.RIGHT) is is_right_hand_side
        return Wing.FOREHAND if is_forehand else Wing.BACKHAND


def jump_effects(
    corner: Corner, said: ErnieSaid, situation: Situation, *, set_up: bool
) -> Iterator[Effect]:
    """A jump at this corner against staying; `set_up` as told, or as assumed."""
    on = corner.id
    line = _line_share(said, set_up=set_up)
    yield rule_of_thumb(
        "line ball",
        on,
        sizes.BALL_ITSELF.times(line),
        Mechanism.THEIR_REPLY,
        "Head down after a wide dink they go line" if set_up else "Some dinks do go down the line",
        when=balanced(situation),
    )
    covers = told("partner takes the middle", said.covered, usual=sizes.PARTNER_COVERS)
    for points, when in ((sizes.GAP_COVERED, covers), (sizes.GAP_OPEN, ~covers)):
        because = "The middle behind the jump is a gap"
        cost = points.times(1 - line)
        yield rule_of_thumb("gap", on, cost, Mechanism.COVER, because, when=when)
    if not said.overused:
        shown = "Shown once, their line dink disappears"
        yield rule_of_thumb("shown", on, sizes.SHOWN_ONCE, Mechanism.HABIT, shown)
    yield from _of_the_jumper(corner)
    yield from _of_the_hitter(corner, situation)


def _line_share(said: ErnieSaid, *, set_up: bool) -> float:
    if said.overused:
        return sizes.LINE_ONCE_EXPECTED
    return sizes.LINE_OFF_THE_SET_UP if set_up else sizes.LINE_OTHERWISE


def _of_the_jumper(corner: Corner) -> Iterator[Effect]:
    jumper, on = corner.jumper, (corner.id,)
    if jumper is None:
        return
    feet, error = f"{jumper.name}'s foot speed", Mechanism.OUR_ERROR
    yield skill(jumper, Trait.FOOT_SPEED, sizes.QUICK_FEET, Mechanism.TIME, on=on, named=feet)
    if corner.wing is not None:
        trait = VOLLEYS[corner.wing]
        named = f"{jumper.name}'s {TRAITS[trait].label}"
        yield skill(jumper, trait, sizes.BETTER_VOLLEY, error, on=on, named=named)
    yield grows_with(
        jumper,
        Trait.FOOTWORK_KITCHEN_FAULTS,
        Value.OFTEN,
        sizes.KITCHEN_FAULTS,
        error,
        on=on,
        because=f"{jumper.name} steps on the line",
    )


def _of_the_hitter(corner: Corner, situation: Situation) -> Iterator[Effect]:
    hitter, on = corner.hitter, (corner.id,)
    if hitter is None:
        return
    wide_is_backhand = ~backhand_in_middle(hitter, other_of(hitter, situation.theirs))
    yield rule_of_thumb(
        "wide backhand",
        corner.id,
        sizes.WIDE_IS_BACKHAND,
        Mechanism.THEIR_REPLY,
        f"Wide is {hitter.name}'s backhand",
        when=wide_is_backhand,
    )
    for wing, when in ((Wing.BACKHAND, wide_is_backhand), (Wing.FOREHAND, ~wide_is_backhand)):
        yield grows_with(
            hitter,
            DINKS[wing],
            Value.WEAKNESS,
            sizes.WEAK_WIDE_DINK,
            Mechanism.THEIR_REPLY,
            on=on,
            because=f"{hitter.name}'s {wing} dink is weak",
            when=when,
        )
    yield grows_with(
        hitter,
        Trait.LOB,
        Value.OFTEN,
        sizes.THEY_LOB,
        Mechanism.HABIT,
        on=on,
        because=f"{hitter.name} lobs a lot",
    )


def round_effects(
    said: ErnieSaid, situation: Situation, line_player: OnCourt | None
) -> Iterator[Effect]:
    """A ball round the post against one soft over the net."""
    past = told(
        "the ball is past the sideline",
        said.past,
        usual=sizes.PAST_THE_SIDELINE,
        fact="past_sideline",
    )
    free = Points(mean=sizes.shot_points(sizes.ROUND_WINS, sizes.ROUND_MISSES), sd=sizes.SHOT_SD)
    forced = Points(
        mean=sizes.shot_points(sizes.FORCED_WINS, sizes.FORCED_MISSES), sd=sizes.SHOT_SD
    )
    reply, error = Mechanism.THEIR_REPLY, Mechanism.OUR_ERROR
    yield rule_of_thumb("free", ROUND, free, reply, "No net in the way: it stays low", when=past)
    yield rule_of_thumb(
        "forced",
        ROUND,
        forced,
        error,
        "From inside the sideline the post is in the way",
        when=~past,
        source=ROUND_THE_POST,
    )
    yield rule_of_thumb(
        "guarded",
        ROUND,
        sizes.GUARDED,
        Mechanism.COVER,
        "Their line player waits for it",
        when=told("their line is guarded", said.line_guarded, usual=sizes.LINE_IS_GUARDED),
    )
    yield rule_of_thumb(
        "stretched",
        ROUND,
        sizes.ROUND_OFF_BALANCE,
        error,
        "Off balance it flies wide",
        when=~balanced(situation),
    )
    if line_player is not None:
        yield skill(
            line_player,
            Trait.FOOT_SPEED,
            sizes.QUICK_LINE_PLAYER,
            Mechanism.COVER,
            on=(ROUND,),
            named=f"{line_player.name}'s foot speed",
        )


def keep_off_effects(theirs: Iterable[OnCourt], *, post: bool) -> Iterator[Effect]:
    """Where to dink so that they can neither jump the corner nor go round the post."""
    yield rule_of_thumb(
        "middle",
        MIDDLE,
        sizes.MIDDLE_FEEDS_NOBODY,
        Mechanism.COVER,
        "From the middle nobody jumps or goes round",
    )
    if post:
        yield rule_of_thumb(
            "wide feeds it",
            ACROSS,
            sizes.WIDE_FEEDS_THE_POST,
            Mechanism.COVER,
            "Round the post needs a ball past the sideline",
            source=ROUND_THE_POST,
        )
    else:
        yield rule_of_thumb(
            "angle back",
            ACROSS,
            sizes.ANGLE_BACK,
            Mechanism.THEIR_REPLY,
            "A wide dink gives them the angle back",
        )
    yield rule_of_thumb(
        "line",
        LINE,
        sizes.LINE_DINK if post else sizes.LINE_AT_A_JUMPER,
        Mechanism.COVER,
        "The line: higher net, less court"
        if post
        else "An Ernie needs your ball near their sideline",
    )
    trait, points = (
        (Trait.AROUND_POST, sizes.GOES_ROUND_OFTEN) if post else (Trait.ERNIE, sizes.JUMPS_OFTEN)
    )
    for one in theirs:
        yield grows_with(
            one,
            trait,
            Value.OFTEN,
            points,
            Mechanism.HABIT,
            on=(ACROSS,) if post else (LINE,),
            because=f"{one.name} {'goes round the post' if post else 'jumps for Ernies'}",
        )


def behind_effects() -> Iterator[Effect]:
    """The ball behind a jumper who has left the court."""
    yield rule_of_thumb(
        "behind",
        BEHIND,
        sizes.BEHIND_THE_JUMPER,
        Mechanism.COVER,
        "Gone from the middle: hit behind the jumper",
    )
