"""Where to stand: the rulebook's answer at every score, and the coach's once the ball moves.

Rules: national rulebook, 2025 edition, 4.B.6 and 4.B; positions in play: common practice, no
source. People are invented.
"""

from __future__ import annotations

from dataclasses import replace
from types import MappingProxyType

import pytest
from court_pictures import court_of
from hypothesis import given
from hypothesis import strategies as st

from knowledge.advice import CALL_LIMIT, Advice, Confidence
from knowledge.court import HALF_WIDTH_M, KITCHEN_DEPTH_M
from knowledge.evidence import Profile, TraitEstimate
from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    Lineup,
    RallyRotation,
    Scoring,
    after,
    receiver,
    server,
    start,
)
from knowledge.situation import Agreement, Asked, Formation, OnCourt, Situation
from knowledge.sources import SourceKind
from knowledge.tactics.where_to_stand import advise
from knowledge.vocabulary import (
    AgreementKey,
    BallKind,
    EvidenceId,
    PlayerId,
    Side,
    Topic,
    Trait,
)

NAMES = {PlayerId(1): "Mira", PlayerId(2): "Tom", PlayerId(3): "Okafor", PlayerId(4): "Lindqvist"}
MIRA, TOM, OKAFOR, LINDQVIST = NAMES
LINEUP = Lineup(our_starter=MIRA, our_partner=TOM, their_starter=OKAFOR, their_partner=LINDQVIST)


def on_court(player: PlayerId, side: Side | None = None) -> OnCourt:
    return OnCourt(profile=Profile(player=player, name=NAMES[player]), side=side)


SITUATION = Situation(
    topic=Topic.WHERE_TO_STAND,
    ours=(on_court(MIRA, Side.LEFT), on_court(TOM, Side.RIGHT)),
    theirs=(on_court(OKAFOR), on_court(LINDQVIST)),
)


def at(ours: int, theirs: int, number: int, *, we_serve: bool, starter: bool | None) -> Situation:
    game = GameState(
        format=GameFormat(),
        ours=ours,
        theirs=theirs,
        we_serve=we_serve,
        server=number,
        starter_serves=starter,
        lineup=LINEUP,
    )
    return replace(SITUATION, game=game)


def asking(words: str, situation: Situation = SITUATION) -> Advice:
    return advise(replace(situation, asked=Asked(words=words)))


def told(advice: Advice) -> str:
    return " ".join([advice.call, *(reason.text for reason in advice.reasons)])


def test_server_receiver_and_courts_at_a_score() -> None:
    """4.B.6: our 4 is even, so Mira, who started right, is right; they have 3, so Okafor is left
    and Lindqvist, on their right, receives."""
    advice = advise(at(4, 3, 1, we_serve=True, starter=True))
    assert advice.call == "Serve from the right, Mira; Tom left."
    assert "Lindqvist receives" in advice.reasons[1].text
    assert advice.reasons[0].source.kind is SourceKind.RULEBOOK
    assert advice.confidence is Confidence.CLEAR


def test_receiving() -> None:
    """Okafor started right; their 3 is odd, so he serves from the left to our left: Tom."""
    advice = advise(at(4, 3, 1, we_serve=False, starter=True))
    assert advice.call == "Receive on the left, Tom; Mira right."
    assert "Okafor serves" in advice.reasons[1].text


def test_both_answers_where_the_call_does_not_settle_the_server() -> None:
    """4.B.6: at 4-3-1 either partner may be serving; the starter is right at an even score."""
    advice = advise(at(4, 3, 1, we_serve=True, starter=None))
    assert advice.call == "Serve right if Mira serves, left if Tom."
    assert "right at even" in advice.reasons[0].text
    assert advice.reasons[1].text == "Mira serving: from the right, Lindqvist receives"
    assert advice.reasons[2].text == "Tom serving: from the left, Okafor receives"


def test_both_answers_when_they_serve() -> None:
    advice = advise(at(4, 3, 1, we_serve=False, starter=None))
    assert advice.call == "Stand Mira right, Tom left; face their server."
    assert advice.reasons[1].text == "Okafor serving: from their left, Tom receives"


def test_no_score_is_assumed_and_said() -> None:
    advice = advise(Situation(topic=Topic.WHERE_TO_STAND))
    assert advice.assumed is not None
    assert "0-0-2, we serve" in advice.assumed
    assert advice.call.startswith("Serve from the right")
    receive = next(choice for choice in advice.choices if choice.label == "We receive")
    assert (receive.fact, receive.value) == ("we_serve", "no")
    other = advise(Situation(topic=Topic.WHERE_TO_STAND, asked=Asked(we_serve=False)))
    assert other.call.startswith("Receive on the right")


