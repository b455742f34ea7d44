"""The chat's memory survives storage, and a result ends it."""

from __future__ import annotations

import json
from dataclasses import fields

from hypothesis import given
from hypothesis import strategies as st

from bot.chat.asked import READ
from bot.chat.context import (
    KEPT_PENDINGS,
    Asked,
    AskedServe,
    Context,
    Depth,
    SaidState,
    Tagged,
)
from bot.chat.format_said import SaidFormat
from bot.chat.pending import Pending
from bot.chat.rally_supposed import SupposedRally
from bot.chat.shown_list import Listing
from knowledge.ball_facts import BallFacts, Footing, Spin
from knowledge.ball_facts import Depth as PairDepth
from knowledge.game import Discipline, Scoring
from knowledge.rulebook import rules
from knowledge.situation import Familiarity, Formation, TossChoice, Wind
from knowledge.vocabulary import BallKind, BallQuality, Hand, Mode, PlayerId, Side, Topic, Wing

PLAYERS = st.integers(1, 1_000_000).map(PlayerId)
PAIRS = st.lists(PLAYERS, max_size=2, unique=True).map(tuple)
MAYBE = st.none()

ASKED = st.builds(
    Asked,
    topic=st.sampled_from(Topic),
    text=st.text(max_size=50),
    about=PAIRS,
    wing=MAYBE | st.sampled_from(Wing),
    ball=MAYBE | st.sampled_from(BallQuality),
    ball_kind=MAYBE | st.sampled_from(BallKind),
    hitter_side=MAYBE | st.sampled_from(Side),
    striker_side=MAYBE | st.sampled_from(Side),
    pulled_wide=MAYBE | PLAYERS,
    we_serve=MAYBE | st.booleans(),
    score=MAYBE
    | st.builds(
        SaidState, st.integers(0, 30), st.integers(0, 30), MAYBE | st.integers(1, 2), st.booleans()
    ),
    games=MAYBE | st.tuples(st.integers(0, 2), st.integers(0, 2)),
    format=MAYBE
    | st.builds(
        SaidFormat,
        target=MAYBE | st.integers(1, 25),
        cap=MAYBE | st.integers(1, 25),
        scoring=MAYBE | st.sampled_from(Scoring),
        discipline=MAYBE | st.sampled_from(Discipline),
    ),
    lost_in_a_row=MAYBE | st.integers(0, 12),
    timeouts_left=MAYBE | st.integers(0, 3),
    tired=MAYBE | st.booleans(),
    hot=MAYBE | st.booleans(),
    has_change=MAYBE | st.booleans(),
    toss_won=MAYBE | st.booleans(),
    they_chose=MAYBE | st.sampled_from(TossChoice),
    wind=MAYBE | st.sampled_from(Wind),
    sun=MAYBE | st.booleans(),
    background=MAYBE | st.booleans(),
    officiated=MAYBE | st.booleans(),
    rule=MAYBE | st.sampled_from([rule.name for rule in rules()]),
    before=MAYBE | st.text(max_size=20),
    rally=MAYBE | st.sampled_from(SupposedRally),
    facts=MAYBE
    | st.builds(
        BallFacts,
        height_m=MAYBE | st.floats(0, 3),
        from_net_m=MAYBE | st.floats(0, 12),
        bounced=MAYBE | st.booleans(),
        footing=MAYBE | st.sampled_from(Footing),
        theirs=MAYBE | st.sampled_from(PairDepth),
        ours=MAYBE | st.sampled_from(PairDepth),
        pace_mps=MAYBE | st.floats(0, 40),
        wind_mps=MAYBE | st.floats(0, 30),
        spin=MAYBE | st.sampled_from(Spin),
        past_sideline=MAYBE | st.booleans(),
        partner_set=MAYBE | st.booleans(),
        fault=MAYBE | st.text(max_size=20),
    ),
    hands=st.dictionaries(PLAYERS, st.sampled_from(Hand), max_size=2).map(
        lambda hands: tuple(sorted(hands.items()))
    ),
)
RATE = MAYBE | st.floats(0, 1)
PENDINGS = st.lists(
    st.builds(
        Pending,
        number=st.integers(1, 99),
        typed=st.text(max_size=20),
        text=st.text(max_size=50),
        candidates=PAIRS,
        note=MAYBE | st.integers(1, 10**9),
        asked=MAYBE | ASKED,
    ),
    max_size=KEPT_PENDINGS,
).map(tuple)
CONTEXTS = st.builds(
    Context,
    match=MAYBE | st.integers(1, 10**9),
    ours=PAIRS,
    theirs=PAIRS,
    focus=PAIRS,
    asker=MAYBE | PLAYERS,
    mode=st.sampled_from(Mode),
    log_only=st.booleans(),
    sides=st.dictionaries(PLAYERS, st.sampled_from(Side), max_size=4).map(
        lambda sides: tuple(sorted(sides.items()))
    ),
    formation=MAYBE | st.sampled_from(Formation),
    their_formation=MAYBE | st.sampled_from(Formation),
    familiarity=MAYBE | st.sampled_from(Familiarity),
    rates=MAYBE | st.tuples(RATE, RATE),
    asked=MAYBE | ASKED,
    told=MAYBE | st.sampled_from(Depth),
    asked_last=st.booleans(),
    pendings=PENDINGS,
    pending_count=st.integers(0, 99),
    asks_who=MAYBE | st.integers(1, 99),
    change=MAYBE | st.integers(1, 10**9),
    tagged=MAYBE
    | st.builds(
        Tagged,
        match=st.integers(1, 10**9),
        n=st.integers(1, 99),
        topic=st.sampled_from(Topic),
        option=st.text(max_size=9),
        against=MAYBE | PLAYERS,
    ),
    asked_serve=MAYBE
    | st.builds(
        AskedServe,
        match=st.integers(1, 10**9),
        call=st.sampled_from(["4-2-1", "10-9"]),
        n=st.integers(1, 99),
    ),
    pool=MAYBE | st.integers(1, 10**9),
    listing=MAYBE
    | st.builds(
        Listing, what=st.text(max_size=9), of=st.integers(1, 10**9), page=st.integers(0, 9)
    ),
)


