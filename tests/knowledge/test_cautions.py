"""Heat index against the published chart, thresholds, and what defers to medical staff."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.advice import Advice
from knowledge.cautions import (
    HeatLevel,
    fahrenheit,
    heat_index_f,
    heat_level,
    rothfusz_f,
)
from knowledge.situation import Asked, Situation, Wind
from knowledge.tactics import weather
from knowledge.vocabulary import Topic

# The printed chart of the National Weather Service, the unadjusted polynomial of Rothfusz 1990
# (SR 90-23), read.
PUBLISHED_CHART = [(96, 65, 121), (88, 60, 95), (90, 60, 100), (100, 40, 109), (84, 40, 83)]


@pytest.mark.parametrize(("temperature", "humidity", "index"), PUBLISHED_CHART)
def test_the_printed_chart(temperature: float, humidity: float, index: int) -> None:
    assert round(rothfusz_f(temperature, humidity)) == index
    assert round(heat_index_f(temperature, humidity)) == index


def test_dry_heat_feels_cooler_and_humid_warmth_hotter_than_the_chart() -> None:
    """NOAA, "The heat index equation": the two adjustments, at their centre and edge."""
    assert heat_index_f(95, 5) == pytest.approx(rothfusz_f(95, 5) - 2.0)
    assert heat_index_f(82, 95) == pytest.approx(rothfusz_f(82, 95) + 1.0)


def test_the_simple_form_below_eighty() -> None:
    """NOAA: 0.5 (T + 61 + 1.2 (T - 68) + 0.094 RH), averaged with T."""
    assert heat_index_f(70, 50) == pytest.approx((0.5 * (70 + 61 + 2.4 + 4.7) + 70) / 2)


@pytest.mark.parametrize(
    ("index", "level"),
    [
        (79.9, HeatLevel.NONE),
        (80, HeatLevel.CAUTION),
        (90, HeatLevel.EXTREME_CAUTION),
        (103, HeatLevel.DANGER),
        (124.9, HeatLevel.DANGER),
        (125, HeatLevel.EXTREME_DANGER),
    ],
)
def test_levels_of_the_weather_service(index: float, level: HeatLevel) -> None:
    assert heat_level(index) is level


@given(temperature=st.floats(85, 110), humidity=st.floats(40, 80), more=st.floats(0.5, 5))
def test_hotter_or_damper_is_never_cooler(temperature: float, humidity: float, more: float) -> None:
    here = heat_index_f(temperature, humidity)
    assert heat_index_f(temperature + more, humidity) > here
    assert heat_index_f(temperature, humidity + more) > here


@pytest.mark.parametrize("humidity", [-1, 101])
def test_a_humidity_that_cannot_be_is_refused(humidity: float) -> None:
    with pytest.raises(ValueError, match="humidity"):
        heat_index_f(90, humidity)


def _ask(words: str, wind: Wind | None = None) -> Advice:
    return weather.advise(
        Situation(topic=Topic.WEATHER_OR_BODY, asked=Asked(words=words), wind=wind)
    )


@pytest.mark.parametrize("said", ["it's 96 F and 65% here", "96F, 65 percent humidity", "35.6"])
def test_temperature_and_humidity_are_read_only_if_both_are_said(said: str) -> None:
    advice = _ask(said)
    assert ("heat_index_f" in advice.numbers) is ("6F" in said.replace(" ", ""))


def test_celsius_is_read_as_celsius() -> None:
    assert _ask("33 C and 60%").numbers["heat_index_f"] == pytest.approx(
        heat_index_f(fahrenheit(33), 60)
    )


@pytest.mark.parametrize(
    "said",
    [
        "my chest feels tight",
        "i feel dizzy",
        "feeling lightheaded",
        "something feels off",
        "calf cramping badly",
        "twisted my ankle",
        "got hit in the eye",
        "fell on my head going backwards",
        "so hot out here",
    ],
)
def test_bodies_get_a_caution_that_defers(said: str) -> None:
    caution = _ask(said).caution
    assert caution is not None
    assert any(word in caution.lower() for word in ("staff", "medical", "stop", "emergency"))


def test_sun_in_the_eyes_is_no_injury() -> None:
    assert "sun" in _ask("sun right in my face on this side").call


def test_the_graver_symptom_wins() -> None:
    assert _ask("dizzy from the heat").call.startswith("Stop now")


@pytest.mark.parametrize(
    ("wind", "start"),
    [
        (Wind.BEHIND_US, "Return 4 ft shorter"),
        (Wind.AGAINST_US, "Return 5 ft longer"),
        (Wind.ACROSS, "Aim the return 3 ft upwind"),
        (Wind.SOME, "Return low and middle"),
        (None, "Unwell? Stop."),
    ],
)
def test_a_known_wind_is_used_where_the_words_say_none(wind: Wind | None, start: str) -> None:
    assert _ask("returns?", wind).call.startswith(start)