def test_our_agreement_names_the_starter() -> None:
    agreed = Agreement(key=AgreementKey.FIRST_SERVER, value="Tom", words="Tom serves first")
    situation = replace(SITUATION, agreements=MappingProxyType({AgreementKey.FIRST_SERVER: agreed}))
    assert advise(situation).call == "Serve from the right, Tom; Mira left."


@pytest.mark.parametrize(
    "said",
    [
        "where do i stand at 6-3-1 we serve, tom started on right",
        "6-3-1 tom served first",
        "tom started",
        "mira started on the left",
    ],
)
def test_who_started_is_taken_from_the_question(said: str) -> None:
    """2025 edition, 4.B.6: at an even score of ours our starter is on the right."""
    game = at(6, 3, 1, we_serve=True, starter=None).game
    situation = replace(SITUATION, game=game, asked=Asked(words=said))
    assert advise(situation).call == "Serve right if Tom serves, left if Mira."


def test_whoever_asks_is_spoken_to() -> None:
    asked = replace(at(4, 3, 1, we_serve=True, starter=True), asker=MIRA)
    assert advise(asked).call == "Serve from the right; Tom stands left."
    assert advise(replace(asked, asker=TOM)).call == "Stand left; Mira serves from the right."
    either = replace(at(4, 3, 1, we_serve=True, starter=None), asker=TOM)
    assert advise(either).call == "Stand left; serve from there if it's your turn."
    receiving = replace(at(4, 3, 1, we_serve=False, starter=None), asker=MIRA)
    assert advise(receiving).call.startswith("Stand right; receive if they serve")


@pytest.mark.parametrize(
    ("said", "score", "court"),
    [
        ("partner starts right, where am i", (5, 2), Side.RIGHT),
        ("partner started on the right, we serve, where am i", (4, 4), Side.LEFT),
        ("i started on the left, where do i stand", (7, 4), Side.RIGHT),
        ("i started on the left, where do i stand", (6, 4), Side.LEFT),
        ("my partner started left, where am i", (7, 4), Side.LEFT),
        ("my partner serves first, where am i", (5, 2), Side.RIGHT),
        ("i was on the right at the start, where now", (2, 9), Side.RIGHT),
    ],
)
@pytest.mark.parametrize("asker", [MIRA, TOM, None])
def test_who_started_is_told_of_oneself_or_the_partner(
    said: str, score: tuple[int, int], court: Side, asker: PlayerId | None
) -> None:
    """2025 edition, 4.B.6: the starter is right at an even score of their own, left at odd."""
    for lineup in (LINEUP, None):
        state = at(*score, 1, we_serve=True, starter=None)
        assert state.game is not None
        situation = replace(
            state,
            game=replace(state.game, lineup=lineup),
            asker=asker,
            asked=Asked(words=said, we_serve=True),
        )
        assert advise(situation).call.startswith(f"Stand {court};"), (said, lineup)


@pytest.mark.parametrize(
    "words", ["where does tom stand", "where's tom at this score", "tom stands?"]
)
def test_a_partner_asked_about_by_name_is_the_one_placed(words: str) -> None:
    asked = Asked(words=words, about=(TOM,))
    either = replace(at(6, 5, 2, we_serve=True, starter=None), asker=MIRA, asked=asked)
    assert advise(either).call == "Stand left, Tom; serve from there if it's your turn."
    known = replace(at(6, 5, 2, we_serve=True, starter=True), asker=MIRA, asked=asked)
    assert advise(known).call == "Stand left, Tom; Mira serves from the right."
    assert advise(replace(known, asker=None)).call == "Stand left, Tom; Mira serves from the right."


def test_a_name_beside_who_asks_changes_nothing() -> None:
    said = Asked(words="tom started on the right, where do i stand", about=(TOM,))
    either = replace(at(6, 5, 2, we_serve=True, starter=None), asker=MIRA, asked=said)
    assert advise(either).call.startswith("Stand left;")


def test_asked_while_the_partner_serves_the_asker_is_the_partner() -> None:
    asked = Situation(
        topic=Topic.WHERE_TO_STAND, asked=Asked(words="where do i stand when my partner serves")
    )
    assert advise(asked).call == "Stand on the other court, back at the baseline."
    at_score = replace(
        at(4, 3, 1, we_serve=True, starter=True),
        asked=Asked(words="where do I stand while my partner is serving"),
    )
    assert advise(at_score).call == "Stand on the left, back at the baseline."
    returns = replace(asked, asked=Asked(words="my partner returns, where do i stand"))
    assert "kitchen line" in advise(returns).call


