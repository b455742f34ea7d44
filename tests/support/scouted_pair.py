"""A pair much written about: thousands of observations and logged rallies in the demo book."""

from __future__ import annotations

import random
from collections.abc import Iterator
from typing import Any

from sqlalchemy import Connection, insert
from talk import Talk

from knowledge.vocabulary import TRAITS, Rate, Seen, TraitKind
from scouting_db import tables
from scouting_db.values import Micros

DAY = 86_400_000_000
RALLIES_A_MATCH = 100
CLAIMS_A_NOTE = 4
FIRST_NUMBER = 1_000_000_000
"""Far above every number the demo book has given."""

_SKILLS = [trait for trait, row in TRAITS.items() if row.kind is not TraitKind.FACT]


def scout(talk: Talk, names: tuple[str, str], *, observations: int, rallies: int) -> None:
    """Write so many observations and finished matches' rallies of that pair into the book."""
    players = [talk.player(name) for name in names]
    ours = [talk.player(name) for name in ("Mira", "Tom")]
    with talk.book() as book:
        pairs = {row.players: row.pair for row in book.pairs()}
        their, our = pairs[tuple(sorted(players))], pairs[tuple(sorted(ours))]  # type: ignore[index]
        connection, number = book._connection, book._book
        book.set_about(name=book.about().name, zone=book.about().zone)
    rng = random.Random(5)
    with talk.store.writing() as connection:
        write_notes(connection, number, players, observations, talk.now, rng)
        for match in range(rallies // RALLIES_A_MATCH):
            _match(connection, number, match, (our, their), [*players, *ours], talk.now, rng)


def write_notes(
    connection: Connection, book: int, players: list[int], count: int, now: Micros, rng: Any
) -> None:
    """So many claims about these players, four to a note, of the last two years."""
    notes, claims = [], []
    for place in range(count // CLAIMS_A_NOTE):
        note = FIRST_NUMBER + place
        notes.append(
            {
                "book_id": book,
                "note_id": note,
                "author": None,
                "at": now - rng.randrange(700) * DAY,
                "text": "moves well, pops up backhands",
                "unread": False,
            }
        )
        for n in range(1, CLAIMS_A_NOTE + 1):
            trait = rng.choice(_SKILLS)
            claims.append(
                {
                    "book_id": book,
                    "note_id": note,
                    "n": n,
                    "player_id": rng.choice(players),
                    "trait": trait.value,
                    "value": rng.choice(TRAITS[trait].values).value,
                    "weight": rng.choice([0.5, 1.0, 1.5]),
                    "seen": rng.choice(list(Seen)).value,
                    "origin": "parsed",
                    "parser": 1,
                }
            )
    connection.execute(insert(tables.note), notes)
    connection.execute(insert(tables.observation), claims)


def _match(
    connection: Connection,
    book: int,
    place: int,
    pairs: tuple[int, int],
    players: list[int],
    now: Micros,
    rng: Any,
) -> None:
    match, made_at = FIRST_NUMBER + place, now - (1 + place) * DAY
    connection.execute(
        insert(tables.match),
        {
            "book_id": book,
            "match_id": match,
            "our_pair": pairs[0],
            "their_pair": pairs[1],
            "format": {},
            "state": "over",
            "made_at": made_at,
        },
    )
    lines = [
        {
            "book_id": book,
            "match_id": match,
            "n": n,
            "game_no": 1,
            "kind": "rally",
            "at": made_at,
            "won_by": rng.choice(["us", "them"]),
            "we_serve": True if n == 1 else None,
        }
        for n in range(1, RALLIES_A_MATCH + 1)
    ]
    connection.execute(insert(tables.entry), lines)
    connection.execute(
        insert(tables.rally_rate),
        [
            {"book_id": book, "match_id": match, "n": n, "player_id": player, **rate}
            for n in range(1, RALLIES_A_MATCH + 1)
            for player, rate in _rates_of_a_rally(players, rng)
        ],
    )


def _rates_of_a_rally(players: list[int], rng: Any) -> Iterator[tuple[int, dict[str, Any]]]:
    """Who served and returned, and sometimes what came of the third."""
    side = rng.choice([0, 2])
    server, returner = players[side + rng.randrange(2)], players[2 - side + rng.randrange(2)]
    yield server, {"rate": Rate.SERVE_IN.value, "made": rng.random() < 0.95}
    yield returner, {"rate": Rate.RETURN_IN.value, "made": rng.random() < 0.9}
    if rng.random() < 0.5:
        yield server, {"rate": Rate.THIRD_FORWARD.value, "made": rng.random() < 0.6}
