"""Talks of a coach with an empty book: a pair of theirs, opponents by one name, a match that is on.

All people are invented.
"""

from __future__ import annotations

from talk import Talk

from scouting_db.session import open_store


def new_coach() -> Talk:
    """The coach of Ilka and Noor, nobody else in the book."""
    talk = Talk(store=open_store("sqlite://"))
    talk.say("im coaching ilka and noor")
    return talk


def coach_with_opponents() -> Talk:
    """The same with Petra, Joost, Saskia and Wim in the book."""
    talk = new_coach()
    for name in ("petra", "joost", "saskia", "wim"):
        talk.say(f"new opponent {name}")
    return talk


def coach_at_a_match() -> Talk:
    """The same, next against Petra and Joost; nobody has said yet who serves."""
    talk = coach_with_opponents()
    talk.say("next petra and joost")
    return talk