def test_a_game_that_is_over_gives_the_next_one() -> None:
    game = replace(start(GameFormat(), we_serve=True, lineup=LINEUP), ours=11, theirs=7)
    advice = advise(replace(SITUATION, game=game))
    assert advice.assumed is not None
    assert "11-7" in advice.assumed
    assert advice.call == "Receive on the right, Mira; Tom left."


def test_a_stack_sends_the_partner_outside_and_says_who_goes_where() -> None:
    """4.B: Mira must serve from the right, plays left; Tom starts outside the right sideline."""
    situation = replace(at(4, 3, 1, we_serve=True, starter=True), formation=Formation.STACK_ALWAYS)
    advice = advise(situation)
    assert advice.call.startswith("Serve from the right, Mira")
    assert "Tom waits outside; after the serve Mira goes left" in advice.reasons[2].text
    assert advice.picture is not None
    tom = next(one for one in court_of(advice).markers if one.label == "Tom")
    assert tom.x_m > HALF_WIDTH_M
    assert "Tom outside the right sideline" in advice.picture.alt


def test_a_stack_that_needs_no_move_says_so() -> None:
    situation = replace(at(5, 3, 1, we_serve=True, starter=True), formation=Formation.STACK_ALWAYS)
    assert "no move" in advise(situation).reasons[2].text


def test_a_stack_on_serve_stays_straight_on_return() -> None:
    situation = replace(
        at(4, 3, 1, we_serve=False, starter=True), formation=Formation.STACK_ON_SERVE
    )
    assert "Stack" not in told(advise(situation))


def test_a_stack_on_return_stays_straight_on_serve() -> None:
    for we_serve in (True, False):
        situation = replace(
            at(4, 3, 1, we_serve=we_serve, starter=True), formation=Formation.STACK_ON_RETURN
        )
        assert ("Stack" in told(advise(situation))) is not we_serve


def test_stacked_moves_end_outside_the_kitchen() -> None:
    """Where they are drawn to stop they could volley."""
    for we_serve in (True, False):
        situation = replace(
            at(4, 3, 1, we_serve=we_serve, starter=True), formation=Formation.STACK_ALWAYS
        )
        picture = court_of(advise(situation))
        assert picture is not None
        moves = [arrow for arrow in picture.arrows if arrow.from_y_m * arrow.to_y_m > 0]
        assert len(moves) == 2
        assert all(abs(arrow.to_y_m) > KITCHEN_DEPTH_M for arrow in moves)
        assert {arrow.to_x_m > 0 for arrow in moves} == {True, False}


@pytest.mark.parametrize("ours", [0, 3])
def test_singles(ours: int) -> None:
    """Singles: own score even, right; odd, left."""
    format = GameFormat(discipline=Discipline.SINGLES)
    game = replace(start(format, we_serve=True), ours=ours)
    advice = advise(replace(SITUATION, game=game))
    assert advice.call == f"Serve from the {'left' if ours % 2 else 'right'}."
    assert advice.picture is not None
    assert len(court_of(advice).markers) == 2


FORMATS = st.sampled_from(
    [
        GameFormat(),
        GameFormat(target=21, scoring=Scoring.RALLY),
        GameFormat(scoring=Scoring.RALLY, rally_rotation=RallyRotation.NEVER_SWAP),
    ]
)


@given(FORMATS, st.lists(st.booleans(), max_size=40), st.sampled_from([None, *Formation]))
def test_every_score_gets_the_rulebooks_server_and_receiver(
    format: GameFormat, outcomes: list[bool], formation: Formation | None
) -> None:
    state = start(format, we_serve=True, lineup=LINEUP)
    for won in outcomes:
        following = after(state, won_by_us=won)
        if following.is_over:
            break
        state = following
    advice = advise(replace(SITUATION, game=state, formation=formation))
    serves, receives = server(state), receiver(state)
    assert serves is not None
    assert receives is not None
    ours, theirs = (serves, receives) if state.we_serve else (receives, serves)
    assert f"{NAMES[ours]};" in advice.call
    assert NAMES[theirs] in advice.reasons[1].text
    assert len(advice.call) <= CALL_LIMIT
    assert advice.picture is not None
    assert {one.label for one in court_of(advice).markers} == set(NAMES.values())


@pytest.mark.parametrize(
    ("words", "starts"),
    [
        ("who serves and from where at 4-3-1", "Serve"),
        ("which side am i on", "Serve"),
        ("where do i stand", "Serve"),
        ("how far back should i be to receive serve", "Receive a step"),
        ("how deep do we stay after we serve", "Stay back"),
        ("do i slide with the ball", "Follow the ball"),
        ("where to stand vs bangers", "Stand half a step"),
        ("where do i stand if they lob", "Stand half a step"),
    ],
)
def test_the_half_that_was_asked_comes_first(words: str, starts: str) -> None:
    assert asking(words).call.startswith(starts)


