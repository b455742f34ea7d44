"""Diagnoses, injuries and private life are handed back and stored nowhere; play is kept."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest
from note_scores import LATER, LATER_VOICES
from sqlalchemy import select
from talk import Talk
from voices import CASES, OPEN_VOICES, VOICES

from bot.chat.private_words import is_private, playing_part
from bot.chat.wording import wording
from bot.post import IncomingKind
from knowledge.cautions import DEFERS
from scouting_db import tables
from scouting_db.base import Base

LABELLED = tomllib.loads((CASES / "private_words.toml").read_text(encoding="utf-8"))

FALSE_ALARMS_AT_MOST = 2
"""In 697 notes of ten writers who knew nothing of the list; none today."""

TOLD_OF_BODIES = ("brace", "sleeve", "new hip")
"""What the few notes that are flagged do tell of."""


def test_there_are_enough_cases() -> None:
    assert len(LABELLED["hand_back"]) >= 40
    assert len(LABELLED["keep"]) >= 40


@pytest.mark.parametrize("said", LABELLED["hand_back"])
def test_what_is_private_is_found(said: str) -> None:
    assert is_private(said)


@pytest.mark.parametrize("said", LABELLED["keep"])
def test_words_about_play_are_no_false_alarm(said: str) -> None:
    assert not is_private(said)


@pytest.mark.parametrize("case", LABELLED["keep_part"], ids=lambda case: case["said"][:30])
def test_the_part_about_play_is_told_apart(case: dict[str, str]) -> None:
    assert is_private(case["said"])
    assert playing_part(case["said"]) == case["kept"]


def open_notes() -> list[str]:
    paths = [VOICES / f"{name}.notes.jsonl" for name in OPEN_VOICES]
    paths += [LATER / f"{name}.notes.jsonl" for name in LATER_VOICES]
    lines = [line for path in paths for line in Path(path).read_text(encoding="utf-8").splitlines()]
    return [json.loads(line)["text"] for line in lines if line.strip()]


def test_open_voices_hear_hardly_a_false_alarm() -> None:
    notes = open_notes()
    assert len(notes) > 650
    flagged = [note for note in notes if is_private(note)]
    false = [note for note in flagged if not any(word in note for word in TOLD_OF_BODIES)]
    assert len(false) <= FALSE_ALARMS_AT_MOST, false


def everything_in(talk: Talk) -> str:
    """All that the database holds, but for words on their way out and the people's names."""
    with talk.store.reading() as connection:
        return "\n".join(
            repr(row)
            for table in Base.metadata.sorted_tables
            for row in connection.execute(select(table))
        )


SECRETS = {
    "okafor is divorcing": "divorcing",
    "note okafor has a torn acl": "torn acl",
    "hale is on antidepressants": "antidepressants",
    "ruiz is slow coming forward, she had knee surgery": "surgery",
    "our point, okafor's knee gave out": "knee gave out",
    "we agreed forehand takes the middle because tom has a bad shoulder": "bad shoulder",
    "forwarded: lindqvist is cheating on his wife": "cheating",
}


@pytest.mark.parametrize("said", SECRETS)
def test_it_is_stored_nowhere(demo: Talk, said: str) -> None:
    demo.say("we serve first")
    demo.say(said)
    assert SECRETS[said] not in everything_in(demo)


@pytest.mark.parametrize(
    "said", ["okafor is divorcing", "okafor has a torn acl", "hale is on antidepressants"]
)
def test_it_is_handed_back_politely(demo: Talk, said: str) -> None:
    before = demo.stored()
    reply = demo.say(said)
    assert wording("note.body") in reply
    assert said in reply
    assert demo.stored() == before


def test_a_private_life_is_not_sent_to_the_medical_staff(demo: Talk) -> None:
    assert "medical" not in demo.say("okafor is divorcing")


def test_the_part_about_play_is_kept_and_said_so(demo: Talk) -> None:
    reply = demo.say("okafor is slow to his left since he protects his knee")
    assert reply.startswith("Noted. Okafor: ")
    assert wording("note.only_play") in reply
    assert demo.notes()[0].text == "okafor is slow to his left"


