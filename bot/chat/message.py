"""A message as understanding reads it: its words, whom it names, and what it would note."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial

from bot.chat.asking import asks
from bot.chat.names import find_mentions
from bot.chat.note_told_apart import told_apart
from bot.chat.notes import read_note
from bot.chat.numbers import groups
from bot.chat.pointed_out import without_relatives
from bot.chat.said import Certainty, Mention, NoteSaid
from bot.chat.speakers_named import without_speakers
from bot.chat.strangers_named import with_strangers, without_things
from bot.chat.supposed_case import is_supposed
from bot.chat.told import Told, tell
from bot.chat.view import ChatView
from bot.chat.words import Word, words
from knowledge.vocabulary import PlayerId

CALLED_NUMBERS = 3
"""A call in doubles: our points, theirs, the server."""


@dataclass(frozen=True, kw_only=True)  # no slots: its note is kept beside its fields
class Message:
    """`asks` of the whole; `told` has names as sides; `chat` is where it was read."""

    text: str
    said: tuple[Word, ...]
    mentions: tuple[Mention, ...]
    asks: bool
    told: Told
    chat: ChatView

    @cached_property
    def note(self) -> NoteSaid:
        """What it would say as a note: read once somebody asks, as of most parts nobody does."""
        note = read_note(self.text, self.said, self.mentions, self.chat)
        return _without_scores(note, self.said)


def read_message(
    text: str, chat: ChatView, *, mentions: tuple[Mention, ...] | None = None
) -> Message:
    """The message; `mentions` where whom it names is known from what it is a part of."""
    said = words(text)
    if mentions is None:
        mentions = without_things(said, find_mentions(said, chat), chat)
        mentions = without_speakers(said, mentions)
        mentions = with_strangers(text, said, mentions, chat)
    told = _told(text, said, mentions, chat)
    return Message(
        text=text,
        said=said,
        mentions=mentions,
        asks=asks(text, without_relatives(said, mentions))
        or told.weighs_a_break
        or told.wants_a_figure
        or is_supposed(said, mentions),
        told=told,
        chat=chat,
    )


def mentions_within(mentions: Sequence[Mention], begin: int, end: int) -> tuple[Mention, ...]:
    """Who of a message is named in a part of it, with the places that they have there."""
    return tuple(
        replace(one, span=(one.span[0] - begin, one.span[1] - begin))
        for one in mentions
        if begin <= one.span[0] < end
    )


def weighed_note(message: Message, chat: ChatView) -> NoteSaid:
    """The message's note read to the end, now that it is one."""
    note = read_note(message.text, message.said, message.mentions, chat, weighed=True)
    note = told_apart(
        note, message.said, message.mentions, partial(_read_whole, message.text, chat)
    )
    return _without_scores(note, message.said)


def _read_whole(
    text: str, chat: ChatView, said: Sequence[Word], mentions: Sequence[Mention]
) -> NoteSaid:
    return read_note(text, said, mentions, chat, weighed=True)


def _without_scores(note: NoteSaid, said: Sequence[Word]) -> NoteSaid:
    """The note without what was read into a call: in "0-5-1" nobody is five foot one."""
    calls = [group.span for group in groups(said) if len(group.numbers) == CALLED_NUMBERS]
    told, offered = (
        tuple(
            claim
            for claim in claims
            if not any(start <= claim.span[0] and claim.span[1] <= stop for start, stop in calls)
        )
        for claims in (note.claims, note.offered)
    )
    return replace(note, claims=told, offered=offered) if calls else note


def names_somebody(message: Message) -> bool:
    return any(not one.pronoun for one in message.note.mentions)


def opponents(mentions: Sequence[Mention], chat: ChatView) -> list[Mention]:
    return [one for one in mentions if not one.pronoun and not is_ours(one, chat.ours)]


def _told(text: str, said: Sequence[Word], mentions: Sequence[Mention], chat: ChatView) -> Told:
    named = [one for one in mentions if not one.pronoun]
    ours = [one for one in named if is_ours(one, chat.ours)]
    return tell(text, said, ours, [one for one in named if one not in ours])


def is_ours(mention: Mention, ours: Sequence[PlayerId]) -> bool:
    """Whether one of us is meant; whoever bears a name only near one of ours is somebody else."""
    if mention.certainty is Certainty.NOBODY:
        return False
    return bool(mention.players) and all(player in ours for player in mention.players)


def may_be_ours(mention: Mention, ours: Sequence[PlayerId]) -> bool:
    """Whether one of us is meant, or somebody new where we are told: nobody near in the book, or
    nobody of ours known yet.
    """
    is_new = mention.certainty is Certainty.NOBODY and not (mention.players and ours)
    return is_new or is_ours(mention, ours)
