"""Announcements read to the last word: the time as written, and names whole, whatever they mean."""

from __future__ import annotations

import pytest
from talk import Talk


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("next: okafor and lindqvist, 11.40, they serve", "11:40"),
        ("next: okafor and lindqvist 8.20 they serve", "08:20"),
        ("next: okafor and lindqvist, 10.25, court 3, they serve", "10:25, court 3"),
        ("next: okafor and lindqvist at 1.40 pm, they serve", "13:40"),
    ],
)
def test_a_time_with_a_dot_beside_who_serves_sets_no_rates(demo: Talk, said: str, at: str) -> None:
    reply = demo.say(said)
    assert reply.startswith(f"Next: Chidi Okafor and Sven Lindqvist, {at}, best of 3 to 11.")
    assert "They serve from the right" in reply
    assert "your numbers" not in demo.say("win chance")


@pytest.mark.parametrize(
    "said",
    ["we win 21.50 serving, 20.40 receiving", "assume 21.50% on our serve, 20.40% on theirs"],
)
def test_shares_won_or_in_percent_are_no_times(demo: Talk, said: str) -> None:
    assert "22 of 100 serving, 20 receiving" in demo.say(said)


@pytest.mark.parametrize(
    ("pair", "one", "other"),
    [
        ("marisol quintero and bev stannard", "Marisol Quintero", "Bev Stannard"),
        ("joy ashdown and tim winters", "Joy Ashdown", "Tim Winters"),
        ("joy ashdown & rob banger", "Joy Ashdown", "Rob Banger"),
        ("tim poacher/val stannard", "Tim Poacher", "Val Stannard"),
        ("joy ashdown and al slater", "Joy Ashdown", "Al Slater"),
        ("cy loebner and joy march", "Cy Loebner", "Joy March"),
        ("joy ashdown, tim winters", "Joy Ashdown", "Tim Winters"),
        ("joost van der meer and june park", "Joost Van Der Meer", "June Park"),
        ("joy ashdown and tim winters tough ones", "Joy Ashdown", "Tim Winters"),
        ("zubiri tough ones and kvam lefty", "Zubiri", "Kvam"),
        ("Torvald Lunde and Sarita Bhatt", "Torvald Lunde", "Sarita Bhatt"),
        ("Kenji Lunde/Priya Osei", "Kenji Lunde", "Priya Osei"),
        ("torvald lunde and sarita bhatt tomorow", "Torvald Lunde", "Sarita Bhatt"),
        ("gell and kim sundby satuday", "Gell", "Kim Sundby"),
        ("gell and rudd saturday", "Gell", "Rudd"),
        ("Sunniva Dahl/Greet Maas womens semi", "Sunniva Dahl", "Greet Maas"),
    ],
)
def test_a_pair_announced_is_added_by_whole_names(
    fresh: Talk, pair: str, one: str, other: str
) -> None:
    assert "in your book yet" in fresh.say(f"next: {pair}, 9:40 court 12, we serve")
    assert fresh.say("yes").startswith(f"Next: {one} and {other}, 09:40, court 12")
    with fresh.book() as book:
        assert {row.name for row in book.players()} == {one, other}


def test_a_single_opponent_is_one_name(fresh: Talk) -> None:
    assert fresh.say("next: val stannard, 9:40") == "No val stannard in your book yet."


def test_a_surname_in_common_is_not_taken_for_the_same_player(demo: Talk) -> None:
    asked = demo.say("next: dov lindqvist and hale")
    assert asked.startswith("No dov lindqvist in your book yet.")
    assert [one.label for one in demo.buttons] == ["Sven Lindqvist", "add dov lindqvist"]
    assert demo.tap("Sven Lindqvist").startswith("Next: Sven Lindqvist and Ben Hale")


@pytest.mark.parametrize(
    "said",
    [
        "next: okafor and lindqvist please",
        "next: big okafor and lindqvist",
        "next: okafor/lindkvist",
    ],
)
def test_those_of_the_book_are_found_as_ever(demo: Talk, said: str) -> None:
    assert demo.say(said).startswith("Next: Chidi Okafor and Sven Lindqvist")


def test_a_misspelt_player_of_the_book_is_offered_before_another_is_added(fresh: Talk) -> None:
    fresh.say("add ada moreno")
    fresh.say("add tove lindegard")
    fresh.say("next: morena and lindegard, 2pm")
    assert [one.label for one in fresh.buttons] == ["Ada Moreno", "add morena"]
    assert fresh.tap("Ada Moreno").startswith("Next: Ada Moreno and Tove Lindegard, 14:00")


def test_several_near_a_misspelt_name_are_all_offered(demo: Talk) -> None:
    demo.say("next: ruez and hale")
    labels = [one.label for one in demo.buttons]
    assert labels == ["Ana Ruiz", "Ana Ruiz-Peña", "Anna Ruis", "add ruez"]


