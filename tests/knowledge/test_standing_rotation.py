"""Where to stand and the cue at every score and formation, against the rulebook's state machine.

That machine is checked against players who walk about a court in test_game_moves.py (national
rulebook, 2025 edition, 4.B.6). Eight words and no numbers before a serve: common practice, no
source. People are invented.
"""

from __future__ import annotations

from dataclasses import replace

from court_pictures import court_of
from hypothesis import given
from hypothesis import strategies as st
from noted_players import often_noted, player

from knowledge.advice import CALL_LIMIT
from knowledge.court import HALF_WIDTH_M
from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    Lineup,
    RallyRotation,
    Scoring,
    after,
    courts,
    places,
    receiver,
    server,
    stacked,
    start,
    state_at,
)
from knowledge.planning import cue
from knowledge.situation import Asked, Formation, OnCourt, Situation
from knowledge.tactics.where_to_stand import advise
from knowledge.vocabulary import PlayerId, Side, Topic

MIRA = player(1, "Mira", Side.LEFT, "hand right", *often_noted("forward_speed weakness"))
TOM = player(2, "Tom", Side.RIGHT, "hand left", "serve weakness")
OKAFOR = player(3, "Okafor", Side.LEFT, "hand right", *often_noted("backhand_drive weakness", 3))
LINDQVIST = player(
    4, "Lindqvist", Side.RIGHT, "hand right", *often_noted("third_shot_drop weakness", 3)
)
FOUR = {one.player: one for one in (MIRA, TOM, OKAFOR, LINDQVIST)}
OURS = (MIRA.player, TOM.player)

DOUBLES = (
    GameFormat(),
    GameFormat(target=15, cap=17),
    GameFormat(target=21, scoring=Scoring.RALLY),
    GameFormat(scoring=Scoring.RALLY, rally_rotation=RallyRotation.NEVER_SWAP),
    GameFormat(scoring=Scoring.RALLY, freeze_on_serve=True),
)
SINGLES = (
    GameFormat(discipline=Discipline.SINGLES),
    GameFormat(discipline=Discipline.SINGLES, scoring=Scoring.RALLY),
)


@st.composite
def lineups(draw: st.DrawFn) -> Lineup | None:
    """Both pairs', one pair's or nobody's; either partner may have started."""
    lineup = Lineup()
    for ours, pair in ((True, OURS), (False, (OKAFOR.player, LINDQVIST.player))):
        if draw(st.booleans()):
            starter, partner = draw(st.permutations(pair))
            lineup = lineup.with_pair(starter, partner, ours=ours)
    return draw(st.sampled_from([lineup, None])) if lineup == Lineup() else lineup


@st.composite
def states(draw: st.DrawFn, formats: tuple[GameFormat, ...]) -> GameState:
    """A state that play reached."""
    format, lineup = draw(st.sampled_from(formats)), draw(lineups())
    state = start(format, we_serve=draw(st.booleans()), lineup=lineup)
    for won in draw(st.lists(st.booleans(), max_size=60)):
        following = after(state, won_by_us=won)
        if following.is_over:
            break
        state = following
    return state


def said(state: GameState) -> GameState:
    """What is known of it where only its score was said."""
    return state_at(
        state.format,
        ours=state.ours,
        theirs=state.theirs,
        we_serve=state.we_serve,
        server=state.server,
        lineup=state.lineup,
    )


def situation_at(game: GameState, formation: Formation | None, asker: PlayerId | None) -> Situation:
    return Situation(
        topic=Topic.WHERE_TO_STAND,
        ours=(MIRA, TOM),
        theirs=(OKAFOR, LINDQVIST),
        asker=asker,
        game=game,
        formation=formation,
        asked=Asked(words="where do i stand"),
    )


FORMATIONS = st.sampled_from([None, *Formation])
ASKERS = st.sampled_from([None, *OURS])
IN_DOUBLES = st.builds(
    situation_at, st.one_of(states(DOUBLES), states(DOUBLES).map(said)), FORMATIONS, ASKERS
)
IN_SINGLES = st.builds(situation_at, states(SINGLES), FORMATIONS, ASKERS)
SITUATIONS = st.one_of(IN_DOUBLES, IN_SINGLES)
STACKED = st.builds(
    situation_at,
    states(DOUBLES).map(
        lambda state: replace(state, lineup=(state.lineup or Lineup()).with_pair(*OURS, ours=True))
    ),
    st.sampled_from([Formation.STACK_ALWAYS, Formation.STACK_ON_SERVE, Formation.STACK_ON_RETURN]),
    ASKERS,
)
STACKS = {
    (Formation.STACK_ALWAYS, True),
    (Formation.STACK_ALWAYS, False),
    (Formation.STACK_ON_SERVE, True),
    (Formation.ON_SIGNAL, True),
    (Formation.STACK_ON_RETURN, False),
}
"""By their names: when somebody waits outside, and whether we serve then. On a signal the return
is straight until the sign."""


def name(one: PlayerId) -> str:
    return FOUR[one].name


@given(SITUATIONS)
def test_the_call_is_short_and_never_names_the_wrong_one(situation: Situation) -> None:
    """Whoever is told to serve or receive is who must by the score, on the court it gives."""
    advice = advise(situation)
    game = _game(situation)
    assert len(advice.call) <= CALL_LIMIT
    assert 1 <= len(advice.reasons) <= 3
    at, is_doubles = places(game), game.format.discipline is Discipline.DOUBLES
    bound = server(game) if game.we_serve else receiver(game)
    if at is None or bound is None or not is_doubles:
        return
    court, other = at.ours.bound_court, next(one for one in OURS if one != bound)
    verb = "Serve from" if game.we_serve else "Receive on"
    if situation.asker is None:
        assert advice.call == f"{verb} the {court}, {name(bound)}; {name(other)} {court.other}."
    elif situation.asker == bound:
        assert advice.call == f"{verb} the {court}; {name(other)} stands {court.other}."
    else:
        assert advice.call.startswith(f"Stand {court.other}; {name(bound)} ")


