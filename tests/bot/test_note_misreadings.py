"""Words that would name a strength, and what stands around them. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.said import NoteSaid


def told(talk: Talk, text: str) -> set[str]:
    """What the note claims; nothing where it was taken for no note at all."""
    talk.say(text)
    assert talk.heard is not None
    return {f"{one.trait} {one.value}" for one in talk.heard.trace.get("claims", ())}


@pytest.mark.parametrize("text", ["okafor misses returns deep", "okafor misses his returns deep"])
def test_where_the_misses_go_is_no_depth_of_returns(demo: Talk, text: str) -> None:
    assert not {one for one in told(demo, text) if one.endswith("strength")}
    assert not [one.label for one in demo.buttons if "strong" in one.label]


@pytest.mark.parametrize(
    "text",
    [
        "okafor returns deep",
        "okafor never misses returns deep",
        "okafor misses a lot, returns deep",
    ],
)
def test_returns_that_land_deep_are_strong(demo: Talk, text: str) -> None:
    assert "return_depth strength" in told(demo, text)


@pytest.mark.parametrize(
    "text",
    [
        "lindqvist is a bit of a cheater on line calls",
        "lindqvist makes bad line calls",
        "lindqvist is cheating on line calls",
    ],
)
def test_line_calls_are_no_talk_between_partners(demo: Talk, text: str) -> None:
    """What to do about them is answered; that they are made is kept with one tap."""
    assert told(demo, text) == set()
    assert demo.last[-1].text.startswith("Play on and stay calm")
    assert not [one.label for one in demo.buttons if "communication" in one.label]
    assert demo.tap("write it down").startswith("Noted, all kept as words")


def test_calls_to_a_partner_are(demo: Talk) -> None:
    assert told(demo, "hale calls every ball early") == {"communication strength"}


@pytest.mark.parametrize(
    "text",
    [
        "okafor plays left not right",
        "okafor plays left btw not right",
        "okafor plays left instead of right",
        "okafor plays left, lindqvist plays right",
        "okafor plays left lindqvist plays right",
    ],
)
def test_a_side_told_from_the_other_is_no_pair_of_hands(demo: Talk, text: str) -> None:
    found = told(demo, text)
    assert "side_played left" in found
    assert "hand ambidextrous" not in found


@pytest.mark.parametrize("text", ["okafor hits righty not lefty", "okafor is a righty not a lefty"])
def test_a_hand_told_from_the_other_is_one(demo: Talk, text: str) -> None:
    assert "hand ambidextrous" not in told(demo, text)


@pytest.mark.parametrize(
    "text", ["okafor serves lefty and dinks righty", "okafor plays both hands"]
)
def test_two_hands_told_are_two(demo: Talk, text: str) -> None:
    assert told(demo, text) == {"hand ambidextrous"}


@pytest.mark.parametrize(
    "text",
    [
        "okafor has a soft dink",
        "okafor has really soft dinks",
        "okafor dinks soft",
        "okafor has a nice soft dink",
        "okafors dinks are soft",
        "okafor keeps his dinks soft",
        "okafor has a very soft drink",
        "okafor has a soft backhand dink",
    ],
)
def test_a_soft_dink_is_praised(demo: Talk, text: str) -> None:
    found = told(demo, text)
    assert not any("dink weak" in one for one in found), found


def test_a_plainly_soft_dink_is_a_strong_one(demo: Talk) -> None:
    assert told(demo, "okafor has a soft dink") == {
        "forehand_dink strength",
        "backhand_dink strength",
    }


@pytest.mark.parametrize("text", ["okafors dink is too soft", "okafor has soft weak dinks"])
def test_one_that_is_bad_beside_stays_weak(demo: Talk, text: str) -> None:
    assert "backhand_dink weakness" in told(demo, text)


def test_dinks_to_a_place_are_no_want_of_patience(demo: Talk) -> None:
    assert "patience weakness" not in told(demo, "okafor cant handle dinks to his feet")
    assert "patience weakness" in told(demo, "okafor cant handle dinks")


def test_a_shot_that_goes_under_pressure_is_no_matter_of_nerves(demo: Talk) -> None:
    found = told(demo, "okafor pops up backhand dinks under pressure")
    assert found == {"backhand_dink weakness"}


def test_nerves_without_a_shot_stay(demo: Talk) -> None:
    assert "nerves weakness" in told(demo, "okafor misses under pressure")


def test_who_is_named_again_is_told_of_apart(demo: Talk) -> None:
    demo.say("okafor + lindqvist, okafor = short, lindqvist = big serve")
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, NoteSaid)
    told_of = {(one.player, one.trait.value) for one in demo.heard.understood.claims}
    okafor, lindqvist = demo.player("Okafor"), demo.player("Lindqvist")
    assert told_of == {(okafor, "height"), (lindqvist, "serve")}


@pytest.mark.parametrize("text", ["okafor serves wide to the ad side", "okafor drives to the left"])
def test_where_a_shot_goes_is_not_where_somebody_plays(demo: Talk, text: str) -> None:
    assert not any(one.startswith("side_played") for one in told(demo, text))


@pytest.mark.parametrize("text", ["okafor plays the ad side", "okafor serves well and plays left"])
def test_where_somebody_plays_stays(demo: Talk, text: str) -> None:
    assert "side_played left" in told(demo, text)


@pytest.mark.parametrize(
    "text",
    [
        "oh and lindqvist doesnt like going to her backhand side",
        "ok oh lindqvist is slow",
        "oh lindqvist is bad at dinks",
        "oh yeah lindqvist hates it",
    ],
)
def test_what_is_only_exclaimed_is_no_overhead(demo: Talk, text: str) -> None:
    assert not {one for one in told(demo, text) if one.startswith("overhead")}
    assert not [one.label for one in demo.buttons if "overhead" in one.label]


@pytest.mark.parametrize(
    "text", ["lindqvist oh weak", "oh and lindqvists oh is weak", "lindqvists oh is weak"]
)
def test_a_short_overhead_stays_one(demo: Talk, text: str) -> None:
    assert "overhead weakness" in told(demo, text)


@pytest.mark.parametrize(
    "text",
    [
        "okafor attacks everything that is over the net",
        "okafor attacks anything above the net",
        "okafor attacks every ball that sits up",
        "okafor attacks all that is high",
    ],
)
def test_an_attack_on_high_balls_is_no_weak_speed_up(demo: Talk, text: str) -> None:
    assert not {one for one in told(demo, text) if one.endswith("weakness")}
    assert not [one.label for one in demo.buttons if one.label == "speed-up weak?"]


@pytest.mark.parametrize(
    "text",
    [
        "okafor attacks balls below the net",
        "okafor attacks everything over the net and misses half",
        "okafor attacks everything and misses half",
    ],
)
def test_an_attack_on_low_balls_or_a_missed_one_is(demo: Talk, text: str) -> None:
    assert "speed_up weakness" in told(demo, text)


@pytest.mark.parametrize(
    "text",
    [
        "okafor has a bad backhand, he slices it always short",
        "okafor chops it short",
        "okafor is tall, he plays it too short",
        "okafor leaves them short",
    ],
)
def test_a_ball_that_is_short_is_no_short_body(demo: Talk, text: str) -> None:
    assert "height short" not in told(demo, text)
    assert not [one.label for one in demo.buttons if "short" in one.label]


@pytest.mark.parametrize(
    "text", ["okafor is short and slow", "okafor, short, lefty", "okafor hates lobs, he is short"]
)
def test_a_short_body_is(demo: Talk, text: str) -> None:
    assert "height short" in told(demo, text)


@pytest.mark.parametrize(
    "text",
    [
        "okafor got hit on the arm by lindqvist, he is ok",
        "lindqvist took one on the hip, he says it is fine",
        "hale hit ruiz on the shoulder with a hard one. she says it is ok",
    ],
)
def test_who_is_ok_after_a_blow_is_not_strong_there(demo: Talk, text: str) -> None:
    assert not {one for one in told(demo, text) if one.startswith(("body_jam", "handles_pace"))}
    assert not [one.label for one in demo.buttons if "body" in one.label or "pace" in one.label]


@pytest.mark.parametrize(
    "text", ["okafor handles body shots well", "okafor is fine with balls at the body"]
)
def test_who_meets_balls_at_the_body_well_is(demo: Talk, text: str) -> None:
    assert "body_jam strength" in told(demo, text)


@pytest.mark.parametrize(
    "text",
    [
        "okafor calls everything out",
        "okafor calls every close ball out",
        "okaf cheats lines",
        "lindqvist cheats on the lines",
        "lindqvist cheats line calls",
    ],
)
def test_calling_balls_out_is_no_trait_of_play(demo: Talk, text: str) -> None:
    assert told(demo, text) == set()
    assert not [one.label for one in demo.buttons if "communication" in one.label]


def test_calls_between_partners_still_are_talk(demo: Talk) -> None:
    assert told(demo, "hale calls switch all the time") == {"communication strength"}


@pytest.mark.parametrize(
    "text", ["hale bh cant hit volley, only dinks", "hale's backhand cant hit volleys, just dinks"]
)
def test_what_is_all_they_have_is_not_what_they_lack(demo: Talk, text: str) -> None:
    assert told(demo, text) == {"backhand_volley weakness"}


def test_weak_dinks_stay_weak_though_they_only_dink(demo: Talk) -> None:
    assert "backhand_dink weakness" in told(demo, "hale weak bh dink, only dinks")


@pytest.mark.parametrize(
    "text", ["lindqvist fakes erne", "okafor fakes the poach a lot", "hale fakes ernies"]
)
def test_what_is_only_shown_is_not_done(demo: Talk, text: str) -> None:
    assert told(demo, text) == set()


def test_who_shows_one_thing_may_do_another(demo: Talk) -> None:
    assert told(demo, "hale fakes the erne, lobs a lot") == {"lob often"}


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("lindqvist poaches if okafor is wide", "okafor is wide"),
        ("lindqvist poaches when okafor is pulled wide", "okafor is pulled wide"),
    ],
)
def test_a_case_of_the_other_is_kept_as_words(demo: Talk, text: str, kept: str) -> None:
    assert "poaching often" in told(demo, text)
    assert kept in demo.last[-1].text


@pytest.mark.parametrize(
    "text",
    [
        "tom keeps leaving me the middle ball and then yells yours",
        "tom always leaves me the lob then shouts yours",
        "tom lets the middle go and calls yours",
        "tom calls yours late every time",
        "tom calls it at the last second",
    ],
)
def test_a_ball_left_to_a_partner_is_no_good_talk(demo: Talk, text: str) -> None:
    assert "communication strength" not in told(demo, text)


@pytest.mark.parametrize(
    "text",
    [
        "tom calls mine and yours loud and early",
        "tom yells mine and yours, never late",
        "okafor lets lindqvist know, calls mine or yours all day",
    ],
)
def test_calls_in_time_still_are_good_talk(demo: Talk, text: str) -> None:
    assert "communication strength" in told(demo, text)