@pytest.mark.parametrize(
    ("before", "said", "kept"),
    [
        (
            "hale is quick",
            "okafor knee is strapped so hes slow to his left",
            "Okafor: so hes slow to his left",
        ),
        (
            "report on mira",
            "okafor protects his knee so hes slow to his left",
            "Okafor: so hes slow to his left",
        ),
        (
            "report on mira",
            "castellano had surgery so shes slow to her left",
            "Castellano: so shes slow to her left",
        ),
        (
            "hale is quick",
            "okafor and lindqvist are both hungover so theyre slow",
            "Okafor and Lindqvist: so theyre slow",
        ),
        (
            "hale is quick",
            "okafors knee is strapped so slow to the left",
            "Okafor: so slow to the left",
        ),
        (
            "okafor is quick",
            "hes got a bad knee so hes slow to his left",
            "so hes slow to his left",
        ),
    ],
)
def test_the_part_that_is_kept_keeps_its_player(
    demo: Talk, before: str, said: str, kept: str
) -> None:
    demo.say(before)
    reply = demo.say(said)
    assert wording("note.only_play") in reply
    [note] = [one for one in demo.notes() if one.text == kept]
    named = "Castellano" if "castellano" in said else "Okafor"
    players = {one.player for one in note.observations}
    assert demo.player(named) in players
    assert players <= {demo.player(named), demo.player("Lindqvist")}


def test_whose_part_it_is_may_stay_open(demo: Talk) -> None:
    """Nobody spoken of before takes what is told of one of two of a name."""
    demo.say("hale is quick")
    before = demo.stored()
    demo.say("ruiz knee is strapped so shes slow to her left")
    assert demo.stored() == before


def test_an_edit_and_a_correction_bring_nothing_in(demo: Talk) -> None:
    demo.say("okafor is tall", external_message_id=9)
    number, before = demo.reply_number, demo.stored()
    demo.send(IncomingKind.EDIT, text="okafor is tall, divorced", external_message_id=9)
    demo.say("he has a torn acl", reply_to=number)
    assert demo.stored() == before
    for secret in ("divorced", "torn acl"):
        assert secret not in everything_in(demo)


def test_the_end_of_a_long_note_is_looked_through_too(demo: Talk) -> None:
    said = "okafor lobs a lot. " + "he hits another ball deep and waits. " * 60 + "he is divorcing"
    demo.say(said)
    assert "divorcing" not in everything_in(demo)


@pytest.mark.parametrize(
    "said",
    [
        "my elbow hurts on drives, what do i do?",
        "my knee is sore, can i play?",
        "cramps in my calf",
    ],
)
def test_ones_own_pain_is_still_answered_with_cautions(demo: Talk, said: str) -> None:
    before = demo.stored()
    reply = demo.say(said)
    assert any(caution in reply for caution in (DEFERS, "medical", "don't play on it"))
    assert wording("note.body") not in reply
    assert demo.stored() == before


def test_words_of_a_failed_turn_are_not_kept_as_a_note_either(
    demo: Talk, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_: object, **__: object) -> None:
        raise RuntimeError("a fault put in")

    monkeypatch.setattr("bot.chat.turn.understand", broken)
    for _ in range(3):
        with pytest.raises(AssertionError):
            demo.say("okafor is divorcing")
    with demo.store.reading() as connection:
        notes = connection.execute(select(tables.note.c.text)).scalars().all()
    assert not [text for text in notes if "divorcing" in text]


@pytest.mark.parametrize(
    "said",
    [
        "lindqvist is on pain killers his shoulder is shot so overheads",
        "okafor takes painkillers, his knee is shot",
        "okafors shoulder is shot so overheads",
    ],
)
def test_words_of_a_body_are_no_rally(demo: Talk, said: str) -> None:
    """A killer and a shot are a winner only beside words that are nobody's health."""
    demo.say("next: okafor and lindqvist")
    demo.say("we serve first")
    before = demo.stored()
    assert wording("note.body") in demo.say(said)
    assert demo.stored() == before


@pytest.mark.parametrize(
    ("said", "scored"),
    [
        ("okafor hurt his ankle and missed it", "1-0-2"),
        ("our point, okafor is limping", "1-0-2"),
        ("lost it, his shoulder is shot but he smashed it", "0-0-1"),
    ],
)
def test_a_rally_told_beside_them_still_counts(demo: Talk, said: str, scored: str) -> None:
    demo.say("next: okafor and lindqvist")
    demo.say("we serve first")
    assert demo.say(said).startswith(scored)


def test_what_may_be_a_trait_is_kept_of_a_sentence_with_an_injury(demo: Talk) -> None:
    reply = demo.say(
        "I heard from another coach that okafor has the elbow taped and he does not like the"
        " backhand over the head"
    )
    assert wording("note.only_play") in reply
    assert "overhead weak?" in [one.label for one in demo.buttons]
    assert "elbow" not in demo.notes()[0].text
    assert "backhand over the head" in demo.notes()[0].text
    assert "Leave the lob" not in reply
