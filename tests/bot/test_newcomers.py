"""People whom the book does not know yet: on a new event's first morning that is everybody."""

from __future__ import annotations

import pytest
from talk import Talk
from voices import EVENING

from bot.chat.names import mentions_of
from bot.chat.newcomer_words import newcomers_in
from bot.chat.said import Certainty
from knowledge.vocabulary import Trait


@pytest.mark.parametrize(
    ("said", "names"),
    [
        ("next: kenji mori and pat olsen, 10:40", ["kenji mori", "pat olsen"]),
        ("we play kenji mori and pat olsen next", ["kenji mori", "pat olsen"]),
        ("kenji mori and pat olsen at 2pm court 3", ["kenji mori", "pat olsen"]),
        ("next: kenji mori/pat olsen 10:40 ct 3", ["kenji mori", "pat olsen"]),
        ("next match is against mia lund / dov katz", ["mia lund", "dov katz"]),
        ("pat olsen pops up backhands", ["pat olsen"]),
        ("kenji mori righty big forehand", ["kenji mori"]),
        ("kenji mori, right handed, slow feet", ["kenji mori"]),
        ("Kenji Mori's backhand is weak", ["Kenji Mori"]),
        ("where do i dink kenji mori", ["kenji mori"]),
        ("kimur bangz it hard", []),
        ("who covers the middle", []),
        ("may i step in the kitchen", []),
        ("will she lob", []),
        ("mark the score please", []),
    ],
)
def test_a_first_and_a_last_name_are_one_person(said: str, names: list[str]) -> None:
    unknown = [one for one in mentions_of(said, EVENING) if one.certainty is Certainty.NOBODY]
    assert [one.typed for one in unknown if " " in one.typed] == names


@pytest.mark.parametrize(
    ("typed", "names", "told"),
    [
        ("kenji mori: righty, slow feet", ("kenji mori",), True),
        ("lee grant, right handed, big forehand", ("lee grant",), True),
        ("kenji mori righty big forehand", ("kenji mori",), True),
        ("kenji mori is a lefty", ("kenji mori",), True),
        ("mia lund and uri stern", ("mia lund", "uri stern"), False),
        ("mia lund/uri stern, both tall", ("mia lund", "uri stern"), True),
        ("Joost van der Meer", ("Joost van der Meer",), False),
        ("Ana Ruiz-Peña", ("Ana Ruiz-Peña",), False),
        ("zed", ("zed",), False),
        ("zed / kvam", ("zed", "kvam"), False),
        ("zed/kvam", ("zed", "kvam"), False),
        ("<b>Okafor</b>", ("b>Okafor</b",), False),
        ("and", (), False),
        ("leo brandt and cass whitlow", ("leo brandt", "cass whitlow"), False),
        ("leo brandt", ("leo brandt",), False),
        ("leo brandt, crafty lobber", ("leo brandt",), True),
        ("zed stone hands", ("zed",), True),
        ("rob banger and tim poacher", ("rob banger", "tim poacher"), False),
        ("pia lefty and zed righty", ("pia",), True),
        ("al slater/cy loebner", ("al slater", "cy loebner"), False),
        ("kenji mori, crafty lobber and quick hands", ("kenji mori",), True),
        ("kenji mori, sixtyish retiree", ("kenji mori",), True),
        (
            "leo brandt, rob banger, june park and rose winters",
            ("leo brandt", "rob banger", "june park", "rose winters"),
            False,
        ),
    ],
)
def test_a_name_ends_where_play_is_told(typed: str, names: tuple[str, ...], told: bool) -> None:
    found = newcomers_in(typed)
    assert found.names == names
    assert found.told is told


def test_a_new_pair_is_announced_with_one_tap(fresh_anywhere: Talk) -> None:
    reply = fresh_anywhere.say("next: kenji mori and pat olsen, 10:40, they serve")
    assert reply == "No kenji mori and pat olsen in your book yet."
    reply = fresh_anywhere.say("yes")
    assert reply.startswith("Next: Kenji Mori and Pat Olsen, 10:40")
    assert "They serve" in reply
    assert fresh_anywhere.say("pat pops up backhands").startswith(
        "Noted. Olsen: backhand dink weak"
    )
    for _ in range(5):
        fresh_anywhere.say("undo")
    with fresh_anywhere.book() as book:
        assert book.players() == ()


@pytest.mark.parametrize(
    ("said", "added", "traits"),
    [
        ("add kenji mori: righty, slow feet", "Kenji Mori", {Trait.HAND, Trait.FOOT_SPEED}),
        ("new opponent kenji mori, lefty, slow feet", "Kenji Mori", {Trait.HAND, Trait.FOOT_SPEED}),
        ("new guy lee grant is a lefty", "Lee Grant", {Trait.HAND}),
    ],
)
def test_what_is_told_of_a_new_player_is_a_note(
    demo: Talk, said: str, added: str, traits: set[Trait]
) -> None:
    reply = demo.say(said)
    assert reply.startswith(f"Added {added}.\nNoted. ")
    assert {trait for trait, _, _ in demo.claims(added)} == traits


