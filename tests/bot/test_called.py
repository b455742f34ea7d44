"""Who was he is not she: the other of the pair is. Wordings: our own, no source."""

from __future__ import annotations

import pytest
from talk import Talk

from bot.chat.context import Context
from bot.chat.pronouns import calls_in
from bot.chat.said import Certainty, Mention, NoteSaid
from knowledge.vocabulary import PlayerId


@pytest.mark.parametrize("text", ["she is slow", "shes slow", "she's slow", "her feet are slow"])
def test_a_man_spoken_of_is_not_she(demo: Talk, text: str) -> None:
    demo.say("okafor bangs, he's a poacher")
    assert demo.say(text).startswith("Noted. Lindqvist: foot speed weak.")


def test_it_goes_both_ways_and_holds_for_a_while(demo: Talk) -> None:
    demo.say("lindqvist lobs, she poaches")
    assert demo.say("he hates lobs").startswith("Noted. Okafor: lob defence weak.")
    assert demo.say("she hates lobs").startswith("Noted. Lindqvist: lob defence weak.")


def test_so_it_is_beside_a_name(demo: Talk) -> None:
    demo.say("okafor lobs, he poaches")
    demo.say("okafor bangs and she is slow")
    assert demo.heard is not None
    assert isinstance(demo.heard.understood, NoteSaid)
    she = [one for one in demo.heard.understood.mentions if one.typed == "she"]
    assert [one.players for one in she] == [(demo.player("Lindqvist"),)]


def test_nobody_called_anything_is_whoever_was_named_last(demo: Talk) -> None:
    demo.say("okafor lobs a lot")
    assert demo.say("she hates lobs").startswith("Noted. Okafor: lob defence weak.")


def test_the_memory_survives_and_knows_only_players_of_the_book() -> None:
    one, other = PlayerId(1), PlayerId(2)
    kept = Context(called=((one, "he"), (other, "she")))
    assert Context.from_json(kept.to_json()) == kept
    assert kept.among({other}).called == ((other, "she"),)


@pytest.mark.parametrize(("typed", "call"), [("He's", "he"), ("she’s", "she"), ("hers", "she")])
def test_every_form_of_the_word_calls(typed: str, call: str) -> None:
    player = PlayerId(3)
    one = Mention(
        typed=typed, span=(0, 4), certainty=Certainty.SURE, players=(player,), pronoun=True
    )
    assert calls_in([one]) == {player: call}


@pytest.fixture
def mixed(fresh: Talk) -> Talk:
    """A mixed pair on court, of whom nobody was spoken of yet."""
    fresh.say("next glenda pruitt and walt hoskins")
    fresh.press(fresh.buttons[0].payload)
    return fresh


def test_a_first_name_says_who_she_is(mixed: Talk) -> None:
    mixed.say("walt serves hard and glenda is slow")
    mixed.say("where do I return walts serve")
    assert mixed.say("she pops it up when you hit at her").startswith("Noted. Pruitt:")
    assert mixed.say("he is tall").startswith("Noted. Hoskins: tall.")


@pytest.mark.parametrize(
    ("text", "noted"),
    [
        ("he's tall", "Hoskins: tall"),
        ("she is slow", "Pruitt: foot speed weak"),
        ("the tall lady is a lefty", "Pruitt: tall, left-handed"),
        ("the husband is a lefty", "Hoskins: left-handed"),
        ("the woman has a weak backhand", "Pruitt: backhand dink weak"),
        ("that guy is tall", "Hoskins: tall"),
    ],
)
def test_one_of_a_mixed_pair_needs_no_name(mixed: Talk, text: str, noted: str) -> None:
    assert mixed.say(text).startswith(f"Noted. {noted}.")


def test_the_shot_is_aimed_at_whom_the_word_means(mixed: Talk) -> None:
    assert mixed.say("serve her").startswith("Serve Pruitt")
    assert mixed.say("dink him").startswith("Dink Hoskins")
    assert mixed.say("where do I dink the lady").startswith("Dink Pruitt")


def test_two_of_one_kind_are_told_apart_by_who_was_named(fresh: Talk) -> None:
    fresh.say("next glenda pruitt and rosalind tack")
    fresh.press(fresh.buttons[0].payload)
    fresh.say("rosalind is slow")
    assert fresh.say("she is tall").startswith("Noted. Tack: tall.")


def test_her_husband_is_the_other_of_the_pair(mixed: Talk) -> None:
    reply = mixed.say("glenda is slow and her husband poaches")
    assert "Pruitt: foot speed weak" in reply
    assert "Hoskins: poaching often" in reply


@pytest.mark.parametrize(
    ("text", "whose"), [("her husband is slow", "Hoskins"), ("his partner is slow", "Pruitt")]
)
def test_a_partner_without_a_name_is_offered_at_least(mixed: Talk, text: str, whose: str) -> None:
    said = mixed.say(text)
    labels = [button.label for button in mixed.buttons]
    assert f"{whose}: foot speed weak" in " ".join([said, *labels])


def test_the_wife_and_i_is_nobody_of_theirs(mixed: Talk) -> None:
    assert "Noted. Pruitt" not in mixed.say("the wife and i are slow")
