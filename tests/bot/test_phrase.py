"""The notation of lexicon phrases."""

from __future__ import annotations

import pytest

from bot.chat.phrase import PhraseBook, PhraseError
from bot.chat.private_words import _of_play, _phrases
from bot.chat.trait_lexicon import trait_phrases

SETS = {"side": "(left|right)", "slow": "(slow|late) [to]"}


def found(phrase: str, text: str) -> list[str]:
    words = text.split()
    return [" ".join(words[one.start : one.stop]) for one in book(phrase).find(words)]


def book(phrase: str) -> PhraseBook[str]:
    return PhraseBook([(phrase, "meant")], sets=SETS)


@pytest.mark.parametrize(
    ("phrase", "text", "matched"),
    [
        ("pops up", "he pops up dinks", ["pops up"]),
        ("pop up", "he pops up dinks", []),
        ("poach*", "poaches and poaching", ["poaches", "poaching"]),
        ("(slow|late) feet", "late feet", ["late feet"]),
        ("moves [very] slow", "moves slow", ["moves slow"]),
        ("moves [very] slow", "moves very slow", ["moves very slow"]),
        ("returns .. short", "returns drop really short", ["returns drop really short"]),
        ("returns .. short", "returns a b c short", []),
        ("{slow} his {side}", "late to his left", ["late to his left"]),
        ("(big [fat] (serve|lob)|ace)", "big lob then ace", ["big lob", "ace"]),
        ("a", "aa a", ["a"]),
    ],
)
def test_matches(phrase: str, text: str, matched: list[str]) -> None:
    assert found(phrase, text) == matched


@pytest.mark.parametrize("phrase", ["", "[maybe]", "(a|b", "a)", "{unknown} x", "..", "[a"])
def test_a_faulty_phrase_is_refused(phrase: str) -> None:
    with pytest.raises(PhraseError):
        book(phrase).check()


@pytest.mark.parametrize(
    "phrase", ["a|b c", "[a] b", "[a|b] [c] (d|e)", "{slow} x", "((a) b|c*) d"]
)
def test_it_is_found_by_every_word_that_it_may_begin_with(phrase: str) -> None:
    book(phrase).check()


def test_every_phrase_that_is_shipped_is_one() -> None:
    """A phrase is read when a message begins like it; here all of them are."""
    for shipped in (trait_phrases(), _phrases(), _of_play()):
        assert len(shipped.words) > 0
        shipped.check()


def test_places_are_words() -> None:
    (one,) = book("pops up").find(["well", "he", "pops", "up"])
    assert (one.start, one.stop, one.meaning) == (2, 4, "meant")


def test_spelled_words_are_known() -> None:
    assert book("{slow} (big|tall)").words >= {"slow", "late", "big", "tall", "left"}