def test_a_list_of_players_is_added_whole_and_nothing_is_noted(fresh_anywhere: Talk) -> None:
    reply = fresh_anywhere.say("add marcus hollis, wendell frank, june park and rose winters")
    assert reply == "Added Marcus Hollis, Wendell Frank, June Park and Rose Winters."
    assert fresh_anywhere.stored()["note"] == []
    with fresh_anywhere.book() as book:
        assert len(book.players()) == 4
    fresh_anywhere.say("add leo brandt and june park")
    with fresh_anywhere.book() as book:
        assert [row.name for row in book.players()].count("June Park") == 1


def test_bare_names_joined_by_words_are_a_list_too(fresh: Talk) -> None:
    assert (
        fresh.say("add danka and petra and lotte/brody") == "Added Danka, Petra, Lotte and Brody."
    )
    assert fresh.say("what did i note about danka") == "No notes on Danka yet."


def test_who_is_in_the_book_is_not_added_once_more(demo: Talk) -> None:
    players = demo.stored()["player"]
    demo.say("new opponent chidi okafor, tall")
    assert demo.stored()["player"] == players


def test_a_pair_told_is_a_pair(demo: Talk) -> None:
    assert demo.say("okafor's partner is pat olsen") == "No pat olsen in your book yet."
    assert demo.say("add her") == "Kept: Chidi Okafor plays with Pat Olsen."
    reply = demo.say("hale plays with pat olsen, lefty two hander")
    assert reply.startswith("Kept: Ben Hale plays with Pat Olsen.\nNoted. Olsen: left-handed")


def test_a_question_about_somebody_unknown_is_not_answered_about_others(demo: Talk) -> None:
    assert demo.say("where do i dink kenji mori") == "No kenji mori in your book yet."


def test_a_longer_name_of_somebody_known_doubles_nobody_unasked(demo: Talk) -> None:
    demo.say("add mori")
    demo.say("mori lobs a lot")
    asked = demo.say("new opponent kenji mori")
    assert asked.splitlines() == [
        "In your book already: Mori.",
        "The same? Send: rename Mori to Kenji Mori",
    ]
    assert demo.say("rename Mori to Kenji Mori") == "Mori is now Kenji Mori."
    assert demo.claims("Kenji Mori") == {("lob", "often", False)}
    assert demo.say("undo").startswith("Taken back")
    assert demo.claims("Mori") == {("lob", "often", False)}


def test_somebody_else_with_a_longer_name_is_one_tap_away(demo: Talk) -> None:
    demo.say("add mori")
    demo.say("add kenji mori")
    demo.tap("add another kenji mori")
    assert demo.player("Kenji Mori") != demo.player("Mori")


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("rename mori to kenji mori", "Mori is now Kenji Mori."),
        ("rename mori: K. Mori", "Mori is now K. Mori."),
        ("/rename mori Kenji", "Mori is now Kenji."),
        ("rename mori", "What is the new name? Send: rename Mori to NEW NAME"),
    ],
)
def test_a_player_is_renamed_by_what_stands_behind_the_name(
    demo: Talk, said: str, told: str
) -> None:
    demo.say("add mori")
    assert demo.say(said) == told


@pytest.mark.parametrize(
    "said", ["jos backhand is weak", "Jos lobs are good", "jo's serve is weak"]
)
def test_the_s_of_a_name_of_two_letters_may_stand_without_its_apostrophe(
    demo: Talk, said: str
) -> None:
    demo.say("add jo")
    demo.say(said)
    assert demo.claims("Jo")


def test_an_everyday_word_with_an_s_is_no_name_of_two_letters(demo: Talk) -> None:
    demo.say("add wa")
    demo.say("was weak on the backhand dink")
    assert not demo.claims("Wa")


@pytest.mark.parametrize(
    ("right", "claims"), [("No I said it wrong, it is Pat", 0), ("no pat too", 1)]
)
def test_a_note_that_waited_is_put_right_by_one_that_waited_too(
    fresh: Talk, right: str, claims: int
) -> None:
    fresh.say("new opponent Pat Olsen")
    fresh.say("Kenji has very fast hands")
    fresh.say(f"{right} has fast hands and Kenji stays back")
    fresh.say("add kenji mori")
    assert len([one for one in fresh.claims("Kenji") if one[0] == "counter"]) == claims
    assert ("counter", "strength", False) in fresh.claims("Pat")
