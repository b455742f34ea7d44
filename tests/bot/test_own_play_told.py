"""How whoever writes plays is kept; what fails just now is asked about. Wordings: our own."""

from __future__ import annotations

from dataclasses import replace

from voices import IN_TALK

from bot.chat.said import AgreementSaid, NoteSaid, Understood
from bot.chat.understand import understand

MIRA_WRITES = replace(IN_TALK, asker=IN_TALK.ours[0])


def read(text: str) -> tuple[Understood, ...]:
    return understand(text, chat=MIRA_WRITES)


def test_how_we_play_is_a_note_of_us() -> None:
    mira, tom = IN_TALK.ours
    told = {
        "my 3rd is a drive": "third_shot_drop rarely",
        "my backhand dink is weak": "backhand_dink weakness",
        "i miss 1 in 20 serves": "serve weakness",
    }
    for text, claim in told.items():
        (note,) = read(text)
        assert isinstance(note, NoteSaid), text
        assert [(one.player, f"{one.trait} {one.value}") for one in note.claims] == [(mira, claim)]
    (note,) = read("tom has a soft 3rd, mine is a drive")
    assert isinstance(note, NoteSaid)
    assert {player for one in note.mentions for player in one.players} == {tom}


def test_what_fails_now_or_asks_is_no_habit_of_ours() -> None:
    asked = (
        "my drops are floating",
        "my backhand dink is weak, what do i do",
        "my serve is off today",
        "my serve is out",
        "i missed 3 of 4 drops",
        "tom keeps poaching my balls",
    )
    for text in asked:
        assert not any(isinstance(one, NoteSaid) and one.claims for one in read(text)), text


def test_when_we_stack_is_agreed_by_telling_it() -> None:
    for text in ("we stack on tom's serve only", "we only stack when tom serves"):
        assert isinstance(read(text)[-1], AgreementSaid), text
    for text in ("should we stack on serve", "we stack on serve or not", "we stack already"):
        assert not any(isinstance(one, AgreementSaid) for one in read(text)), text
