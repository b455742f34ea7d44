"""What turns keep of books between messages, each part by the stamp of what it was read of."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from typing import TypeVar

from bot.chat.book_evidence import BookEvidence
from bot.chat.book_view import BookView
from bot.chat.meetings import KeptTallies
from bot.chat.profiles import KeptProfiles, Memories
from bot.chat.recent import Recent

Read = TypeVar("Read")

CACHED_BOOKS = 64
"""Rosters kept in memory, the least recently used book leaving first."""

KEPT_CLAIMS = 80_000
"""What notes say, as far as it is kept of all those books together: some 20 MB. The book asked
about last is kept whatever its size."""

KEPT_TEXTS = 512
"""Messages whose reading is kept, of all books together."""

KEPT_ADVICE = 256
"""Questions whose advice and reply are kept, of all books together."""

KEPT_READ = 32
"""What else was read of one book (a match, its log, what was agreed): so much is kept of it."""


class BookViews:
    """Views of books by the stamp of what they were read of (scouting_db.values.Stamps): what was
    written since is simply another stamp.

    `readings` holds what was understood of texts, `advice` what the engine said, `replies` how that
    was put: each is kept by all that it depends on.
    """

    def __init__(self) -> None:
        self._kept: OrderedDict[int, tuple[int, BookView]] = OrderedDict()
        self._recalled: OrderedDict[int, Recent] = OrderedDict()
        self._evidence: OrderedDict[int, BookEvidence] = OrderedDict()
        self._claims = 0
        self.profiles = KeptProfiles()
        self.memories = Memories()
        self.tallies = KeptTallies()
        self.readings = Recent(KEPT_TEXTS)
        self.advice = Recent(KEPT_ADVICE)
        self.replies = Recent(KEPT_ADVICE)

    def get(self, book: int, stamp: int, read: Callable[[], BookView]) -> BookView:
        """The view if it has this stamp of the book's people, else read and kept.

        Where roster and pairs are what they were it is the earlier view: what was built on it,
        an index of its names for one, still holds.
        """
        kept = self._kept.get(book)
        if kept is None or kept[0] != stamp:
            fresh = read()
            same = kept is not None and kept[1].has_same_people_as(fresh)
            kept = self._kept[book] = (stamp, kept[1] if kept is not None and same else fresh)
        self._kept.move_to_end(book)
        while len(self._kept) > CACHED_BOOKS:
            self._kept.popitem(last=False)
        return kept[1]

    def evidence(self, book: int) -> BookEvidence | None:
        """What was last kept of the book's evidence, of whatever version."""
        return self._evidence.get(book)

    def keep_evidence(self, book: int, evidence: BookEvidence) -> None:
        """Only of a turn that has not written: what it read stands in the database for good."""
        known = self._evidence.pop(book, None)
        self._claims -= 0 if known is None else known.claims
        self._evidence[book] = evidence
        self._claims += evidence.claims
        while len(self._evidence) > CACHED_BOOKS or (
            self._claims > KEPT_CLAIMS and len(self._evidence) > 1
        ):
            _, left = self._evidence.popitem(last=False)
            self._claims -= left.claims

    def recall(self, book: int, stamp: int, key: Hashable, read: Callable[[], Read]) -> Read:
        """Something else of the book (a match, its log) with this stamp of its parts, else read."""
        kept = self._recalled.setdefault(book, Recent(KEPT_READ))
        self._recalled.move_to_end(book)
        while len(self._recalled) > CACHED_BOOKS:
            self._recalled.popitem(last=False)
        return kept.recall(key, (stamp,), read)
