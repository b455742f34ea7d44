"""Stores for tests: a SQLite file, and a schema of its own on the PostgreSQL that .ci/run starts.

Use the fixture `store` (both databases) by importing it in a conftest.py or test module:
`from databases import store  # noqa: F401`.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest
from sqlalchemy import create_engine, text
from sqlalchemy.engine import make_url

from scouting_db.session import Store, open_store

POSTGRES = "SEAMWISE_TEST_POSTGRES"

BOTH = [
    pytest.param("sqlite", id="sqlite"),
    pytest.param("postgresql", id="postgresql", marks=pytest.mark.postgres),
]


@pytest.fixture(params=BOTH)
def database_url(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The URL of an empty database that nobody else uses."""
    if request.param == "sqlite":
        yield f"sqlite:///{tmp_path / 'book.sqlite'}"
    else:
        yield from fresh_postgresql()


@pytest.fixture
def store(database_url: str) -> Iterator[Store]:
    """An open store with nothing in it."""
    opened = open_store(database_url)
    yield opened
    opened.close()


def fresh_postgresql() -> Iterator[str]:
    """The URL of a new database on the test server, dropped afterwards."""
    server = os.environ.get(POSTGRES)
    if not server:
        pytest.skip(f"{POSTGRES} is not set: no PostgreSQL server to test on")
    name = f"seamwise_{uuid4().hex}"
    engine = create_engine(server, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.execute(text(f"CREATE DATABASE {name} TEMPLATE template0"))
    yield make_url(server).set(database=name).render_as_string(hide_password=False)
    with engine.connect() as connection:
        connection.execute(text(f"DROP DATABASE {name} WITH (FORCE)"))
    engine.dispose()
