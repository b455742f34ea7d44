"""The console: the same path as any channel, with buttons numbered and pictures as files."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Sequence
from contextlib import suppress
from dataclasses import field
from pathlib import Path
from time import time_ns
from typing import Any, TextIO

from sqlalchemy import Connection
from sqlalchemy.exc import SQLAlchemyError

from bot.chat.file import File
from bot.chat.reminding import plain, remind
from bot.chat.reply import Button, Reply
from bot.chat.said import Kind
from bot.chat.turn import Heard, hear
from bot.chat.wording import wording
from bot.contract import Names, to_json
from bot.post import Arrival, Incoming, IncomingKind, Outgoing, answer, give_reminders, hand_out
from knowledge.advice import Picture
from knowledge.dataclass import dataclass
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.passing import is_passing
from scouting_db.session import Store
from scouting_db.values import AccountId, BookId, InboxRow, Micros

CHAT = "console"
USER = "console"

PROMPT = "> "


@dataclass(slots=True, kw_only=True)
class Console:
    """One conversation in a terminal. `pictures` is a folder for pictures, if wanted."""

    store: Store
    account: AccountId
    user_name: str
    clock: Callable[[], Micros]
    pictures: Path | None = None
    _buttons: tuple[Button, ...] = field(default=(), init=False)
    _heard: Heard | None = field(default=None, init=False)
    _count: int = field(default=0, init=False)
    _last: Micros = field(default=Micros(0), init=False)

    def give(self, file: File) -> tuple[Outgoing, ...]:
        """Hand in a file, as a messenger's document."""
        now = self._unused_moment()
        incoming = Incoming(
            kind=IncomingKind.FILE,
            chat=CHAT,
            user_id=USER,
            user_name=self.user_name,
            at=now,
            file=file,
        )
        arrival = Arrival(update_id=now, incoming=incoming)
        replies = answer(self.store, self.account, arrival, self._turn, now=now)
        self._take_buttons(replies)
        return replies

    def say(self, text: str) -> tuple[Outgoing, ...]:
        """Send a line; a number presses the button of that number under the last reply."""
        pressed = self._pressed(text)
        now = self._unused_moment()
        self._count, self._heard = self._count + 1, None
        incoming = Incoming(
            kind=IncomingKind.TEXT if pressed is None else IncomingKind.TAP,
            chat=CHAT,
            user_id=USER,
            user_name=self.user_name,
            at=now,
            text=text if pressed is None else "",
            payload=None if pressed is None else pressed.payload,
        )
        arrival = Arrival(update_id=now, incoming=incoming)
        replies = answer(self.store, self.account, arrival, self._turn, now=now)
        self._take_buttons(replies)
        return replies

    def _take_buttons(self, replies: Sequence[Outgoing]) -> None:
        self._buttons = tuple(
            button for reply in replies for row in reply.buttons for button in row
        )

    def due(self) -> tuple[Outgoing, ...]:
        """Reminders that fell due since the last prompt."""
        now = self._unused_moment()
        given = 1
        while given:
            with self.store.writing() as connection:
                given = give_reminders(connection, self.account, remind, plain=plain, now=now)
        reminders = hand_out(self.store, self.account, now=now)
        if reminders:
            self._take_buttons(reminders)
        return reminders

    def say_json(self, text: str) -> dict[str, Any]:
        """The same as the `--json` contract reports it."""
        replies = self.say(text)
        heard = self._heard or _failed(replies)
        files = [str(path) for reply in replies if (path := self.save(reply.picture))]
        return to_json(text, heard, self._names(), pictures=files)

    def save(self, picture: Picture | None) -> Path | None:
        """The picture as a file in the pictures folder; None without one."""
        if picture is None or self.pictures is None:
            return None
        from bot.chat.pictures import draw  # drawing loads matplotlib, so only when needed

        self.pictures.mkdir(parents=True, exist_ok=True)
        path = self.pictures / f"{self._count:03d}.png"
        path.write_bytes(draw(picture))
        return path

    def _turn(self, connection: Connection, row: InboxRow, *, now: Micros) -> tuple[Reply, ...]:
        self._heard = hear(connection, row, now=now)
        return self._heard.replies

    def _unused_moment(self) -> Micros:
        """The time, always later than before: it is the update id too, which must be unused."""
        self._last = Micros(max(self.clock(), self._last + 1))
        return self._last

    def has_button(self, text: str) -> bool:
        """Whether the line presses a button of the last reply."""
        return self._pressed(text) is not None

    def _pressed(self, text: str) -> Button | None:
        wanted = text.strip()
        if wanted.isascii() and wanted.isdigit() and 1 <= int(wanted) <= len(self._buttons):
            return self._buttons[int(wanted) - 1]
        return None

    def _names(self) -> Names:
        with self.store.reading() as connection:
            chat = Directory(connection).chat(self.account, CHAT)
            if chat.book is None:
                return {}
            book = Book(connection, BookId(chat.book), person=None, now=self._last)
            return {row.player: row.name for row in book.players()}


