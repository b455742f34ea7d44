"""What a note tells of whoever types or speaks, and of nobody across the net. Wordings: our own."""

from __future__ import annotations

from talk import Talk


def told(talk: Talk, text: str) -> set[str]:
    talk.say(text)
    assert talk.heard is not None
    return {f"{one.trait} {one.value}" for one in talk.heard.trace.get("claims", ())}


def test_what_is_the_writers_or_an_age_or_no_play_is_nothing_of_theirs(demo: Talk) -> None:
    assert told(demo, "okafor never cheats i asked him") == set()
    assert told(demo, "okafor is slow he is 63 lol") == {"foot_speed weakness"}
    assert told(demo, "okafor is serving rockets im late on the bh") == {"serve strength"}
    assert told(demo, "okafors forehand breaks down when you give him pace") == {
        "counter_forehand weakness"
    }


def test_who_only_speaks_or_is_no_poacher_changes_nothing(demo: Talk) -> None:
    """A name like a player's that is not in the book is no player where it says something."""
    demo.say("neither of them poaches")
    assert [one.text.splitlines()[0] for one in demo.last[-1:]] == [
        "Noted. Okafor: poaching rarely; Lindqvist: poaching rarely."
    ]
    before = demo.notes()
    for text in ("forget what lindkivst said about lefty", "hi lindkivst here"):
        assert "I take" not in demo.say(text)
    assert demo.notes() == before
