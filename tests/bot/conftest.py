"""Conversations to take part in: with the demo book, or with an empty store."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from databases import database_url, migrated, store
from talk import Talk, demo_talk, fresh_talk

from scouting_db.session import Store

__all__ = ["database_url", "migrated", "store"]

HERE = Path(__file__).parent


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Of a test with many cases one runs on PostgreSQL, all of them in a long run.

    Its cases differ in what is said; what is kept of it goes through the same statements.
    """
    if config.getoption("--hypothesis-profile", None) == "long":
        return
    first: dict[str, str] = {}
    there = [one for one in items if _is_on_postgresql(one)]
    for each in there:
        test = each.nodeid.partition("[")[0]
        first[test] = min(first.get(test, each.nodeid), each.nodeid)
    gone = {one.nodeid for one in there} - {*first.values()}
    config.hook.pytest_deselected(items=[one for one in there if one.nodeid in gone])
    items[:] = [one for one in items if one.nodeid not in gone]


def _is_on_postgresql(item: pytest.Item) -> bool:
    return HERE in item.path.parents and item.get_closest_marker("postgres") is not None


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
