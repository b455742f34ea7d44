"""What Alembic runs for every command: the given connection, never one of its own."""

from __future__ import annotations

from typing import Literal

from alembic import context
from sqlalchemy import Connection

import scouting_db.models  # noqa: F401 - fills the metadata
from scouting_db.base import Base, Typed


def as_stored(kind: str, item: object, _context: object) -> str | Literal[False]:
    """A draft names the column's own type, so that old migrations do not follow our code."""
    return "sa.Text()" if kind == "type" and isinstance(item, Typed) else False


def run(connection: Connection) -> None:
    """Run the migrations in the caller's transaction."""
    context.configure(
        connection=connection,
        target_metadata=Base.metadata,
        render_as_batch=True,
        compare_type=True,
        # With our own BEGIN, SQLite rolls back DDL like anything else.
        transactional_ddl=True,
        render_item=as_stored,
    )
    with context.begin_transaction():
        context.run_migrations()


run(context.config.attributes["connection"])
