"""Names and pronouns inside a message."""

from __future__ import annotations

from dataclasses import replace

import pytest
from talk import Talk
from voices import EVENING, PEOPLE

from bot.chat.names import mentions_of
from bot.chat.said import Certainty, Mention
from bot.chat.view import ChatView
from knowledge.vocabulary import PlayerId
from scouting_db.values import PlayerRow

OKAFOR, LINDQVIST, RUIZ, HALE = PlayerId(3), PlayerId(4), PlayerId(5), PlayerId(6)
MIRA, TOM = PlayerId(1), PlayerId(2)
MATCH = replace(EVENING, theirs=(OKAFOR, LINDQVIST), focus=(OKAFOR, LINDQVIST), match_on=True)


def players(text: str, view: ChatView = EVENING) -> list[str]:
    return [PEOPLE[player - 1] for one in mentions_of(text, view) for player in one.players]


def with_player(name: str) -> ChatView:
    added = PlayerRow(player=PlayerId(99), name=name, ours=False)
    return replace(EVENING, roster=(*EVENING.roster, added))


def test_stores_that_number_their_books_alike_share_no_names() -> None:
    """Same book, same version, as many people: still another roster."""
    first, second = (replace(with_player(name), version=77) for name in ("Abbot", "Zuberi"))
    assert mentions_of("abbot poaches", first)[0].players == (PlayerId(99),)
    assert mentions_of("zuberi poaches", second)[0].players == (PlayerId(99),)


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("okafor and lindqvist, 10:40, court 7", ["Chidi Okafor", "Sven Lindqvist"]),
        ("where do I dink on Hale?", ["Ben Hale (Bones)"]),
        ("okafor's backhand", ["Chidi Okafor"]),
        ("okafors backhand", ["Chidi Okafor"]),
        ("bones lefty", ["Ben Hale (Bones)"]),
        ("note oak a four is left handed", ["Chidi Okafor"]),
        ("van der Meer/o dell", ["Joost van der Meer", "Tess O'Dell"]),
        ("linqvist poaches", ["Sven Lindqvist"]),
        ("Brandt poaches", ["Lotte Brandt"]),
        ("hale dinks all day and okay for won't", ["Ben Hale (Bones)", "Chidi Okafor"]),
        ("okay for's a righty", ["Chidi Okafor"]),
        ("okay force serve is a bomb", ["Chidi Okafor"]),
        ("final at four against castellano and okay for", ["Gina Castellano", "Chidi Okafor"]),
        ("is it okay for me to lob", []),
        ("okay for the game then", []),
        ("looks okay for a lefty", []),
        ("in fast, bad on the way in", []),
        ("that is the question", []),
        ("new yen brand freaks out", ["Kim Nguyen-Brandt"]),
        ("van der mere's backhand", ["Joost van der Meer"]),
        ("yost poaches", ["Joost van der Meer"]),
        ("Joost'll poach", ["Joost van der Meer"]),
        ("Alder to serve", ["Tom Alder"]),
        ("Brandt RH", ["Lotte Brandt"]),
        ("the fancy stuff, it pokes and bounces", []),
        ("win Brandt poaches", ["Kim Nguyen-Brandt"]),
        ("beat Hale/Castellano 15-12", ["Ben Hale (Bones)", "Gina Castellano"]),
        ("szym lobs, cast poaches", ["Marek Szymanski", "Gina Castellano"]),
        ("t run wide, m covers", ["Tom Alder", "Mira Vance"]),
        ("she leans over the T, i don t know, 5 m back", []),
        ("way over by the fence", []),
        ("WE PICKLED THEM 11-0", []),
        ("is it ok for me to lob", []),
        ("who covers when he'll hit it", []),
        ("hole in the middle, hard hit", []),
    ],
)
def test_named(text: str, named: list[str]) -> None:
    assert players(text) == named


def test_spans_point_at_the_words() -> None:
    text = "so Okafor's dink, and lindqvist"
    assert [text[slice(*one.span)] for one in mentions_of(text, EVENING)] == [
        "Okafor's",
        "lindqvist",
    ]


