"""Talks of a coach with an empty book: a pair of theirs, opponents by one name, a match that is on.

All people are invented. What they said to come that far is said once to a process, then copied.
"""

from __future__ import annotations

from functools import cache

from talk import Talk, copy_of

from scouting_db.session import open_store


def new_coach() -> Talk:
    """The coach of Ilka and Noor, nobody else in the book."""
    return copy_of(_new_coach())


def coach_with_opponents() -> Talk:
    """The same with Petra, Joost, Saskia and Wim in the book."""
    return copy_of(_coach_with_opponents())


def coach_at_a_match() -> Talk:
    """The same, next against Petra and Joost; nobody has said yet who serves."""
    return copy_of(_coach_at_a_match())


@cache
def _new_coach() -> Talk:
    talk = Talk(store=open_store("sqlite://"))
    talk.say("im coaching ilka and noor")
    return talk


@cache
def _coach_with_opponents() -> Talk:
    talk = new_coach()
    for name in ("petra", "joost", "saskia", "wim"):
        talk.say(f"new opponent {name}")
    return talk


@cache
def _coach_at_a_match() -> Talk:
    talk = coach_with_opponents()
    talk.say("next petra and joost")
    return talk
