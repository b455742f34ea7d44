"""Weather and bodies: the right entry, complaints always cautioned, numbers from what is said."""

from __future__ import annotations

import json
import re
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.advice import CALL_LIMIT, Advice
from knowledge.cautions import DEFERS, fahrenheit, heat_index_f
from knowledge.emergencies import emergency_of
from knowledge.general_rule import LINE_LIMIT
from knowledge.phone_screen import MOST_LINES
from knowledge.situation import Asked, Situation, Wind
from knowledge.sources import SourceKind
from knowledge.tactics import weather, weather_entries, weather_finding
from knowledge.tactics.weather_length import wrapped_lines
from knowledge.tactics.weather_said import heat_said, minutes_said, wind_said
from knowledge.tactics.wind_answer import shift_of
from knowledge.vocabulary import Topic
from knowledge.wind import Stroke, at_court

CASES = Path(__file__).parents[1] / "cases"
ASKED: dict[str, Any] = tomllib.loads((CASES / "weather_asked.toml").read_text(encoding="utf-8"))
COMPLAINTS = tomllib.loads((CASES / "body_complaints.toml").read_text(encoding="utf-8"))

LEAST_RIGHT = 0.95


def _ask(words: str, wind: Wind | None = None) -> Advice:
    return weather.advise(
        Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=words), wind=wind)
    )


def _found(words: str) -> str:
    if emergency_of(words) is not None:
        return "emergency"
    entry = weather_finding.find_entry(words)
    return "none" if entry is None else entry.id


@pytest.mark.parametrize("voices", ["tuned", "kept"])
def test_the_open_voices_find_their_entry(voices: str) -> None:
    cases = [case for case in ASKED["case"] if case["voice"] in ASKED[voices]]
    right = [case for case in cases if _found(case["text"]) in case["right"]]
    assert len(right) >= LEAST_RIGHT * len(cases)


def test_every_weather_question_of_the_open_voices_is_labelled() -> None:
    labelled = {(case["voice"], case["text"]) for case in ASKED["case"]}
    for voice in (*ASKED["tuned"], *ASKED["kept"]):
        lines = (CASES / "voices" / f"{voice}.questions.jsonl").read_text(encoding="utf-8")
        asked = [json.loads(line) for line in lines.splitlines()]
        texts = {(voice, one["text"]) for one in asked if one["topic"] == "weather_or_body"}
        assert texts <= labelled


@pytest.mark.parametrize(
    ("entry", "said"),
    [(entry, said) for entry, row in COMPLAINTS.items() for said in row["said"]],
)
def test_a_complaint_is_never_answered_harmlessly(entry: str, said: str) -> None:
    assert _found(said) == entry
    advice = _ask(said)
    assert advice.caution is not None
    assert re.search(r"stop|staff|emergency|medical", f"{advice.call} {advice.caution}", re.I)


WEATHER_ROUND = [
    "",
    " in this heat",
    ", its windy",
    " on the wet court",
    " and the sun",
    " 93F 70%",
]


@pytest.mark.parametrize("around", WEATHER_ROUND)
@pytest.mark.parametrize("entry", sorted(COMPLAINTS))
def test_the_weather_never_hides_a_complaint(entry: str, around: str) -> None:
    bodies = {
        "emergency",
        *(one.id for one in weather_entries.entries() if one.kind == weather_entries.BODY),
    }
    for said in COMPLAINTS[entry]["said"]:
        assert _found(said + around) in bodies


PARTS = [
    "knee",
    "elbow",
    "shoulder",
    "back",
    "wrist",
    "hip",
    "hand",
    "calf",
    "foot",
    "neck",
    "thumb",
]
HURTS = ["hurts", "is sore", "aches", "is stiff", "is swollen", "pain", "twinges", "pinches"]


@pytest.mark.parametrize("part", PARTS)
def test_any_part_that_hurts_is_cautioned(part: str) -> None:
    for hurt in HURTS:
        entry = weather_finding.find_entry(f"my {part} {hurt}, can i play")
        assert entry is not None, f"{part} {hurt}"
        assert entry.kind == weather_entries.BODY, f"{part} {hurt}"


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("shoulder tihgt", "shoulder tight"),
        ("wnid", "wind"),
        ("does it, I tried", "does it, I tried"),
    ],
)
def test_two_swapped_letters_are_put_right(typed: str, meant: str) -> None:
    assert weather_entries.mended(typed) == meant


def test_no_entry_names_a_dose() -> None:
    for entry in weather_entries.entries():
        if entry.kind == weather_entries.BODY:
            lines = [
                entry.rule.call,
                entry.rule.caution or "",
                *(r.text for r in entry.rule.reasons),
            ]
            assert not re.search(r"\d+ ?(?:mg|g|ml|tablets?|pills?)\b", " ".join(lines))


@pytest.mark.parametrize(
    "said", ["knee high up the middle", "he paints the lines", "the drops fall in the net, windy"]
)
def test_a_figure_of_speech_is_no_complaint(said: str) -> None:
    entry = weather_finding.find_entry(said)
    assert entry is None or entry.kind == weather_entries.SKY


