"""A reply before any channel's form: plain lines, buttons and a picture."""

from __future__ import annotations

from bot.chat.file import File
from knowledge.advice import Picture
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Topic


@dataclass(frozen=True, slots=True, kw_only=True)
class Button:
    """A button: its label, its payload (bot.chat.payload) and the topic it stands for, if any."""

    label: str
    payload: str
    topic: Topic | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Reply:
    """What a user sees. `text` is plain; the first line is the call. `buttons` come in rows.

    `about` says which stored thing the message speaks of ("note", id), so that replying to
    it can correct or delete that thing. `replaces` is the external id of a message to edit.
    With a `file` the text stands under it.
    """

    text: str
    buttons: tuple[tuple[Button, ...], ...] = ()
    picture: Picture | None = None
    about: tuple[str, int] | None = None
    replaces: int | None = None
    file: File | None = None