@pytest.mark.parametrize(
    ("text", "is_named"),
    [
        ("will he lob", False),
        ("I will lob Will", True),
        ("note will: lefty", True),
        ("WILL THEY LOB", False),
    ],
)
def test_a_name_that_is_a_common_word_must_be_written_as_a_name(text: str, is_named: bool) -> None:
    named = [one for one in mentions_of(text, with_player("Will Fenn")) if not one.pronoun]
    assert bool(named) is is_named


def test_alike_names_are_ambiguous_until_one_of_them_is_on_court() -> None:
    view = with_player("Anna Ruis")
    (alike,) = mentions_of("ana r poaches", view)
    assert (alike.certainty, alike.players) == (Certainty.AMBIGUOUS, (RUIZ, PlayerId(99)))
    (settled,) = mentions_of("ana r poaches", replace(view, theirs=(RUIZ, HALE)))
    assert (settled.certainty, settled.players) == (Certainty.SURE, (RUIZ,))


def test_a_name_that_is_clearly_meant_is_not_that_of_whoever_is_on_court() -> None:
    """`van the mere` comes near Mira Vance only by its beginning."""
    (meant,) = mentions_of("van the mere is slow", replace(EVENING, theirs=(OKAFOR, LINDQVIST)))
    assert meant.players == (PlayerId(11),)


def test_the_one_on_court_is_meant_by_a_name_that_two_are_called_by() -> None:
    view = with_player("Svea Lindquist")
    (written,) = mentions_of("lindquist poaches", view)
    assert (written.certainty, written.players) == (Certainty.SURE, (PlayerId(99),))
    (heard,) = mentions_of("lindkvist poaches", replace(view, theirs=(LINDQVIST, HALE)))
    assert (heard.certainty, heard.players) == (Certainty.SURE, (LINDQVIST,))


def test_a_surname_spelt_as_another_than_the_one_on_court_is_asked_about() -> None:
    """A Janssen is no Jansen: a slip of the one on court is as likely, so neither goes silently."""
    view = replace(with_player("Svea Lindquist"), theirs=(LINDQVIST, HALE))
    for text in ("lindquist poaches", "lindquists backhand is weak", "what about lindquist"):
        (asked,) = mentions_of(text, view)
        assert (asked.certainty, set(asked.players)) == (
            Certainty.AMBIGUOUS,
            {LINDQVIST, PlayerId(99)},
        )
    (spoken_of,) = mentions_of("lindquist poaches", replace(view, focus=(PlayerId(99),)))
    assert (spoken_of.certainty, spoken_of.players) == (Certainty.SURE, (PlayerId(99),))


def test_an_unknown_name_is_nobody() -> None:
    (unknown,) = mentions_of("note Petrov: lefty", EVENING)
    assert (unknown.typed, unknown.certainty) == ("Petrov", Certainty.NOBODY)


@pytest.mark.parametrize(
    ("text", "typed"),
    [
        ("kimur bangs", "kimur"),
        ("castellano is a lefty and zorblatt poaches", "zorblatt"),
        ("priya never comes in", "priya"),
        ("pettersens backhand is trash lol", "pettersen"),
        ("where do I dink Petrov's backhand", "Petrov"),
        ("where do we dink farkas", "farkas"),
        ("who returns when I serve to farkas", "farkas"),
        ("keogh bh weak under pace", "keogh"),
        ("keogh fh good when he is set", "keogh"),
        ("keogh bh dink pops up", "keogh"),
        ("keogh drive weak", "keogh"),
    ],
)
def test_a_word_where_a_name_stands_is_an_unknown_name(text: str, typed: str) -> None:
    unknown = [one for one in mentions_of(text, EVENING) if one.certainty is Certainty.NOBODY]
    assert [one.typed for one in unknown] == [typed]


