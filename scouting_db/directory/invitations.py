"""One-time invitations to a book: made by an editor, used once, and only by who has the code.

A code is a handle, by which the row is found, and a secret, of which only a hash is stored and
which is compared in constant time. Wrong codes are counted per invitation and per person.
"""

from __future__ import annotations

import hmac
from collections.abc import Callable
from enum import StrEnum
from hashlib import sha256
from secrets import choice
from typing import Any

from sqlalchemy import bindparam, delete, insert, or_, select, update

from knowledge.dataclass import dataclass
from knowledge.regex import regex
from scouting_db.conflicts import insert_or_replace
from scouting_db.directory.members import Members
from scouting_db.tables import book, invitation, wrong_code
from scouting_db.values import BookId, Micros, PersonId, Role

ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
"""Crockford's base 32: no I, L, O or U, so that a code read aloud or copied by hand survives."""

HANDLE_LENGTH = 5
SECRET_LENGTH = 16
"""80 random bits, out of reach of guessing even without the limits on attempts."""

GOOD_FOR_MICROS = 3 * 86_400_000_000
"""Three days: a partner answers by then, and a forgotten message is no key for long."""

MOST_OPEN = 10
"""Open invitations of one book; a further one closes the oldest."""

MOST_ATTEMPTS = 5
"""Wrong secrets that close an invitation, and wrong codes that make a person wait."""

WAIT_MICROS = 3_600_000_000
"""How long after its first wrong code a person's count begins anew: an hour."""

_NO_WORD = frozenset("23456789")
"""Every secret has one of these, so that no words with dashes between them are read as a code."""

_READ_ALIKE = str.maketrans({"O": "0", "I": "1", "L": "1", "-": ""})
_CODE = regex(rf"[{ALPHABET}]{{{HANDLE_LENGTH + SECRET_LENGTH}}}")
_LOOKS_LIKE_ONE = regex(r"[0-9A-Za-z]{5}(?:-?[0-9A-Za-z]{4}){4}")

_OF_HANDLE = invitation.c.handle == bindparam("wanted")
_FIND = (
    select(invitation, book.c.name.label("book_name"))
    .join_from(invitation, book, book.c.book_id == invitation.c.book_id)
    .where(_OF_HANDLE)
)
_ADD = insert(invitation)
_USE = (
    update(invitation)
    .where(
        _OF_HANDLE,
        invitation.c.used_at.is_(None),
        invitation.c.expires_at > bindparam("now"),
        invitation.c.attempts < MOST_ATTEMPTS,
    )
    .values(used_at=bindparam("now"))
)
_COUNT_WRONG = update(invitation).where(_OF_HANDLE).values(attempts=invitation.c.attempts + 1)
_OF_BOOK = invitation.c.book_id == bindparam("book")
_SPENT = or_(
    invitation.c.used_at.is_not(None),
    invitation.c.expires_at <= bindparam("now"),
    invitation.c.attempts >= MOST_ATTEMPTS,
)
_DROP_SPENT = delete(invitation).where(_OF_BOOK, _SPENT)
_OPEN = (
    select(invitation.c.handle)
    .where(_OF_BOOK, ~_SPENT)
    .order_by(invitation.c.expires_at.desc(), invitation.c.handle)
)
_DROP = delete(invitation).where(_OF_HANDLE)
_CANCEL = delete(invitation).where(_OF_BOOK)
_GUESSES = select(wrong_code.c.since, wrong_code.c["count"].label("wrong")).where(
    wrong_code.c.person_id == bindparam("person")
)
_NO_HASH = sha256(b"").digest()


class Redeemed(StrEnum):
    """What came of a code."""

    JOINED = "joined"
    ALREADY = "already"
    REFUSED = "refused"
    TOO_MANY = "too_many"


@dataclass(frozen=True, slots=True, kw_only=True)
class Redemption:
    """The outcome, and the book with the role in it where the person is now a member."""

    outcome: Redeemed
    book: BookId | None = None
    name: str = ""
    role: Role | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Code:
    handle: str
    secret: str

    @property
    def hash(self) -> bytes:
        return sha256(f"{self.handle}{self.secret}".encode()).digest()


def code_in(text: str) -> str | None:
    """The code that the whole text is, however it was typed; None where it is no code."""
    typed = text.strip()
    if not _LOOKS_LIKE_ONE.fullmatch(typed):
        return None
    plain = typed.upper().translate(_READ_ALIKE)
    return plain if _NO_WORD.intersection(typed) and _CODE.fullmatch(plain) else None