def test_the_pair_on_court_announced_again_counts_no_rally(demo: Talk) -> None:
    assert demo.say("next: okafor and lindqvist again").startswith("Next: ")


@pytest.mark.parametrize(
    "opening", ["after that its", "next its", "then its", "after that we have"]
)
def test_whoever_comes_after_that_won_no_rally(demo: Talk, opening: str) -> None:
    assert demo.say(f"{opening} hale and ana ruiz").startswith("Next: Ben Hale and Ana Ruiz")
    assert demo.say(f"{opening} anna olsen and tim sills").startswith("No anna olsen in your book")


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("next gretel hoffmann and sunniva berg eleven thirty court two", "11:30, court 2"),
        ("next gretel hoffmann and sunniva berg ten fifteen", "10:15"),
        ("we play gretel hoffmann and sunniva berg eleven thirty", "11:30"),
        ("next up gretel hoffmann and sunniva berg at twelve court eleven", "12:00, court 11"),
    ],
)
def test_a_spoken_time_behind_a_surname_is_no_part_of_it(fresh: Talk, said: str, at: str) -> None:
    fresh.say(said)
    reply = fresh.press(fresh.buttons[0].payload)
    assert reply.startswith(f"Next: Gretel Hoffmann and Sunniva Berg, {at}, best of 3")


@pytest.mark.parametrize(
    ("said", "pair"),
    [
        ("next: Duarte and Ferreira-Lund, 14:15", "Duarte and Ferreira-Lund"),
        ("next: Rosa Ferreira-Lund and Duarte", "Rosa Ferreira-Lund and Duarte"),
        ("next: Duarte/Ferreira-Lund", "Duarte and Ferreira-Lund"),
    ],
)
def test_a_hyphen_joins_one_surname_of_a_pair(fresh: Talk, said: str, pair: str) -> None:
    assert fresh.say(said) == f"No {pair} in your book yet."
    assert fresh.say("yes").startswith(f"Next: {pair}")
    assert fresh.say("Lund is slow") == "Noted. Ferreira-Lund: foot speed weak."
    assert fresh.say("report on Ferreira-Lund").startswith("Move Ferreira-Lund")


def test_a_hyphen_between_blanks_parts_two(fresh: Talk) -> None:
    assert fresh.say("next: Duarte - Ferreira") == "No Duarte and Ferreira in your book yet."


def test_a_pool_keeps_the_hyphen(fresh: Talk) -> None:
    assert "1 Duarte/Ferreira-Lund" in fresh.say("pool: Duarte/Ferreira-Lund, ruiz/hale")


@pytest.mark.parametrize(
    "said",
    [
        "next: jj tran + bo kerr 2pm ct 9, they srv",
        "next: jj tran and bo kerr 2pm, they serve",
        "next: jj tran/bo kerr, ct 9, they srvs",
    ],
)
def test_a_pair_that_is_like_nobody_is_asked_about_once_and_its_serve_kept(
    demo: Talk, said: str
) -> None:
    assert demo.say(said) == "No jj tran and bo kerr in your book yet."
    assert [one.label for one in demo.buttons] == ["add jj tran and bo kerr"]
    reply = demo.tap("add jj tran and bo kerr")
    assert reply.startswith("Next: Jj Tran and Bo Kerr")
    assert "They serve" in reply


@pytest.mark.parametrize("name", ["ana rueez", "sven lindkwist", "chidy okafur"])
def test_a_full_name_that_is_like_somebody_is_never_added_unasked(demo: Talk, name: str) -> None:
    demo.say(f"next: {name} and jj tran, 2pm")
    assert not any(name in one.label for one in demo.buttons if "jj tran" in one.label)


def test_a_day_misspelt_is_nobody_and_three_names_are_no_pair(fresh: Talk) -> None:
    fresh.say("we are mira and tom")
    fresh.say("bracket tomorow: mixed backdraw vs Nils Ferro and Ama Quist 8:45 ct 1")
    assert [one.label for one in fresh.buttons] == ["add Nils Ferro and Ama Quist"]
    reply = fresh.say("satruday: vs Nils Ferro and Ama Quist and Per Lind 8:45")
    assert reply.startswith("A pair is two. I read: Nils Ferro, Ama Quist, Lind.")


@pytest.mark.parametrize(
    "said",
    [
        "rematch against okafor and lindqvist two fifteen court one",
        "second match is against okafor and lindqvist two fifteen on court one",
    ],
)
def test_the_time_before_a_court_is_no_score(demo: Talk, said: str) -> None:
    reply = demo.say(said)
    assert "Next: Chidi Okafor and Sven Lindqvist, 14:15, court 1" in reply
    assert "can't" not in reply