def test_each_half_carries_the_other_behind_why() -> None:
    by_rule = advise(at(4, 3, 1, we_serve=True, starter=True))
    moving = asking("do i slide", at(4, 3, 1, we_serve=True, starter=True))
    assert moving.call in by_rule.more
    assert by_rule.call in moving.more


@pytest.mark.parametrize("kind", BallKind)
def test_every_kind_of_ball_has_an_answer_of_its_own(kind: BallKind) -> None:
    advice = advise(replace(SITUATION, asked=Asked(ball_kind=kind)))
    others = [
        advise(replace(SITUATION, asked=Asked(ball_kind=other)))
        for other in BallKind
        if other is not kind
    ]
    assert advice.call not in {other.call for other in others}
    assert kind not in {choice.value for choice in advice.choices}
    assert 1 <= len(advice.reasons) <= 3


def test_nobody_is_told_to_backpedal() -> None:
    """Turn and run for a lob (Myers and Hanks 2024 on falls)."""
    advice = advise(replace(SITUATION, asked=Asked(ball_kind=BallKind.LOB)))
    assert advice.caution is not None
    assert "never backpedal" in advice.caution


@pytest.mark.parametrize(("hitter", "near"), [(Side.RIGHT, "Mira"), (Side.LEFT, "Tom")])
def test_the_pair_slides_towards_the_ball(hitter: Side, near: str) -> None:
    """Their right faces our left: Mira, who plays left, covers that line."""
    advice = advise(replace(SITUATION, asked=Asked(hitter_side=hitter)))
    assert advice.picture is not None
    by_label = {one.label: one for one in court_of(advice).markers}
    ball_right = by_label["hitter"].x_m > 0
    ours = {name: by_label[name].x_m for name in ("Mira", "Tom")}
    assert max(ours, key=lambda name: ours[name] if ball_right else -ours[name]) == near
    assert sum(ours.values()) > 0 if ball_right else sum(ours.values()) < 0
    given_up = next(zone for zone in court_of(advice).zones if not zone.ours)
    assert ((given_up.x0_m + given_up.x1_m) > 0) is not ball_right


def lobber(level: float) -> Situation:
    habit = TraitEstimate(
        level=level, variance=0.05, evidence=(EvidenceId("note:1:1"),), says_yes=3
    )
    profile = Profile(
        player=OKAFOR, name="Okafor", skills=MappingProxyType({(Trait.LOB, True): habit})
    )
    return replace(SITUATION, theirs=(OnCourt(profile=profile), on_court(LINDQVIST)))


def test_their_habit_moves_us_back_and_is_cited() -> None:
    advice = asking("do i slide", lobber(0.6))
    assert advice.call.startswith("Stand half a step off the line")
    assert advice.reasons[0].text.startswith("Okafor lobs")
    assert str(advice.reasons[0].source) == "book: 3 notes"


def test_somebody_who_seldom_lobs_does_not() -> None:
    advice = asking("do i slide", lobber(-0.6))
    assert advice.call.startswith("Follow the ball")
    assert all(reason.source.kind is not SourceKind.BOOK for reason in advice.reasons)


def test_asked_who_serves_the_people_come_first() -> None:
    """A match-mode answer keeps one reason: then it must be the one that names the server."""
    situation = replace(at(4, 3, 1, we_serve=False, starter=True), asked=Asked(words="who serves"))
    assert advise(situation).reasons[0].text.startswith("Okafor serves")


def test_a_partner_pulled_wide_is_no_question_of_courts() -> None:
    """It was answered with who serves from where."""
    asked = Asked(words="where do i stand when my partner is pulled wide")
    advice = advise(Situation(topic=Topic.WHERE_TO_STAND, asked=asked))
    assert "cover line and middle" in advice.call


@pytest.mark.parametrize(
    "words",
    [
        "should i shade left or stay", "how should we shade vs her when she is on the right",
        "do we squeeze to the right or hold", "should i cheat over to the left",
    ],
)  # fmt: skip
def test_shading_is_movement_whatever_side_it_names(words: str) -> None:
    assert asking(words).call.startswith("Follow the ball")


@pytest.mark.parametrize("words", ["who stands on the right in the shade", "left or right at 4-2"])
def test_a_side_or_the_shade_alone_is_no_movement(words: str) -> None:
    assert "starter" in asking(words).call
