"""Files that come in: a roster or a draw, or a whole book. First what would change, then a tap."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.notes import PARSER_VERSION
from bot.chat.context import Context
from bot.chat.file import LARGEST_BYTES, File
from bot.chat.names import find_mentions
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from bot.chat.words import words as words_of
from bot.post import Incoming
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId, Seen, Trait, Value
from scouting_db.book import Book
from scouting_db.book_document import ExchangeError, read_document
from scouting_db.csv_reading import read_table, text_of
from scouting_db.directory import Directory
from scouting_db.exchange import export_book, import_book, summary_of
from scouting_db.players_csv import players_as_csv
from scouting_db.roster_reading import Entrant, Roster, read_roster
from scouting_db.sounds import fold
from scouting_db.values import BookId, InboxId, NewObservation

SHOWN_NAMES = 6
"""New names told in a preview; more are counted."""

TABLE_WEIGHT = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plan:
    """What a roster would change: nobody known is written twice, nothing known is written over."""

    roster: Roster
    new: tuple[Entrant, ...]
    known: tuple[tuple[PlayerId, Entrant], ...]
    pairs: tuple[tuple[str, str], ...]
    hands: tuple[Entrant, ...]

    @property
    def changes_nothing(self) -> bool:
        return not (self.new or self.pairs or self.hands)


def take_file(desk: Desk, file: File) -> Reply:
    """What the file would change, and the tap that does it; nothing is written before."""
    if file.content is None:
        return Reply(text=wording("file.too_large").format(limit=LARGEST_BYTES // 1_000_000))
    text = text_of(file.content)
    if text.lstrip().startswith("{"):
        return _preview_book(desk, text)
    return _preview_roster(desk, file.name, text)


def press_import(desk: Desk, inbox: InboxId) -> Reply:
    """Do what the preview of that message told."""
    payload = Directory(desk.connection).payload_of(inbox, desk.chat.chat)
    file = Incoming.from_json(payload).file if payload else None  # emptied once forgotten
    if file is None or file.content is None:
        return Reply(text=wording("unclear.too_old"))
    text = text_of(file.content)
    if text.lstrip().startswith("{"):
        return _open_book(desk, text)
    return _add_roster(desk, text)


def export(desk: Desk, words: str) -> Reply:
    """The book as a file: whole as JSON, or its players as a table."""
    name = "".join(one if one.isalnum() else "-" for one in desk.book.about().name).strip("-")
    is_table = any(word in words.lower() for word in ("player", "csv", "roster", "table"))
    text = (players_as_csv if is_table else export_book)(desk.connection, desk.book_id)
    file = File(
        name=f"{name or 'book'}.{'csv' if is_table else 'json'}", content=text.encode("utf-8")
    )
    key = "file.players" if is_table else "file.book"
    is_of_one = any(not one.pronoun for one in find_mentions(words_of(words), desk.chat_view()))
    only_whole = [wording("file.only_whole")] if is_of_one and not is_table else []
    return Reply(text="\n".join([wording(key), *only_whole]), file=file)


def _preview_book(desk: Desk, text: str) -> Reply:
    try:
        found = summary_of(read_document(text))
    except ExchangeError as error:
        return Reply(text=wording("file.no_book").format(fault=str(error)[:200]))
    told = wording("file.book_found").format(
        name=found.name, players=found.players, notes=found.notes, matches=found.matches
    )
    return Reply(text=told, buttons=rows([_confirm(desk, "file.open")]))


def _open_book(desk: Desk, text: str) -> Reply:
    """A new book, which this chat speaks of from now on; undo goes back to the one before."""
    savepoint = desk.connection.begin_nested()
    directory = Directory(desk.connection)
    person = directory.person(desk.chat.account, desk.incoming.user_id, desk.incoming.user_name)
    try:
        made = import_book(desk.connection, text, owner=person)
        savepoint.commit()
    except ExchangeError as error:
        savepoint.rollback()
        return Reply(text=wording("file.no_book").format(fault=str(error)[:200]))
    new = Book(desk.connection, made, person=person, now=desk.now)
    change = new.record_change(
        "open_book", targets={"book": made}, before={"book": desk.book_id}, chat=desk.chat.chat
    )
    directory.use_book(desk.chat.chat, made)
    desk.context = Context()
    name = new.about().name
    return Reply(
        text=wording("file.book_opened").format(name=name), buttons=rows([undo_button(change)])
    )


def back_to_book(desk: Desk, book: BookId) -> bool:
    """The chat speaks of that book again, if who writes may still use it."""
    directory = Directory(desk.connection)
    person = directory.person(desk.chat.account, desk.incoming.user_id, desk.incoming.user_name)
    if directory.role(book, person) is None:
        return False
    directory.use_book(desk.chat.chat, book)
    desk.context = Context()
    return True


def _preview_roster(desk: Desk, name: str, text: str) -> Reply:
    table = read_table(text)
    plan = _plan(desk, read_roster(table))
    if not plan.roster.entrants:
        return Reply(text=wording("file.nobody").format(name=name[:40]))
    lines = [
        wording("file.found").format(
            name=name[:30], players=len(plan.roster.entrants), new=len(plan.new)
        )
    ]
    if plan.new:
        lines.append(wording("file.new").format(names=_some(plan.new)))
    if plan.pairs:
        lines.append(wording("file.pairs").format(count=len(plan.pairs)))
    if plan.hands:
        lines.append(wording("file.hands").format(count=len(plan.hands)))
    if not table.has_header:
        lines.append(wording("file.no_header"))
    if plan.roster.unread:
        told = ", ".join(map(str, plan.roster.unread[:SHOWN_NAMES]))
        lines.append(wording("file.unread").format(lines=told))
    if table.cut:
        lines.append(wording("file.cut"))
    if plan.changes_nothing:
        lines.append(wording("file.all_known"))
        return Reply(text="\n".join(lines))
    return Reply(text="\n".join(lines), buttons=rows([_confirm(desk, "file.add")]))


def _confirm(desk: Desk, key: str) -> Button:
    return Button(label=wording(key), payload=tap(Verb.IMPORT, desk.inbox))


def _some(people: Sequence[Entrant]) -> str:
    names = ", ".join(one.name for one in people[:SHOWN_NAMES])
    more = len(people) - SHOWN_NAMES
    return f"{names} and {more} more" if more > 0 else names


def _plan(desk: Desk, roster: Roster) -> _Plan:
    """Known is who has exactly that name or nickname; the likes of it stay apart."""
    by_name = {
        fold(name): row.player for row in desk.view.roster for name in (*row.aliases, row.name)
    }
    known = tuple(
        (by_name[fold(one.name)], one) for one in roster.entrants if fold(one.name) in by_name
    )
    new = tuple(one for one in roster.entrants if fold(one.name) not in by_name)
    pairs = tuple(
        (a, b)
        for a, b in roster.pairs
        if fold(a) not in by_name
        or fold(b) not in by_name
        or desk.view.pair_id((by_name[fold(a)], by_name[fold(b)])) is None
    )
    told = {
        (one.player, one.value)
        for one in desk.book.observations([player for player, _ in known])
        if one.trait is Trait.HAND
    }
    hands = [one for one in new if one.hand is not None]
    hands += [one for player, one in known if one.hand and (player, one.hand) not in told]
    return _Plan(roster=roster, new=new, known=known, pairs=pairs, hands=tuple(hands))


def _add_roster(desk: Desk, text: str) -> Reply:
    plan = _plan(desk, read_roster(read_table(text)))
    if plan.changes_nothing:
        return Reply(text=wording("file.all_known"))
    numbers = {fold(one.name): player for player, one in plan.known}
    added = []
    for one in plan.new:
        player = desk.book.add_player(one.name)
        numbers[fold(one.name)] = player
        added.append(player)
        for nickname in one.nicknames:
            desk.book.add_alias(player, nickname)
    for a, b in plan.pairs:
        desk.book.pair_of(numbers[fold(a)], numbers[fold(b)])
    notes = [_hand_note(desk, numbers[fold(one.name)], one) for one in plan.hands]
    change = desk.record("import", {"players": added, "notes": notes}, {})
    desk.changed()
    told = wording("file.added").format(players=len(added), pairs=len(plan.pairs), hands=len(notes))
    return Reply(text=told, buttons=rows([undo_button(change)]))


def _hand_note(desk: Desk, player: PlayerId, one: Entrant) -> int:
    """A hand told by a table is a note like any other: its words say where it came from."""
    assert one.hand is not None, "only those with a hand are noted"
    words = wording("file.hand_note").format(name=one.name, hand=_HAND_WORDS[one.hand])
    claim = NewObservation(
        player=player, trait=Trait.HAND, value=one.hand, weight=TABLE_WEIGHT, seen=Seen.HEARSAY
    )
    note = desk.book.add_note(words, [claim], parser=PARSER_VERSION, chat=desk.chat.chat)
    return int(note)


_HAND_WORDS = {
    Value.LEFT: "left-handed",
    Value.RIGHT: "right-handed",
    Value.AMBIDEXTROUS: "plays with both hands",
}
