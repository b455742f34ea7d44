"""What turns have read of books, kept for the turns to come on the same store."""

from __future__ import annotations

from weakref import WeakKeyDictionary

from sqlalchemy import Connection, Engine, event

from bot.chat.book_views import BookViews

_VIEWS: WeakKeyDictionary[Engine, BookViews] = WeakKeyDictionary()
"""Views of books per open store, since two stores may number their books alike."""


def views_of(connection: Connection) -> BookViews:
    """The views that this store's turns share; a rollback of any of them empties them."""
    found = _VIEWS.get(connection.engine)
    if found is None:
        found = _VIEWS[connection.engine] = BookViews()
        event.listen(connection.engine, "rollback", _forget_views)
    return found


def _forget_views(connection: Connection) -> None:
    """A transaction that is rolled back gives its books' versions back, and others will use them
    for something else: what later turns of it read at those versions never stood.
    """
    _VIEWS[connection.engine] = BookViews()