def test_every_reason_has_a_source_and_every_line_fits() -> None:
    samples = [case["text"] for case in ASKED["case"]] + ["15 mph behind us", "33 C 60%", "wind"]
    for said in samples:
        advice = _ask(said)
        lines = [advice.number, advice.unless, advice.assumed, advice.caution]
        assert len(advice.call) <= CALL_LIMIT
        for line in [*(r.text for r in advice.reasons), *(one for one in lines if one)]:
            assert len(line) <= LINE_LIMIT, line
        assert all(isinstance(reason.source.kind, SourceKind) for reason in advice.reasons)


def test_a_reply_fits_one_screen_of_a_phone() -> None:
    """At 40 characters a line."""
    samples = [case["text"] for case in ASKED["case"]]
    samples += [said for row in COMPLAINTS.values() for said in row["said"]]
    samples += ["hot, 100 F 40%", "93F and my calf cramps", "forecast 20 mph from the left, drops"]
    for said in samples:
        advice = _ask(said)
        assert wrapped_lines(advice) <= MOST_LINES, said
        assert advice.reasons


def test_what_is_left_out_stands_behind_why() -> None:
    advice = _ask("93F 60% and my calf is cramping")
    assert len(advice.reasons) < 3
    assert any("short rallies" in line for line in advice.more)
    assert advice.caution
    assert advice.number


@given(words=st.text(max_size=80))
def test_any_words_are_answered(words: str) -> None:
    assert 0 < len(_ask(words).call) <= CALL_LIMIT


# --- wind


@pytest.mark.parametrize(
    ("said", "mph"),
    [
        ("15 mph wind", 15), ("20 km/h behind us", 12.4274), ("10 knots", 11.50779),
        ("5 m/s", 11.18468), ("gusts 18-22 mph", 20), ("gusts of thirty", 30),
        ("light breeze", 5), ("howling out here", 20), ("gusty", 15), ("wind behind us", None),
    ],
)  # fmt: skip
def test_a_speed_is_read(said: str, mph: float | None) -> None:
    """Units by definition: 1 mile 1.609344 km, 1 nautical mile 1.852 km."""
    found = wind_said(said).mph
    assert found == (None if mph is None else pytest.approx(mph, abs=1e-3))


def test_a_forecast_is_lowered_to_the_ball() -> None:
    assert wind_said("forecast says 20 mph").mph == pytest.approx(at_court(20))


@pytest.mark.parametrize(
    ("said", "way"),
    [
        ("wind at our backs", Wind.BEHIND_US), ("when its behind us", Wind.BEHIND_US),
        ("in our faces", Wind.AGAINST_US), ("headwind", Wind.AGAINST_US),
        ("crosswind", Wind.ACROSS), ("from the left", Wind.ACROSS), ("windy", None),
    ],
)  # fmt: skip
def test_a_direction_is_read(said: str, way: Wind | None) -> None:
    assert wind_said(said).way is way


@pytest.mark.parametrize("stroke", list(Stroke))
@pytest.mark.parametrize("way", [Wind.BEHIND_US, Wind.AGAINST_US, Wind.ACROSS])
def test_the_shot_asked_about_is_answered_first_with_its_own_feet(
    stroke: Stroke, way: Wind
) -> None:
    advice = _ask(f"12 mph wind, my {stroke}?", way)
    moved = shift_of(stroke, way, 12)
    feet = moved.across_ft if way is Wind.ACROSS else moved.along_ft
    assert advice.numbers[f"{stroke}_shift_ft"] == pytest.approx(feet)
    if re.search(r"\d+ ft", advice.call):
        assert f"{round(abs(feet))} ft" in advice.call
    assert advice.reasons[0].source.kind is SourceKind.COMPUTED


def test_an_unknown_speed_is_assumed_and_said() -> None:
    assert "10 mph" in (_ask("wind behind us").assumed or "")
    assert "15 mph" in (_ask("15 mph wind behind us").assumed or "")


def test_lobs_hold_into_a_breeze_and_not_into_a_strong_wind() -> None:
    assert _ask("lobs? 8 mph headwind").call.startswith("Lob now and then")
    assert _ask("lobs? 25 mph headwind").call.startswith("Leave the lob")


def test_a_crosswind_names_the_upwind_side() -> None:
    assert "left" in _ask("wind from the left, my return").call
    assert "right" in _ask("wind from the right, my return").call


def test_no_wind_to_play_in_is_the_events() -> None:
    advice = _ask("60 mph wind behind us")
    assert "event staff" in advice.call
    assert advice.caution


def test_the_end_is_offered_and_the_other_winds() -> None:
    choices = _ask("wind behind us").choices
    assert choices[0].topic is Topic.CHOOSE_END_OR_SERVE
    assert {one.value for one in choices[1:]} == {Wind.AGAINST_US, Wind.ACROSS}


def test_a_tapped_wind_overrules_the_words() -> None:
    assert "longer" in _ask("wind behind us, my return", Wind.AGAINST_US).call


# --- heat