@given(IN_DOUBLES)
def test_across_stands_who_must(situation: Situation) -> None:
    game = _game(situation)
    theirs = receiver(game) if game.we_serve else server(game)
    if places(game) is None:
        return
    across = advise(situation).reasons[1].text
    if theirs is None:
        assert "Okafor" not in across
        assert "Lindqvist" not in across
    else:
        does = "receives" if game.we_serve else "serves"
        assert across.startswith(f"{name(theirs)} {does} diagonally")


@given(IN_DOUBLES)
def test_the_picture_has_everybody_on_the_court_of_the_rulebook(situation: Situation) -> None:
    """Unless a stack moves somebody: then the partner waits outside on the bound one's side."""
    game = _game(situation)
    picture = court_of(advise(situation))
    x_of = {one.label: (one.x_m, one.ours) for one in picture.markers}
    for ours in (True, False):
        standing = courts(game, ours=ours)
        for court, who in (standing or {}).items():
            if name(who) not in x_of:
                assert places(game) is None, "only unsettled places leave names out"
                continue
            x_m, is_ours = x_of[name(who)]
            assert is_ours is ours
            if abs(x_m) < HALF_WIDTH_M:
                assert ((x_m > 0) is ours) is (court is Side.RIGHT), (name(who), court)
            else:
                assert who == _waits_outside(situation, game)


def _waits_outside(situation: Situation, game: GameState) -> PlayerId | None:
    stacks = (situation.formation, game.we_serve) in STACKS
    stack = stacked(game, ours=True, plays_left=MIRA.player) if stacks else None
    return stack.stands_out if stack else None


@given(STACKED)
def test_a_stack_ends_where_each_plays(situation: Situation) -> None:
    """Mira plays left and Tom right; the one who must serves or receives from the score's court,
    the other waits outside, and after the serve or the return both go where they play."""
    game, advice = _game(situation), advise(situation)
    picture = court_of(advice)
    if _waits_outside(situation, game) is None:
        assert all(abs(one.x_m) < HALF_WIDTH_M for one in picture.markers)
        return
    bound = server(game) if game.we_serve else receiver(game)
    assert bound is not None
    goes = "left" if bound == MIRA.player else "right"
    shot = "serve" if game.we_serve else "return"
    assert f"after the {shot} {name(bound)} goes {goes}" in advice.reasons[2].text
    placed = {one.label: one for one in picture.markers}
    ends = {
        who: next(
            move.to_x_m
            for move in picture.arrows
            if (move.from_x_m, move.from_y_m) == (placed[who].x_m, placed[who].y_m)
            and move.label != "serve"
        )
        for who in ("Mira", "Tom")
    }
    assert ends["Mira"] < 0 < ends["Tom"], "as we face the net, our left is at smaller x"


def _game(situation: Situation) -> GameState:
    assert situation.game is not None
    return situation.game


@given(SITUATIONS)
def test_what_comes_next_is_what_play_leads_to(situation: Situation) -> None:
    game = _game(situation)
    more = advise(situation).more
    for word, won in (("Win", True), ("Lose", False)):
        following = after(game, won_by_us=won)
        line = next(one for one in more if one.startswith(f"{word} it: "))
        if following.is_over:
            assert f"{following.ours}-{following.theirs}" in line
        else:
            assert f"{word} it: {following.call}, " in line
            serves = server(following)
            assert serves is None or f" {name(serves)} serves" in line


@given(SITUATIONS)
def test_the_cue_is_short_and_speaks_to_whom_the_score_settles(situation: Situation) -> None:
    """At most eight words, no number; receiving it may name only the one of us who receives, or the
    partner who asks, serving only the one of them who does; and who plays is the rulebook's."""
    game = _game(situation)
    advice = cue.advise(replace(situation, topic=Topic.CUE))
    words = advice.call.split()
    assert len(words) <= 8
    assert not any(character.isdigit() for character in advice.call)
    serves, receives = server(game), receiver(game)
    if not game.we_serve and receives is not None:
        other = next(one for one in OURS if one != receives)
        is_partner_asking = (
            situation.asker == other and game.format.discipline is Discipline.DOUBLES
        )
        assert is_partner_asking or name(other) not in advice.call
    if game.we_serve and receives is not None and advice.call.startswith("Serve "):
        other = next(one for one in (OKAFOR.player, LINDQVIST.player) if one != receives)
        assert name(other) not in advice.call
    who = [one.text for one in advice.reasons if " serves" in one.text]
    if serves is None or receives is None:
        assert who == []
    else:
        court = game.serving_court
        assert who == [f"{name(serves)} serves from the {court}, to {name(receives)}"]


def test_somebody_else_on_court_is_called_by_their_part() -> None:
    """A lineup of people who are not in the question is not named."""
    strangers = Lineup().with_pair(PlayerId(8), PlayerId(9), ours=True)
    game = start(GameFormat(), we_serve=True, lineup=strangers)
    nobody: tuple[OnCourt, ...] = ()
    advice = advise(Situation(topic=Topic.WHERE_TO_STAND, game=game, ours=nobody))
    assert advice.call == "Serve from the right, our starter; partner left."
