"""Two teams and everybody around them, each with words of their own, to find what crosses over.

Mira's book: Mira and Ada edit, Tom reads, Rex was taken out, and a group is bound to it in which
Sam is nobody. Kim's book is another team's.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from sqlalchemy import select
from sqlalchemy.engine import make_url
from talk import Talk, raw_of

from bot.chat.answers.membership import Act
from bot.chat.file import File
from bot.chat.payload import stamped, unstamped
from bot.chat.said import PlanAsk
from bot.chat.turn import hear, marked
from bot.post import IncomingKind
from knowledge.vocabulary import Topic
from scouting_db import tables
from scouting_db.base import Base
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.exchange import export_book
from scouting_db.session import Store, _engine, open_store
from scouting_db.values import BookId, PersonId, Role

GROUP = "-100500"

PLAYERS = {"mira": ("Quill Marrowdene", "Fenn Ashgrove"), "kim": ("Pell Thornwick", "Osk Dunmere")}
"""First names are what anybody may type; the rest is known from the book alone."""

MARKERS = {
    "mira": ("marrowdene", "ashgrove", "mossgarden", "silverpine", "larkspur", "hollowmere"),
    "kim": ("thornwick", "dunmere", "brackenfold", "copperleaf", "winterbourne", "saltmeadow"),
}
"""Words of a book that nobody types outside it: names, a note, an alias, a court, an agreement,
and the book's own name."""

ENOUGH_FOR_A_PLAN = (
    "{other} is right-handed",
    "{one} usually stands left",
    "{other} never poaches",
    "{one} late hands at the kitchen",
    "{other} weak backhand volley",
)
"""With less in the book a plan says what to look for, and none is kept that could leak."""

FELT_EVERY = 8
"""Things tried between two looks at whether a book has moved: a pulse never goes back, so that a
change shows whenever it is felt, and at the end every row is compared."""

TABLES = tuple(table for table in Base.metadata.sorted_tables if "book_id" in table.c)


@dataclass(slots=True, kw_only=True)
class Chatter(Talk):
    """A person in the messenger: their private chat bears their id, and old buttons stay."""

    def _turn(self, connection: Any, row: Any, *, now: Any) -> Any:
        self.heard = hear(connection, row, now=now, uniform=self.uniform)
        return tuple(marked(reply, self.heard.book) for reply in self.heard.replies)

    def said(self) -> str:
        """All that the last reply shows."""
        shown = [one.text for one in self.last]
        shown += [button.label for button in self.buttons]
        shown += [one.picture.alt for one in self.last if one.picture is not None]
        return "\n".join(shown).lower()