@given(CONTEXTS)
def test_storage_round_trip(context: Context) -> None:
    stored = json.loads(json.dumps(context.to_json()))
    assert Context.from_json(stored) == context


def test_every_field_of_a_question_is_read_back() -> None:
    assert set(READ) == {field.name for field in fields(Asked)}


def test_an_unknown_version_gives_an_empty_memory() -> None:
    assert Context.from_json({"v": 999, "ours": [1, 2]}) == Context()
    assert Context.from_json({}) == Context()


def test_one_partner_s_side_gives_the_other_s() -> None:
    us = (PlayerId(1), PlayerId(2))
    context = Context(ours=us).with_side(us[0], Side.LEFT)
    assert context.side_of(us[1]) is Side.RIGHT
    swapped = context.with_side(us[1], Side.LEFT)
    assert (swapped.side_of(us[0]), swapped.side_of(us[1])) == (Side.RIGHT, Side.LEFT)


def test_a_result_forgets_them_and_keeps_us() -> None:
    us, them = (PlayerId(1), PlayerId(2)), (PlayerId(3), PlayerId(4))
    during = Context(
        ours=us, theirs=them, focus=them, mode=Mode.MATCH, rates=(0.42, None)
    ).with_side(us[0], Side.LEFT)
    after = during.after_result()
    assert (after.ours, after.theirs, after.focus, after.match) == (us, (), (), None)
    assert after.side_of(us[0]) is Side.LEFT
    assert after.mode is Mode.OPEN
    assert after.rates is None


def test_old_questions_of_ours_go_stale() -> None:
    context = Context()
    for number in range(1, KEPT_PENDINGS + 3):
        pending = Pending(number=number, typed="ana", text="ana", candidates=())
        context = context.with_pending(pending)
    assert context.pending(1) is None
    assert context.pending(KEPT_PENDINGS + 2) is not None
