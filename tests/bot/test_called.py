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
