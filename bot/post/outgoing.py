"""What a channel sends: one typed value per message, stored as JSON in the outbox."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from bot.chat.file import File
from bot.chat.reply import Button, Reply
from bot.post.picture_json import picture_from_json, picture_to_json
from knowledge.advice import Picture
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Topic
from scouting_db.values import About, NewPost, PostKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """A channel's longest text of a message and of a picture's caption, in UTF-16 units."""

    text: int
    caption: int


NO_LIMITS = Limits(text=1_000_000, caption=1_000_000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outgoing:
    """One message. A picture makes it a photo with `text` as its caption; `replaces` an edit.
    A file makes it a document, its text the caption.

    `continues` marks the second and later parts of a long text.
    """

    text: str
    buttons: tuple[tuple[Button, ...], ...] = ()
    picture: Picture | None = None
    about: About | None = None
    replaces: int | None = None
    continues: bool = False
    file: File | None = None

    @property
    def kind(self) -> PostKind:
        """How the channel sends it."""
        if self.file is not None:
            return PostKind.DOCUMENT
        if self.picture is not None:
            return PostKind.PHOTO
        return PostKind.SEND if self.replaces is None else PostKind.EDIT

    def to_post(self) -> NewPost:
        """The row of the outbox."""
        return NewPost(kind=self.kind, payload=self.to_json(), about=self.about)

    def to_json(self) -> dict[str, Any]:
        """Plain JSON, absent things left out."""
        plain = {
            "text": self.text,
            "buttons": [[_button_to_json(one) for one in row] for row in self.buttons] or None,
            "picture": None if self.picture is None else picture_to_json(self.picture),
            "about": None if self.about is None else [self.about.kind, self.about.id],
            "replaces": self.replaces,
            "continues": self.continues,
            "file": None if self.file is None else self.file.to_json(),
        }
        return {
            key: value for key, value in plain.items() if value is not None and value is not False
        }

    @classmethod
    def from_json(cls, stored: Mapping[str, Any]) -> Outgoing:
        """The value that `to_json` wrote."""
        picture, about, file = (stored.get(key) for key in ("picture", "about", "file"))
        return cls(
            text=stored["text"],
            buttons=tuple(
                tuple(_button_from_json(one) for one in row) for row in stored.get("buttons", ())
            ),
            picture=None if picture is None else picture_from_json(picture),
            about=None if about is None else About(kind=about[0], id=about[1]),
            replaces=stored.get("replaces"),
            continues=stored.get("continues", False),
            file=None if file is None else File.from_json(file),
        )


def messages_of(reply: Reply, limits: Limits) -> tuple[Outgoing, ...]:
    """The reply as messages that the channel takes whole: one, unless the text is too long.

    Each becomes a row of its own, so that a retry never repeats a part already sent. The
    buttons stand under the last part; every part speaks of the same thing.
    """
    has_caption = reply.picture is not None or reply.file is not None
    first_limit = limits.caption if has_caption else limits.text
    parts = tuple(split(reply.text, first_limit, limits.text))
    about = None if reply.about is None else About(kind=reply.about[0], id=reply.about[1])
    return tuple(
        Outgoing(
            text=part,
            buttons=reply.buttons if n == len(parts) - 1 else (),
            picture=reply.picture if n == 0 else None,
            about=about,
            replaces=reply.replaces if n == 0 else None,
            continues=n > 0,
            file=reply.file if n == 0 else None,
        )
        for n, part in enumerate(parts)
    )


def split(text: str, first_limit: int, limit: int) -> Iterator[str]:
    """The text in parts within the limits, cut after a line or a word where there is one."""
    left, room = text, first_limit
    while units(left) > room:
        part = _cut(left, room)
        # A part of blanks alone is not sent: the Bot API refuses it.
        if part.strip():
            yield part.rstrip()
            room = limit
        left = left[len(part) :].lstrip("\n ")
    yield left


def units(text: str) -> int:
    """Length in UTF-16 units, as the Bot API counts; an emoji outside the basic plane is two."""
    return len(text) + sum(character > "\uffff" for character in text)


def _cut(text: str, room: int) -> str:
    whole = _first_units(text, room)
    for separator in ("\n", " "):
        at = whole.rfind(separator)
        if at > len(whole) // 2:
            return whole[: at + 1]
    return whole


def _first_units(text: str, room: int) -> str:
    used = 0
    for index, character in enumerate(text):
        used += 1 + (character > "\uffff")
        if used > room:
            return text[:index]
    return text


def _button_to_json(button: Button) -> list[str | None]:
    topic = None if button.topic is None else button.topic.value
    return [button.label, button.payload, topic]


def _button_from_json(stored: list[Any]) -> Button:
    label, payload, topic = stored
    return Button(label=label, payload=payload, topic=None if topic is None else Topic(topic))
