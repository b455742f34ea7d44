"""Conversations to take part in: with the demo book, or with an empty store."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from databases import database_url, migrated, store
from talk import Talk, demo_talk, fresh_talk

from scouting_db.session import Store

__all__ = ["database_url", "migrated", "store"]


@pytest.fixture
def demo() -> Iterator[Talk]:
    """The demo book's user."""
    talk = demo_talk()
    yield talk
    talk.store.close()


@pytest.fixture
def fresh() -> Iterator[Talk]:
    """Somebody who has just started, in a private chat."""
    talk = fresh_talk()
    yield talk
    talk.store.close()


@pytest.fixture
def fresh_anywhere(store: Store) -> Talk:
    """The same on either database, where it matters how things are kept.

    What a message is read as is the same on both, and a database of its own costs a third of a
    second.
    """
    return Talk(store=store, chat="private", user="mira", name="Mira")