def chatter(store: Store, user: str, *, group: bool = False) -> Chatter:
    """The user in their own chat, or in the group."""
    return Chatter(
        store=store,
        bot="walled",
        chat=GROUP if group else user,
        user=user,
        name=user.title(),
        is_group=group,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Actor:
    """Somebody somewhere: whose words they may see there, and whose rows they may change."""

    user: str
    group: bool = False
    sees: frozenset[str] = frozenset()
    changes: frozenset[str] = frozenset()

    def __str__(self) -> str:
        return f"{self.user} in {'the group' if self.group else 'private'}"


def _of(*books: str) -> frozenset[str]:
    return frozenset(books)


ACTORS = (
    Actor(user="tom", sees=_of("mira")),
    Actor(user="tom", group=True, sees=_of("mira")),
    Actor(user="sam", group=True, sees=_of("mira")),
    Actor(user="sam"),
    Actor(user="rex"),
    Actor(user="rex", group=True, sees=_of("mira")),
    Actor(user="kim", sees=_of("kim"), changes=_of("kim")),
    Actor(user="kim", group=True, sees=_of("mira")),
    Actor(user="mira", sees=_of("mira"), changes=_of("mira")),
    Actor(user="ada", group=True, sees=_of("mira"), changes=_of("mira")),
    Actor(user=GROUP, group=True, sees=_of("mira")),
)
"""Reader, group member, group stranger, outsider, removed member, another team's editor, an
anonymous admin who writes as the group, and the editors, who may change their own book alone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """The store with everybody in it, and the books by their owner."""

    store: Store
    books: dict[str, BookId]
    people: dict[str, PersonId]

    def copied(self) -> World:
        """The same in a store of its own."""
        store = Store(_engine(make_url("sqlite://")))
        with raw_of(self.store) as written, raw_of(store) as empty:
            written.backup(empty)
        return replace(self, store=store)

    def rows_of(self, owner: str) -> dict[str, list[tuple[str, ...]]]:
        """Every row that belongs to the book."""
        with self.store.reading() as connection:
            return {
                table.name: sorted(
                    tuple(map(repr, row))
                    for row in connection.execute(
                        select(table).where(table.c.book_id == self.books[owner])
                    )
                )
                for table in TABLES
                if table is not tables.chat
            }

    def players_of(self, owner: str) -> tuple[int, ...]:
        """The two whom the book is about."""
        names = tables.player.c
        with self.store.reading() as connection:
            found = select(names.player_id).where(
                names.book_id == self.books[owner], names.name.in_(PLAYERS[owner])
            )
            return tuple(connection.execute(found.order_by(names.player_id)).scalars())

    def files(self) -> tuple[int, ...]:
        """The messages in which an owner sent the whole book as a file."""
        with self.store.reading() as connection:
            found = select(tables.inbox.c.inbox_id).where(tables.inbox.c.kind == IncomingKind.FILE)
            return tuple(connection.execute(found).scalars())

    def pulse_of(self, owner: str) -> tuple[Any, ...]:
        """What surely moves when somebody writes to the book, cheap enough to ask each time."""
        book = self.books[owner]
        with self.store.reading() as connection:
            version = connection.execute(
                select(tables.book.c.version).where(tables.book.c.book_id == book)
            ).scalar()
            rights = [
                tuple(connection.execute(select(table).where(table.c.book_id == book)).all())
                for table in (tables.member, tables.invitation)
            ]
            bound = connection.execute(
                select(tables.chat.c.book_id).where(tables.chat.c.external_chat_id == GROUP)
            ).scalar()
        return (version, *map(repr, rights), bound if owner == "mira" else None)


def world() -> World:
    """Everybody, each having done what made them who they are."""
    store = open_store("sqlite://")
    books = {owner: _book_of(store, owner) for owner in PLAYERS}
    people = {}
    with store.writing() as connection:
        directory = Directory(connection)
        account = directory.account("console", "walled")
        for user in ("mira", "kim", "ada", "tom", "rex", "sam"):
            people[user] = directory.person(account, user, user.title())
        group = directory.chat(account, GROUP, is_group=True)
        directory.use_book(group.chat, books["mira"])
        directory.add_member(books["mira"], people["ada"], Role.EDITOR)
        directory.add_member(books["mira"], people["tom"], Role.READER)
        directory.add_member(books["mira"], people["rex"], Role.EDITOR)
        for user in ("tom", "rex"):
            directory.use_book(directory.chat(account, user).chat, books["mira"])
    made = World(store=store, books=books, people=people)
    chatter(store, "rex").say("who is in my book")
    with store.writing() as connection:
        # Only the membership is gone, as for somebody removed while they type.
        Directory(connection).remove_member(books["mira"], people["rex"])
    return made


def _book_of(store: Store, owner: str) -> BookId:
    one, other = PLAYERS[owner]
    words = MARKERS[owner]
    owns = chatter(store, owner)
    owns.say(f"/add {one}")
    owns.say(f"/add {other}")
    owns.say("we are Vera and Wim")
    owns.say(f"{one.split()[0]} is lefty, pops up backhand dinks, {words[2]}")
    for told in ENOUGH_FOR_A_PLAN:
        owns.say(told.format(one=one.split()[0], other=other.split()[0]))
    owns.say(f"/nickname {one.split()[0]} {words[3]}")
    with owns.book() as book:
        # The words of a nickname as a command reads them depend on the lexicon; the row does not.
        book.add_alias(book.players()[0].player, words[3])
    owns.say(f"we agreed forehand takes the middle {words[4]}")
    owns.say(f"next: {one.split()[0]} and {other.split()[0]}, 10:40, court 7, to 11")
    owns.say("/plan")
    owns.say("we serve first")
    owns.say("our point")
    chat = owns.chat_row()
    assert chat.book is not None
    with store.writing() as connection:
        book = Book(connection, chat.book, person=None, now=owns.now)
        book.set_about(name=f"{words[5]} book", zone="UTC")
        document = export_book(connection, chat.book)
    owns.send(IncomingKind.FILE, file=File(name="book.json", content=document.encode()))
    return BookId(chat.book)


SAYINGS = (
    "/start",
    "/help",
    "/players",
    "/notes quill",
    "/notes pell",
    "/pair Ann and Bo",
    "/mode match",
    "/log",
    "/add Hale",
    "/rename quill to Bo",
    "/nickname quill bo",
    "/export",
    "/share",
    "/invite editor",
    "/members",
    "/remove mira",
    "/books",
    "/bind",
    "/privacy",
    "/forget quill",
    "/forget pell",
    "/join 99999-9999-9999-9999-9999",
    "/start 99999-9999-9999-9999-9999",
    "/plan",
    "/cue",
    "/report quill",
    "/scout quill",
    "/scout pell and osk",
    "/review",
    "plan b",
    "more",
    "/adjust",
    "/probe",
    "/timeout",
    "/stand",
    "/undo",
    "/note quill lobs",
    "who is in my book",
    "who are we",
    "show notes on quill",
    "show notes",
    "my books",
    "switch to hollowmer book",
    "who can see my book",
    "use my book here",
    "/unbind",
    "invite tom as editor",
    "remove tom from the book",
    "quill is tall",
    "pell lobs a lot",
    "he is slow",
    "note: quill hates pace",
    "next: quill and fenn, to 11",
    "our point",
    "side out",
    "6-4-2",
    "won 11-2 11-3",
    "undo",
    "put it back",
    "no, it was pell",
    "we agreed forehand takes the middle",
    "why",
    "tell me more",
    "we win 42% on serve",
    "usually we win 45% on serve",
    "tag rallies",
    "what's the score",
    "review",
    "what do you know about quill",
    "who is quill",
    "where do i dink quill",
    "game plan for quill and fenn",
    "who covers the middle",
    "how do we beat fenn",
    "what did we agree",
    "timeouts left?",
    "hale is lefty",
    "we are Quill and Fenn",
    "forget the middle",
    "delete that",
    "x" * 300,
)
"""Every command and every kind of message; nothing that ends a membership."""


def taps(made: World) -> Iterator[str]:
    """Every verb with the numbers of either book: what a forger would send."""
    numbers = sorted({number for owner in PLAYERS for number in _numbers(made, owner)})
    people = sorted(made.people.values())
    for topic in Topic:
        yield from (f"1:ask:{topic}", f"1:why:{topic}", f"1:set:{topic}:ball:easy")
    for number in numbers:
        yield from (
            f"1:ask:aim_dink:{number}",
            f"1:set:aim_dink:hand:left:{number}",
            f"1:prof:{number}:hand:left",
            f"1:who:1:{number}",
            f"1:undo:{number}",
            f"1:redo:{number}",
            f"1:note:delete:{number}",
            f"1:claim:{number}:1",
            f"1:rally:us:{number}:2",
            f"1:to:us:{number}:2",
            f"1:over:{number}",
            f"1:serve:us:{number}",
            f"1:sides:them:{number}:{number}:1",
            f"1:server:{number}:{number}:2",
            f"1:score:us:1-0-2:{number}:2",
            f"1:end:winner:{number}:2",
            f"1:by:{number}:{number}:2",
            f"1:meant:{number}:{number}:2",
            f"1:tag:serve:deep:{number}:2",
            f"1:agree:middle:forehand:{number}:{number}",
            f"1:forget:player:{number}",
            f"1:scout:open:any:{number}",
            f"1:scout:{number}:hand:{number}:1",
            f"1:scout:{number}:skip:{number}:hand",
            f"1:scout:{number}:look:{number}",
            f"1:scout:{number}:done",
            f"1:page:pool:{number}:0",
            f"1:page:leaks:{number}:0",
            f"1:page:student:{number}:0",
        )
    for owner in PLAYERS:
        pair = ":".join(map(str, made.players_of(owner)))
        yield from (f"1:plan:{ask}:{pair}" for ask in PlanAsk)
        yield f"1:scout:open:any:{pair}"
    for inbox in made.files():
        yield f"1:import:{inbox}"
    for book in made.books.values():
        yield f"1:book:use:{book}"
    for person in people:
        yield from (f"1:mem:{act}:{person}" for act in Act)
    yield from (
        "1:mix:aim_dink",
        "1:pick:aim_dink",
        "1:mode:match",
        "1:add:1",
        "1:later:1",
        "1:ex:1",
        "1:ex:2",
        "1:rates:log",
        "1:inv:editor",
        "1:inv:reader",
        "1:inv:cancel",
        "1:book:list",
        "1:book:bind:mine",
        "1:book:bind:fresh",
        "1:zone:Europe/Vienna",
    )


def _numbers(made: World, owner: str) -> set[int]:
    """Some numbers of rows of the book, of every table."""
    book = made.books[owner]
    columns = (
        tables.player.c.player_id,
        tables.note.c.note_id,
        tables.match.c.match_id,
        tables.change.c.change_id,
        tables.pair.c.pair_id,
        tables.plan.c.plan_id,
    )
    with made.store.reading() as connection:
        return {
            int(number)
            for column in columns
            for number in connection.execute(
                select(column).where(column.table.c.book_id == book).limit(1)
            ).scalars()
        }


def payloads(made: World, offered: Sequence[str]) -> list[str]:
    """What is pressed: as forged without a stamp, with either book's, and every real button."""
    plain = [*dict.fromkeys([*taps(made), *(unstamped(one)[0] for one in offered)])]
    of_mira = [stamped(one, made.books["mira"]) for one in plain[::3]]
    return [*plain, *of_mira, *dict.fromkeys(offered)]


def offered_by(made: World, user: str) -> list[str]:
    """Every button that the user is offered on a walk of their own, as it stands in their chat."""
    found: list[str] = []
    who = chatter(made.copied().store, user)
    for text in SAYINGS:
        who.say(text)
        found += [one.payload for one in who.buttons]
    return list(dict.fromkeys(found))


def breaches(made: World, actor: Actor, pressed: Sequence[str], *, stop: bool = False) -> list[str]:
    """What the actor was shown or could change that is not theirs; with `stop` the first alone."""
    there = made.copied()
    who = chatter(there.store, actor.user, group=actor.group)
    hidden = [owner for owner in PLAYERS if owner not in actor.sees]
    shut = [owner for owner in PLAYERS if owner not in actor.changes]
    before = {owner: there.rows_of(owner) for owner in shut}
    pulses = {owner: there.pulse_of(owner) for owner in shut}
    found: list[str] = []
    since: list[str] = []
    for is_tap, what in [*((False, text) for text in SAYINGS), *((True, one) for one in pressed)]:
        who.press(what) if is_tap else who.say(what)
        since.append(what)
        shown = who.said()
        found += [
            f"{actor}: {what!r} shows {word}"
            for owner in hidden
            for word in MARKERS[owner]
            if word in shown
        ]
        if len(since) == FELT_EVERY:
            for owner in shut:
                pulse = there.pulse_of(owner)
                if pulse != pulses[owner]:
                    found.append(f"{actor}: one of {since} changes {owner}'s book")
                    pulses[owner] = pulse
            since.clear()
        if found and stop:
            return found
    found += [
        f"{actor}: rows of {owner}'s book"
        for owner in shut
        if there.rows_of(owner) != before[owner]
    ]
    there.store.close()
    return found
