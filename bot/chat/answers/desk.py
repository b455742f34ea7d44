"""What every answer works at: the book, the chat's memory, who writes, and the time."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import field, replace
from typing import Any

from sqlalchemy import Connection

from bot.chat.answers.of_bodies import tells_of_hurt
from bot.chat.book_view import BookView
from bot.chat.book_views import KEPT_READ, BookViews, Read
from bot.chat.coached import Coached, own_pairs
from bot.chat.context import Context
from bot.chat.match_log import MatchLog, format_from_json, read_log
from bot.chat.payload import Verb, tap
from bot.chat.recent import Recent
from bot.chat.reply import Button
from bot.chat.said import Claim
from bot.chat.uniform import Uniform, unforeseeable
from bot.chat.view import ChatView
from bot.chat.who_writes import PAIR, bearer_of
from bot.chat.wording import wording
from bot.post import Incoming
from knowledge.dataclass import dataclass
from knowledge.game import GameFormat, MatchState
from knowledge.vocabulary import PlayerId
from scouting_db.book import Book
from scouting_db.directory import Directory
from scouting_db.values import (
    About,
    AgreementRow,
    BookId,
    ChangeId,
    ChatRow,
    EntryRow,
    InboxId,
    MatchId,
    MatchRow,
    Micros,
    NoteId,
    PairId,
    Part,
    PersonId,
    Role,
    Stamps,
)
from scouting_db.values import MatchState as StoredState
from scouting_db.zones import local_day


@dataclass(slots=True, kw_only=True)
class Desk:
    """One message on the desk. Handlers replace `context`; the turn saves it at the end.

    `trace` collects what the `--json` contract reports beside the reply.
    """

    connection: Connection
    book: Book
    book_id: BookId
    chat: ChatRow
    incoming: Incoming
    inbox: InboxId
    now: Micros
    context: Context
    views: BookViews
    uniform: Uniform = unforeseeable
    replying_to: About | None = None
    trace: dict[str, Any] = field(default_factory=dict)
    people: Directory | None = None
    person: PersonId | None = None
    role: Role | None = None
    moved_to: BookId | None = None
    """The book that the chat speaks of from now on, if this message changed it."""
    is_gone: bool = False
    """Whether this message erased the book, or left the chat without one."""
    after_note: NoteId | None = None
    """The note that the message before this one left or changed."""
    noted: tuple[Claim, ...] = ()
    """What this message noted before its question, in force for it whatever older notes say."""
    _view: BookView | None = field(default=None, init=False)
    _match: MatchRow | None = field(default=None, init=False)
    _since: Recent = field(default_factory=lambda: Recent(KEPT_READ), init=False)

    @property
    def directory(self) -> Directory:
        """The first door, for what is about people and chats and not in the book."""
        assert self.people is not None, "a turn opens both doors"
        return self.people

    @property
    def writer(self) -> PersonId:
        """Who wrote the message."""
        assert self.person is not None, "a turn knows who writes"
        return self.person

    @property
    def zone(self) -> str:
        """The time zone of the book's own clock, in which its notes' days are counted too."""
        return self.chat.zone or "UTC"

    @property
    def day(self) -> int:
        """Today's ordinal on the book's own clock; a note's age is counted in days."""
        return local_day(self.now, self.zone)

    @property
    def view(self) -> BookView:
        """The book as it stands now, kept between turns by its version."""
        if self._view is None and self.book.writes_to(Part.PEOPLE):
            self._view = self._read_view()
        elif self._view is None:
            stamp = self.stamps.of(Part.PEOPLE)
            self._view = self.views.get(self.book_id, stamp, self._read_view)
        return self._view

    @property
    def version(self) -> int:
        """The book's version as the turn found it."""
        if self.chat.book == self.book_id and self.chat.version is not None:
            return self.chat.version
        return self.book.version()

    @property
    def stamps(self) -> Stamps:
        """Which version last wrote each part of the book, as the turn found it."""
        if self.chat.book == self.book_id and self.chat.stamps is not None:
            return self.chat.stamps
        return self.book.stamps()

    def changed(self) -> None:
        """The roster, the pairs or the notes were written: what was read of them is stale."""
        self._view = None

    def match_changed(self) -> None:
        """The current match itself was written, its format for one."""
        self._match = None

    def _read_view(self) -> BookView:
        return BookView(
            version=self.version,
            roster=tuple(self.book.players()),
            pairs=tuple((pair.pair, pair.players) for pair in self.book.pairs()),
        )

    @property
    def ours(self) -> tuple[PlayerId, ...]:
        """Our pair: as set in this chat, else the book's own two."""
        return self.context.ours or self.view.ours()[:2]

    @property
    def asker(self) -> PlayerId | None:
        """Who of ours writes: as told in this chat of one, else whoever bears the writer's name."""
        told = None if self.chat.is_group else self.context.asker
        if told in self.ours:
            return told
        ours = [row for row in self.view.roster if row.player in self.ours]
        return bearer_of(self.incoming.user_name, ours) or (told if len(ours) < PAIR else None)

    @property
    def coach(self) -> Coached | None:
        """What is kept of a coach who writes; None where one of the pair does, or nobody said."""
        return None if self.asker in self.ours and self.ours else self.context.coach

    def knows_writer(self, player: PlayerId | None) -> None:
        """Remember who writes here; in a group several do."""
        if player is not None and not self.chat.is_group:
            self.context = replace(self.context, asker=player)

    def chat_view(self) -> ChatView:
        """What understanding may know."""
        context, asked = self.context, self.context.asked
        return ChatView(
            book=self.book_id,
            version=self.view.version,
            roster=self.view.roster,
            ours=self.ours,
            theirs=context.theirs,
            focus=context.focus,
            asker=self.asker,
            called=context.called,
            match_on=context.match is not None,
            match_awaited=any(one.announces for one in context.pendings),
            format=self.format(),
            last_topic=asked.topic if asked else None,
            forwarded=self.incoming.forwarded,
            pool_on=context.pool is not None,
            listing=context.listing is not None and not context.listing.asks,
            notes_listed=context.listing is not None and context.listing.what == "notes",
            notes_shown=0 if context.listing is None else len(context.listing.notes),
            asks_what_goes=context.listing is not None and context.listing.asks,
            card_open=context.scouting is not None and context.scouting.day == self.day,
            asks_serve=context.match is not None and context.asks_serve_of == context.match,
            hurt=asked is not None and tells_of_hurt(asked),
            over_format=self._over_format(),
            noted=self.after_note is not None,
            asked_last=context.asked_last,
            own_pairs=own_pairs(self.coach, self.view),
            draws=() if self.coach is None else self.coach.draws,
            windy=context.wind is not None,
        )

    def _over_format(self) -> GameFormat | None:
        """How the match closed last was played, while its result stands and no other has begun;
        the same of the current one while a game of it has just ended."""
        over = self.context.over
        if self.context.match is not None and self.log().match.game.is_over:
            return self.format()
        row = None if over is None or self.log().is_begun else self.match_of(over)
        stands = row is not None and row.state is StoredState.OVER
        return format_from_json(row.format) if row is not None and stands else None

    def read_once(self, read: Callable[[str, ChatView], Read], text: str, view: ChatView) -> Read:
        """What a function reads in the text in this view of the chat; the same in the same view."""
        key = (read, text, replace(view, roster=(), version=0))
        return self.views.readings.recall(key, (view.roster,), lambda: read(text, view))

    def match_row(self) -> MatchRow | None:
        """The current match; what is read of it here never changes within a turn."""
        match = self.context.match
        if match is None:
            return None
        if self._match is None or self._match.match != match:
            self._match = self.match_of(match)
        return self._match

    def match_of(self, match: MatchId) -> MatchRow | None:
        """Any match of the book, as it stands now."""
        return self.recall(("match", match), lambda: self.book.match(match), Part.MATCHES)

    def format(self) -> GameFormat:
        """The current match's format, or the common one."""
        match = self.match_row()
        return format_from_json(match.format) if match else GameFormat()

    def entries(self) -> tuple[EntryRow, ...]:
        match = self.context.match
        if match is None:
            return ()
        return self.entries_of(match)

    def entries_of(self, match: MatchId) -> tuple[EntryRow, ...]:
        """The lines of any match, as they stand now."""
        return self.recall(("entries", match), lambda: self.book.entries(match), Part.LOG)

    def log(self) -> MatchLog:
        """What the current match's log comes to."""
        match = self.context.match
        if match is None:
            return read_log((), GameFormat())
        return self.recall(
            ("log", match),
            lambda: read_log(self.entries(), self.format()),
            Part.MATCHES,
            Part.LOG,
        )

    def match_state(self) -> MatchState | None:
        """The score now; None while no match is on or nothing of it was logged."""
        return self.log().match if self.entries() else None

    def pair_of(self, players: Sequence[PlayerId]) -> PairId | None:
        """The pair of exactly two players, made if need be; None for any other number."""
        return self.book.pair_of(players[0], players[1]) if len(players) == 2 else None

    def preferences(self) -> Mapping[str, str]:
        """The book's own settings."""
        return self.recall(("preferences", self.book_id), self.book.preferences, Part.SETTLED)

    def agreements(self) -> tuple[AgreementRow, ...]:
        pair = self.view.pair_id(self.ours)
        if pair is None:
            return ()
        return self.recall(
            ("agreements", pair), lambda: self.book.agreements_of(pair), Part.SETTLED
        )

    def recall(self, key: Hashable, read: Callable[[], Read], *parts: Part) -> Read:
        """What an earlier turn read of these parts of the book, which is all that `read` reads,
        where they are as they were; of parts that this turn wrote, what was read since.
        """
        writes = self.book.writes_to(*parts)
        if writes:
            return self._since.recall(key, (writes,), read)
        return self.views.recall(self.book_id, self.stamps.of(*parts), key, read)

    def names(self, players: Sequence[PlayerId]) -> tuple[str, ...]:
        return tuple(self.view.short_name(player) for player in players)

    def record(self, verb: str, targets: Mapping[str, Any], before: Mapping[str, Any]) -> ChangeId:
        """Remember how to take back what was just done."""
        return self.book.record_change(
            verb, targets=targets, before=before, chat=self.chat.chat, inbox=self.inbox
        )


def undo_button(change: ChangeId) -> Button:
    return Button(label=wording("undo"), payload=tap(Verb.UNDO, change))
