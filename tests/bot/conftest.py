"""Conversations to take part in: with the demo book, or with an empty store on both databases."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from databases import database_url, migrated, store
from talk import Talk, demo_talk

from scouting_db.session import Store

__all__ = ["database_url", "migrated", "store"]


@pytest.fixture
def demo() -> Iterator[Talk]:
    """The demo book's user."""
    talk = demo_talk()
    yield talk
    talk.store.close()


@pytest.fixture
def fresh(store: Store) -> Talk:
    """Somebody who has just started, in a private chat, on either database."""
    return Talk(store=store, chat="private", user="mira", name="Mira")
