"""Whatever may happen to a book between two questions: by messages, and behind the chat's back."""

from __future__ import annotations

import random
from collections.abc import Callable

from sqlalchemy import select
from talk import Talk

from knowledge.vocabulary import TRAITS, Rate, Seen, Topic, Trait
from scouting_db.tables import player
from scouting_db.values import (
    ChoiceRow,
    EntryKind,
    MatchState,
    Micros,
    NewObservation,
    RateRow,
    Winner,
)

SAID = (
    "okafor pops up backhand dinks",
    "lindqvist is a lefty",
    "okafor is not a lefty",
    "hale: slow feet, ruiz crashes the net",
    "tom's lob is strong",
    "undo",
    "undo",
    "redo",
    "our point",
    "their rally",
    "our point, okafor missed the return",
    "lost it, my dink popped up",
    "won it, speed-up at okafor's hip",
    "our point, lindqvist popped up the third",
    "no, it was hale",
    "10-9-1",
    "we won 11-9",
    "next: okafor and lindqvist",
    "next: ruiz and hale, to 11",
    "we serve",
    "timeout",
    "mira and tom: forehand takes the middle",
    "0:42 lost it, my dink popped up\n1:15 ours, okafor missed the return\n1:40 water",
    "pool: okafor/lindqvist, ruiz/hale; one game to 15",
    "next",
    "won 15-11",
    "i'm coaching tom and mira",
    "plan for nowak and petrov against okafor and lindqvist",
    "now mira and tom",
    "where do i dink okafor",
    "where do i attack okafor",
    "what are our chances",
    "okafor is weak off the bounce, where do i serve to him",
)
"""What somebody may write between two questions; some of it means nothing where it stands."""


def add_note(talk: Talk, rng: random.Random) -> None:
    trait = rng.choice([*TRAITS])
    with talk.book() as book:
        who = rng.choice(book.players()).player
        claim = NewObservation(
            player=who,
            trait=trait,
            value=rng.choice(TRAITS[trait].values),
            weight=rng.choice([0.5, 1.0]),
            seen=rng.choice([*Seen]),
        )
        book.add_note(
            "so it is", [claim] * rng.randint(1, 2), at=Micros(talk.now - rng.choice([0, 10**14]))
        )


def change_note(talk: Talk, rng: random.Random) -> None:
    """Deleted, put back, or said to mean something else, about somebody else even."""
    with talk.book() as book:
        note = rng.choice(book.recent_notes(limit=50))
        change = rng.randrange(3)
        if change == 0:
            book.delete_note(note.note)
        elif change == 1:
            book.delete_note(note.note)
            book.restore_note(note.note)
        else:
            claim = NewObservation(
                player=rng.choice(book.players()).player,
                trait=Trait.FOOT_SPEED,
                value=rng.choice(TRAITS[Trait.FOOT_SPEED].values),
                weight=1.0,
                seen=Seen.LIVE,
            )
            book.replace_observations(note.note, [claim] * rng.randrange(2))


def change_rally(talk: Talk, rng: random.Random) -> None:
    """A rally of any match, old ones too, tagged anew, taken back, or put back."""
    with talk.book() as book:
        match = rng.choice([one.match for one in book.matches() if book.entries(one.match)])
        entry = rng.choice(book.entries(match))
        if rng.random() < 0.3:
            book.void(match, entry.n)
        elif entry.kind is EntryKind.RALLY:
            rate, made = rng.choice([*Rate]), rng.random() < 0.5
            players = rng.sample(book.players(), rng.randrange(3))
            rows = [
                RateRow(match=match, n=entry.n, player=one.player, rate=rate, made=made)
                for one in players
            ]
            book.count_rates(match, entry.n, rows)
            chosen = rng.random()
            if chosen < 0.3:
                option = rng.choice(["chest", "paddle:1"])
                book.choose(
                    ChoiceRow(match=match, n=entry.n, topic=Topic.AIM_ATTACK, option=option)
                )
            elif chosen < 0.6:
                book.drop_choices(match, entry.n)


def play_on(talk: Talk, rng: random.Random) -> None:
    """A rally of the next game of a match that was over or runs, and the match's state."""
    with talk.book() as book:
        match = rng.choice(book.matches())
        book.append(
            match.match,
            EntryKind.RALLY,
            game_no=rng.randint(1, 3),
            won_by=rng.choice([*Winner]),
            we_serve=rng.choice([None, True, False]),
        )
        book.set_state(match.match, rng.choice([*MatchState]))


def change_people(talk: Talk, rng: random.Random) -> None:
    with talk.book() as book:
        who = rng.choice([row.player for row in book.players()])
        change = rng.randrange(4)
        if change == 0:
            book.rename(who, rng.choice(["Al Okafor", "Bo Quist", "Cy Hale"]))
        elif change == 1 and len(book.players()) > 5:
            book.remove_player(who)
        elif change == 2:
            book.add_alias(who, "big one")
        else:
            book.set_ours(who, ours=rng.random() < 0.2)


def restore_somebody(talk: Talk, rng: random.Random) -> None:
    with talk.book() as book:
        numbers = select(player.c.player_id).where(player.c.book_id == book._book)
        book.restore_player(rng.choice([*book._connection.execute(numbers).scalars()]))


def set_zone(talk: Talk, rng: random.Random) -> None:
    with talk.book() as book:
        book.set_about(name="Book", zone=rng.choice(["UTC", "Pacific/Auckland"]))


def sleep(talk: Talk, rng: random.Random) -> None:
    talk.later(days=rng.choice([1, 90]))


def say(talk: Talk, rng: random.Random) -> None:
    talk.say(rng.choice(SAID))


EDITS: tuple[tuple[int, Callable[[Talk, random.Random], None]], ...] = (
    (10, say),
    (3, add_note),
    (3, change_note),
    (4, change_rally),
    (2, play_on),
    (2, change_people),
    (1, restore_somebody),
    (1, set_zone),
    (1, sleep),
)


def edit_at_random(talk: Talk, rng: random.Random) -> str:
    """One of them, and its name."""
    weights, edits = zip(*EDITS, strict=True)
    edit = rng.choices(edits, weights)[0]
    edit(talk, rng)
    return str(edit.__name__)
