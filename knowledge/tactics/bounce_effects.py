"""What speaks for taking a ball in the air, and what for letting it bounce."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.effects import Effect, Mechanism, OptionId
from knowledge.situation import OnCourt
from knowledge.tactics import bounce_sizes as sizes
from knowledge.tactics.bounce_said import BounceSaid, Landing
from knowledge.tactics.conditions import VOLLEYS, grows_with, rule_of_thumb, skill
from knowledge.tactics.told_ball import IN_BALANCE, told
from knowledge.vocabulary import TRAITS, Trait, Value, Wing

TAKE = OptionId("take")
LET = OptionId("let")


def ball_effects(said: BounceSaid) -> Iterator[Effect]:
    """What the ball itself asks for."""
    error, time, reply = Mechanism.OUR_ERROR, Mechanism.TIME, Mechanism.THEIR_REPLY
    still = told("we are in balance", said.balanced, usual=IN_BALANCE, fact="ball")
    yield rule_of_thumb(
        "in balance",
        TAKE,
        sizes.IN_BALANCE,
        time,
        "Taking it keeps them under pressure",
        when=still,
    )
    yield rule_of_thumb("lunge", TAKE, sizes.LUNGE, error, "A lunge pops it up", when=~still)
    dead = told("dead in front", _is(said, Landing.IN_FRONT), usual=sizes.DEAD_USUALLY)
    because = "Dead and short it stands up: attack it"
    yield rule_of_thumb("dead", LET, sizes.DEAD_IN_FRONT, reply, because, when=dead)
    feet = told("at the feet", _is(said, Landing.AT_FEET), usual=sizes.FEET_USUALLY)
    because = "At your feet the bounce costs the line"
    yield rule_of_thumb("feet", LET, sizes.AT_THE_FEET, Mechanism.COVER, because, when=feet)
    high = told("above the net", said.high, usual=sizes.HIGH_USUALLY)
    yield rule_of_thumb("high", TAKE, sizes.HIGH, reply, "Above the net: hit it down", when=high)
    topspin = told("topspin", said.topspin, usual=sizes.TOPSPIN_USUALLY)
    because = "Topspin kicks off the bounce"
    yield rule_of_thumb("topspin", TAKE, sizes.TOPSPIN_KICKS, error, because, when=topspin)


def _is(said: BounceSaid, landing: Landing) -> bool | None:
    return None if said.landing is None else said.landing is landing


def player_effects(one: OnCourt, wing: Wing | None) -> Iterator[Effect]:
    """What the notes on whoever of us meets it say."""
    error = Mechanism.OUR_ERROR
    wings = (wing,) if wing else tuple(Wing)
    for each in wings:
        trait = VOLLEYS[each]
        points = sizes.BETTER_VOLLEY.times(1 / len(wings))
        named = f"{one.name}'s {TRAITS[trait].label}"
        yield skill(one, trait, points, error, on=(TAKE,), named=named)
    reach, feet = f"{one.name}'s reach", f"{one.name}'s mid-court play"
    yield skill(one, Trait.REACH, sizes.LONG_REACH, Mechanism.COVER, on=(TAKE,), named=reach)
    yield skill(one, Trait.TRANSITION, sizes.HALF_VOLLEYS_WELL, error, on=(LET,), named=feet)
    yield grows_with(
        one,
        Trait.FOOTWORK_KITCHEN_FAULTS,
        Value.OFTEN,
        sizes.DRAGGED_IN,
        error,
        on=(TAKE,),
        because=f"{one.name} gets pulled into the kitchen",
    )


def lob_effects(said: BounceSaid, one: OnCourt | None) -> Iterator[Effect]:
    """A lob: overhead in the air, or let it bounce."""
    still = told("we are in balance", said.balanced, usual=IN_BALANCE, fact="ball")
    yield rule_of_thumb(
        "overhead",
        TAKE,
        sizes.LOB_IN_BALANCE,
        Mechanism.COVER,
        "In balance the overhead keeps the line",
        when=still,
    )
    yield rule_of_thumb(
        "going back",
        TAKE,
        sizes.LOB_GOING_BACK,
        Mechanism.OUR_ERROR,
        "Going back, the bounce buys the turn",
        when=~still,
    )
    if one is not None:
        named = f"{one.name}'s overhead"
        error = Mechanism.OUR_ERROR
        yield skill(one, Trait.OVERHEAD, sizes.BETTER_OVERHEAD, error, on=(TAKE,), named=named)