class Invitations(Members):
    """Making, cancelling and using invitations."""

    def invite(
        self,
        book: BookId,
        role: Role,
        *,
        by: PersonId,
        now: Micros,
        letter: Callable[[str], str] = choice,
    ) -> str:
        """A new code, shown this once: only its hash is kept. `letter` draws from the alphabet."""
        self._connection.execute(_DROP_SPENT, {"book": book, "now": now})
        still_open = self._connection.execute(_OPEN, {"book": book, "now": now}).scalars().all()
        for handle in still_open[MOST_OPEN - 1 :]:
            self._connection.execute(_DROP, {"wanted": handle})
        code = _Code(handle=self._free_handle(letter), secret=_secret(letter))
        self._connection.execute(
            _ADD,
            {
                "handle": code.handle,
                "secret_hash": code.hash,
                "book_id": book,
                "role": role.value,
                "made_by": by,
                "expires_at": now + GOOD_FOR_MICROS,
                "attempts": 0,
            },
        )
        return _shown(code)

    def _free_handle(self, letter: Callable[[str], str]) -> str:
        while True:
            handle = _drawn(HANDLE_LENGTH, letter)
            if self._connection.execute(_FIND, {"wanted": handle}).one_or_none() is None:
                return handle

    def open_invitations(self, book: BookId, *, now: Micros) -> int:
        """How many codes of the book would still be taken."""
        return len(self._connection.execute(_OPEN, {"book": book, "now": now}).all())

    def cancel_invitations(self, book: BookId) -> None:
        """No code of the book is taken any more."""
        self._connection.execute(_CANCEL, {"book": book})

    def redeem(self, code: str, person: PersonId, *, now: Micros) -> Redemption:
        """Use a code (`code_in`). Why one is refused is not told apart: used, expired, unknown."""
        if self._waits(person, now):
            return Redemption(outcome=Redeemed.TOO_MANY)
        typed = _Code(handle=code[:HANDLE_LENGTH], secret=code[HANDLE_LENGTH:])
        row = self._connection.execute(_FIND, {"wanted": typed.handle}).one_or_none()
        # Compared in any case, so that an unknown handle takes as long as a wrong secret.
        is_right = hmac.compare_digest(_NO_HASH if row is None else row.secret_hash, typed.hash)
        if row is None or not is_right:
            self._count_wrong(person, None if row is None else typed.handle, now)
            return Redemption(outcome=Redeemed.REFUSED)
        return self._join(row, person, now)

    def _join(self, row: Any, person: PersonId, now: Micros) -> Redemption:
        book, role = BookId(row.book_id), Role(row.role)
        now_has = self.role(book, person)
        if now_has in (Role.EDITOR, role):
            # Not used up: it may have been meant for somebody else.
            return Redemption(outcome=Redeemed.ALREADY, book=book, name=row.book_name, role=now_has)
        is_valid = self.role(book, PersonId(row.made_by)) is Role.EDITOR
        used = is_valid and self._connection.execute(_USE, {"wanted": row.handle, "now": now})
        if not used or used.rowcount == 0:
            self._count_wrong(person, None, now)
            return Redemption(outcome=Redeemed.REFUSED)
        self.add_member(book, person, role)
        return Redemption(outcome=Redeemed.JOINED, book=book, name=row.book_name, role=role)

    def _waits(self, person: PersonId, now: Micros) -> bool:
        count, _ = self._guesses(person, now)
        return count >= MOST_ATTEMPTS

    def _guesses(self, person: PersonId, now: Micros) -> tuple[int, Micros]:
        """Wrong codes of the running hour, and when it began."""
        found = self._connection.execute(_GUESSES, {"person": person}).one_or_none()
        if found is None or found.since + WAIT_MICROS <= now:
            return 0, now
        return int(found.wrong), Micros(found.since)

    def _count_wrong(self, person: PersonId, handle: str | None, now: Micros) -> None:
        if handle is not None:
            self._connection.execute(_COUNT_WRONG, {"wanted": handle})
        count, since = self._guesses(person, now)
        self._connection.execute(
            insert_or_replace(self._connection, wrong_code, "person_id"),
            {"person_id": person, "since": since, "count": count + 1},
        )


def _drawn(length: int, letter: Callable[[str], str]) -> str:
    return "".join(letter(ALPHABET) for _ in range(length))


def _secret(letter: Callable[[str], str]) -> str:
    """Drawn again where it lacks a sign that no word has, about once in two hundred times."""
    while True:
        drawn = _drawn(SECRET_LENGTH, letter)
        if _NO_WORD.intersection(drawn):
            return drawn


def _shown(code: _Code) -> str:
    """Groups that can be read aloud; letters, digits and dashes, as a deep link allows."""
    fours = [code.secret[at : at + 4] for at in range(0, SECRET_LENGTH, 4)]
    return "-".join((code.handle, *fours))