def system_clock() -> Micros:
    """The time by this machine."""
    return Micros(time_ns() // 1000)


def open_console(
    store: Store,
    *,
    user_name: str,
    pictures: Path | None = None,
    clock: Callable[[], Micros] = system_clock,
) -> Console:
    """A console on the store, as its local user."""
    with store.writing() as connection:
        account = Directory(connection).account("console", "console")
    return Console(
        store=store, account=account, user_name=user_name, pictures=pictures, clock=clock
    )


def shown(console: Console, replies: Sequence[Outgoing]) -> str:
    """Replies as the terminal prints them: text, picture, numbered buttons."""
    lines: list[str] = []
    number = 0
    for reply in replies:
        lines.append(reply.text)
        if reply.picture is not None:
            path = console.save(reply.picture)
            lines.append(f"[picture: {path or reply.picture.alt}]")
        if reply.file is not None:
            lines.append(f"[file: {reply.file.name}] Here: seamwise book export FILE")
        for row in reply.buttons:
            labels = []
            for button in row:
                number += 1
                labels.append(f"[{number}] {button.label}")
            lines.append("  ".join(labels))
    return "\n".join(lines)


def talk(console: Console, lines: Iterable[str], out: TextIO) -> None:
    """Answer each line until the end of input; reminders due by then come before the answer."""
    _tell(console, console.due(), out)
    for line in lines:
        text = line.rstrip("\n")
        if text.strip() in ("quit", "exit", "bye"):
            return
        try:
            if not console.has_button(text):
                _tell(console, console.due(), out)
            _tell(console, console.say(text), out)
        except SQLAlchemyError as error:
            if not is_passing(error):
                raise
            # What was stored of it is answered with the next line.
            out.write(wording("busy") + "\n\n")
            out.flush()


def _tell(console: Console, replies: Sequence[Outgoing], out: TextIO) -> None:
    if replies:
        out.write(shown(console, replies) + "\n\n")
        out.flush()


def _failed(replies: Sequence[Outgoing]) -> Heard:
    """What is reported of a turn that broke off: nothing was understood, the apology was said."""
    said = tuple(Reply(text=one.text) for one in replies)
    return Heard(kind=Kind.UNCLEAR, understood=None, replies=said, trace={})


def talk_json(console: Console, lines: Iterable[str], out: TextIO) -> None:
    """One message a line in, one JSON object a line out; state carries from line to line."""
    for line in lines:
        answered = console.say_json(line.rstrip("\n"))
        out.write(json.dumps(answered, ensure_ascii=False) + "\n")
        out.flush()


def typed_lines(source: TextIO) -> Iterable[str]:
    """Lines as they are typed, with a prompt and editing where a person sits at a terminal."""
    if not source.isatty():
        yield from source
        return
    with suppress(ImportError):
        import readline  # noqa: F401  line editing and history for input(), where there is one
    while True:
        try:
            yield input(PROMPT)
        except (EOFError, KeyboardInterrupt):
            sys.stdout.write("\n")
            return
