"""Who may do what: everything that is said or tapped reads, writes, or sees to its rights itself.

A word that is missing here may only be used by editors: forgetting one denies, it never lets in.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.payload import Verb
from bot.chat.said import (
    BookSaid,
    BookVerb,
    CompareAsked,
    ListAsked,
    PlanSaid,
    PoolAsked,
    Question,
    ReminderSaid,
    ReminderVerb,
    RetellSaid,
    TimeoutsAsked,
    Unclear,
    Understood,
    WhySaid,
)

READING_TAPS = frozenset(
    {
        Verb.ASK,
        Verb.WHY,
        Verb.MIX,
        Verb.PICK,
        Verb.PLAN,
        Verb.EXAMPLE,
        Verb.LATER,
        Verb.PAGE,
    }
)
"""What anybody in a group may press; every other tap writes to the book."""

OWN_TAPS = frozenset({Verb.INVITE, Verb.MEMBER, Verb.BOOK, Verb.FORGET})
"""Of members and books: each looks up what who presses may do with the book it speaks of."""

READING_VERBS = frozenset(
    {
        BookVerb.START,
        BookVerb.HELP,
        BookVerb.MANY_NOTES,
        BookVerb.WHO,
        BookVerb.OUR_PAIRS,
        BookVerb.SHOW_NOTES,
        BookVerb.SCORE,
        BookVerb.NEXT,
        BookVerb.WHEN,
        BookVerb.REVIEW,
        BookVerb.LAST_MEETING,
        BookVerb.DAY_RECORD,
        BookVerb.PRIVACY,
    }
)

OWN_VERBS = frozenset(
    {
        BookVerb.SHARE,
        BookVerb.JOIN,
        BookVerb.MEMBERS,
        BookVerb.REMOVE_MEMBER,
        BookVerb.LEAVE,
        BookVerb.BOOKS,
        BookVerb.BIND,
        BookVerb.UNBIND,
        BookVerb.FORGET_ME,
    }
)
"""The same of what is said."""


_READING = (
    Question,
    WhySaid,
    PlanSaid,
    RetellSaid,
    TimeoutsAsked,
    PoolAsked,
    ListAsked,
    CompareAsked,
    Unclear,
)
"""What is said that only reads."""


def may_press(verb: Verb | None, *, may_write: bool) -> bool:
    """Whether the tap may be handled at all."""
    return may_write or verb in READING_TAPS or verb in OWN_TAPS


def may_say(understood: Understood, *, may_write: bool) -> bool:
    """Whether it may be acted upon at all."""
    return may_write or _only_reads(understood)


def _only_reads(understood: Understood) -> bool:
    """What anybody in a group may say."""
    if isinstance(understood, BookSaid):
        return understood.verb in READING_VERBS | OWN_VERBS
    if isinstance(understood, ReminderSaid):
        return understood.verb is ReminderVerb.LIST
    return isinstance(understood, _READING)


def for_reader(understood: Understood) -> Understood:
    """The same from somebody who may only read: numbers of theirs hold for the question alone."""
    if not isinstance(understood, Question) or understood.slots.rates is None:
        return understood
    rates = replace(understood.slots.rates, holds=False)
    return replace(understood, slots=replace(understood.slots, rates=rates))