def test_a_longer_first_name_is_not_the_shorter_one() -> None:
    (tomas,) = mentions_of("tomas is lefty", EVENING)
    assert (tomas.certainty, tomas.players[:1]) == (Certainty.NOBODY, (TOM,))


def test_nobody_far_off_is_offered_as_the_nearest() -> None:
    (weber,) = mentions_of("weber is lefty", EVENING)
    assert (weber.certainty, weber.players) == (Certainty.NOBODY, ())


@pytest.mark.parametrize(
    "text",
    [
        "goes to pieces",
        "dink to her backhnd",
        "where do i aim it to middel",
        "do I dink crosscourt",
        "on teh line",
        "Rückhand ist schwach",
        "seine Rückhand ist schwach, Aufschlag gut",
        "la devolución es floja",
        "bachand is weak",
        "they've got the serve",
        "ref calls everything",
        "dog is barking",
        "my phone is dead, wifi is down",
        "ball three meets somebody on the move",
        "count backwards in sevens",
        "serve bh weak under pace",
        "sunlight bh weak",
        "rally fh good",
        "righty fh good",
        "bh weak under pace",
        "backahnd dink weak",
    ],
)
def test_an_odd_word_is_no_name(text: str) -> None:
    assert [one for one in mentions_of(text, EVENING) if not one.pronoun] == []


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("they bang everything", (OKAFOR, LINDQVIST)),
        ("what about him", (OKAFOR,)),
        ("my partner is pulled wide", (TOM,)),
        ("okafor's partner lobs", (OKAFOR, LINDQVIST)),
        ("lindqvist dinks and his partner poaches", (LINDQVIST, LINDQVIST, OKAFOR)),
    ],
)
def test_pronouns_follow_the_chat(text: str, meant: tuple[PlayerId, ...]) -> None:
    found: list[Mention] = list(mentions_of(text, MATCH))
    assert tuple(player for one in found for player in one.players) == meant


def test_a_pronoun_without_anybody_is_left_out() -> None:
    assert mentions_of("where do I dink to him", EVENING) == ()


@pytest.mark.parametrize("hand", ["LH", "rh"])
def test_a_hand_in_two_letters_is_no_part_of_the_name(hand: str) -> None:
    [one] = mentions_of(f"okafor {hand}, odd side", EVENING)
    assert one.span == (0, len("okafor"))


@pytest.mark.parametrize("doing", ["watching", "scouting", "playing", "facing"])
def test_what_we_do_to_somebody_is_no_part_of_their_name(doing: str) -> None:
    """ "Watching Brandt" sounded like Nguyen-Brandt."""
    [one] = mentions_of(f"{doing} brandt", EVENING)
    assert (one.typed, one.players) == ("brandt", (PlayerId(7),))


@pytest.mark.parametrize("said", ["cast whitlow misses everything", "cast Whitlow is a lefty"])
def test_a_strangers_first_name_is_nobody_cut_short(demo: Talk, said: str) -> None:
    before = demo.claims("Marco Castellano")
    assert demo.say(said).startswith("No cast ")
    assert demo.claims("Marco Castellano") == before


@pytest.mark.parametrize(
    "said",
    [
        "where do i serve Torvald Lunde",
        "where do i serve torvald lunde",
        "where do i serve Torvald Lunde when its windy",
        "does Torvald Lunde poach",
        "i think Torvald Lunde is a lefty",
    ],
)
def test_a_full_name_is_one_though_it_ends_like_a_word_of_play(said: str) -> None:
    """A lunge is a word of play; a Lunde is somebody."""
    assert [one.typed.lower() for one in mentions_of(said, EVENING)] == ["torvald lunde"]


@pytest.mark.parametrize("said", ["kimur bangz", "note kimur bangz", "kimur lungs at everything"])
def test_a_word_of_play_typed_wrong_ends_no_name(said: str) -> None:
    assert all(" " not in one.typed for one in mentions_of(said, EVENING))


def test_two_capitals_in_another_language_are_no_name() -> None:
    assert mentions_of("wo spiele ich den Aufschlag gegen Rückhand Spieler", EVENING) == ()