@pytest.mark.parametrize(
    ("said", "fahrenheit_said", "humidity"),
    [
        ("33 C and 60%", 91.4, 60), ("91F 60%", 91, 60), ("93F / 70% RH", 93, 70),
        ("its 97 out", 97, None), ("34 degrees", 93.2, None), ("ninety four degrees", 94, None),
        ("33 and humid", 91.4, None), ("humidity 65, 96 F", 96, 65), ("temp is 35", 95, None),
        ("its forty degrees this morning, ball like a rock", 40, None), ("11-9, 7-3", None, None),
    ],
)  # fmt: skip
def test_heat_is_read_in_many_forms(
    said: str, fahrenheit_said: float | None, humidity: float | None
) -> None:
    found = heat_said(said)
    expected = None if fahrenheit_said is None else pytest.approx(fahrenheit_said)
    assert found.temperature_f == expected
    assert found.humidity_percent == humidity


def test_what_it_feels_like_stands_as_said() -> None:
    assert _ask("95 feels like 105, hot").numbers["heat_index_f"] == 105


def test_without_a_humidity_both_branches_are_said() -> None:
    """The published index at 40 and 60 percent; the worse one decides."""
    advice = _ask("its 95 F and hot")
    low, high = heat_index_f(95, 40), heat_index_f(95, 60)
    assert advice.numbers["heat_index_f"] == pytest.approx(high)
    assert f"{low:.0f}" in (advice.assumed or "")
    assert f"{high:.0f}" in (advice.assumed or "")


@pytest.mark.parametrize(
    ("said", "start"),
    [
        ("hot, 75 F 40%", "Play on"),
        ("hot, 84 F 40%", "Drink early"),
        ("hot, 90 F 60%", "Cool down between"),
        ("hot, 100 F 40%", "Cool hard"),
        ("hot, 100 F 70%", "Stay off court"),
    ],
)
def test_each_class_of_the_weather_service_has_its_call(said: str, start: str) -> None:
    """Chart: 84/40 83, 90/60 100, 100/40 109 (SR 90-23's chart, read); from 80, 90, 103, 125."""
    advice = _ask(said)
    assert advice.call.startswith(start)
    assert "sun up to +15" in (advice.number or "")
    assert advice.caution


@pytest.mark.parametrize("words", ["hot as hell 98 and humid", "98 and humid out here"])
def test_dangerous_heat_goes_before_a_harmless_line(words: str) -> None:
    """NWS: an index from 125 on is extreme danger; a grip that slips is not what matters then."""
    advice = _ask(words)
    assert advice.call == "Stay off court: ask event and medical staff."
    assert "grip" in {choice.value for choice in advice.choices}


def test_who_asks_about_the_grip_is_told_of_the_grip() -> None:
    advice = _ask("my grip is slipping, its 98 and humid")
    assert advice.call.startswith("Dry hand and grip")
    assert advice.numbers["heat_index_f"] > 125


def test_heat_comes_with_a_cramp_too() -> None:
    advice = _ask("94 F 60% and my calf is cramping")
    assert advice.call.startswith("Stop")
    assert advice.numbers["heat_index_f"] == pytest.approx(heat_index_f(94, 60))
    assert fahrenheit(0) == 32


@pytest.mark.parametrize(
    ("said", "minutes", "start"),
    [
        ("next match in 20 min, what do i eat", 20, "Only sip"),
        ("one hour to eat", 60, "Have a small"),
        ("an hour to eat", 60, "Have a small"),
        ("half an hour, what do i eat", 30, "Only sip"),
        ("half hour, what do i eat", 30, "Only sip"),
        ("two hours, what do i eat", 120, "Eat small"),
        ("what do i eat", None, "Sip now"),
    ],
)
def test_the_time_there_is_decides_what_to_eat(
    said: str, minutes: float | None, start: str
) -> None:
    assert minutes_said(said) == minutes
    assert _ask(said).call.startswith(start)


def test_lightning_waits_thirty_minutes() -> None:
    """Lightning safety of the US Weather Service, as quoted by others (second-hand)."""
    advice = _ask("lightning, when can we go back on")
    assert advice.call.startswith("Leave the court now")
    assert any("30 minutes after" in reason.text for reason in advice.reasons)


def test_drinking_has_its_published_limits() -> None:
    """NIOSH 2017-126 (read): 8 oz each 15 to 20 minutes, never over 48 oz an hour."""
    said = " ".join(reason.text for reason in _ask("how much water, oz per hour?").reasons)
    assert "8 oz each 15-20 min" in said
    assert "48 oz" in said


def test_medicine_is_never_ours() -> None:
    assert _ask("another tablet before the final?").caution == DEFERS


def test_who_speaks_in_celsius_is_answered_in_it_and_a_breeze_is_no_cramp() -> None:
    words = "it is 31 degrees, how much must i drink"
    advice = weather.advise(Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=words)))
    assert advice.reasons[0].text.startswith("240 ml")
    assert "°F" not in f"{advice.number} {advice.assumed}"
    for said in ("wat do they do wen its breezy", "what do they do when its breezy"):
        found = weather_finding.find_entry(said)
        assert found is not None
        assert found.id == "wind"
