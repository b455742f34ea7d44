"""A demo book of an invented event, so that the tool can be tried before anything is noted."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from importlib.resources import files
from typing import Any

from bot.channels.console import CHAT, USER
from bot.chat.answers.notes import PARSER_VERSION
from bot.chat.context import Context
from bot.chat.match_log import format_to_json
from bot.demo_book.note_readings import NoteReader, as_kept
from knowledge.game import GameFormat
from knowledge.vocabulary import AgreementKey, Mode, PlayerId, Side
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.session import Store, open_store
from scouting_db.values import EntryKind, MatchState, Micros, PairId, Winner

DAY_MICROS = 86_400_000_000
HOUR_MICROS = 3_600_000_000
RALLY_MICROS = 40_000_000
"""A rally and the walk back take about forty seconds."""


def demo_store(*, now: Micros, read: NoteReader = as_kept) -> Store:
    """A fresh store in memory that holds the demo book, as of `now`, for the console's user."""
    store = open_store("sqlite://")
    fill(store, now=now, read=read)
    return store


def fill(store: Store, *, now: Micros, read: NoteReader = as_kept) -> None:
    """Write the demo book as of `now` into a store; the console's chat is set up with it."""
    data = tomllib.loads(files("bot.demo_book").joinpath("book.toml").read_text(encoding="utf-8"))
    with store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("console", "console")
        person = directory.person(account, USER, "You")
        chat = directory.chat(account, CHAT)
        book_id = directory.create_book(data["event"], owner=person)
        directory.use_book(chat.chat, book_id)

        def book(at: int, by: str | None = None) -> Book:
            author = person if by is None else directory.person(account, f"demo {by}", by)
            return Book(connection, book_id, person=author, now=Micros(at))

        players = _players(book(now - 40 * DAY_MICROS), data)
        pairs = _pairs(book(now - 39 * DAY_MICROS), data, players)
        _notes(book, data, now, read)
        _old_matches(book, data, pairs, now)
        context = _next_match(book(now), data, players, pairs, now)
        directory.save_context(chat.chat, context.to_json())


def _players(book: Book, data: dict[str, Any]) -> dict[str, PlayerId]:
    players = {}
    for row in data["player"]:
        player = book.add_player(row["name"], ours=row.get("ours", False))
        for alias in row.get("aliases", ()):
            book.add_alias(player, alias)
        players[row["name"]] = player
    return players


def _pairs(
    book: Book, data: dict[str, Any], players: dict[str, PlayerId]
) -> dict[tuple[str, str], PairId]:
    named = [data["pairs"]["ours"], *data["pairs"]["theirs"]]
    pairs = {(a, b): book.pair_of(players[a], players[b]) for a, b in named}
    ours = pairs[tuple(data["pairs"]["ours"])]
    for row in data["agreement"]:
        book.agree(ours, AgreementKey(row["key"]), row["value"], row["words"])
    return pairs


def _notes(book: Any, data: dict[str, Any], now: int, read: NoteReader) -> None:
    for row in data["note"]:
        at = now - row["days"] * DAY_MICROS
        diary = book(at, row["by"])
        said = read(row["text"], diary.players())
        diary.add_note(row["text"], said, parser=PARSER_VERSION, at=Micros(at))


def _old_matches(
    book: Any, data: dict[str, Any], pairs: dict[tuple[str, str], PairId], now: int
) -> None:
    for row in data["match"]:
        at = now - row["days"] * DAY_MICROS
        log = book(at)
        match = log.announce(
            our_pair=pairs[tuple(data["pairs"]["ours"])],
            their_pair=pairs[tuple(row["theirs"])],
            format=format_to_json(GameFormat(best_of=row["best_of"])),
            starts_at=Micros(at),
            state=MatchState.OVER,
        )
        log.append(match, EntryKind.GAME, we_serve=row["we_serve"])
        for place, letter in enumerate(row["rallies"]):
            book(at + place * RALLY_MICROS).append(
                match, EntryKind.RALLY, won_by=Winner.US if letter == "u" else Winner.THEM
            )


def _next_match(
    book: Book,
    data: dict[str, Any],
    players: dict[str, PlayerId],
    pairs: dict[tuple[str, str], PairId],
    now: int,
) -> Context:
    ours = tuple(players[name] for name in data["pairs"]["ours"])
    theirs = tuple(players[name] for name in data["next"]["theirs"])
    match = book.announce(
        our_pair=pairs[tuple(data["pairs"]["ours"])],
        their_pair=pairs[tuple(data["next"]["theirs"])],
        format=format_to_json(GameFormat()),
        starts_at=Micros(now + data["next"]["in_hours"] * HOUR_MICROS),
        court=data["next"]["court"],
    )
    context = Context(match=match, ours=ours, theirs=theirs, focus=theirs, mode=Mode.OPEN)
    for name, side in data["sides"].items():
        context = context.with_side(players[name], Side(side))
    return replace(context, asker=players[data["pairs"]["ours"][0]])
