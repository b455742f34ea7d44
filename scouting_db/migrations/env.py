"""What Alembic runs for every command: the given connection, never one of its own."""

from __future__ import annotations

from alembic import context
from sqlalchemy import Connection

import scouting_db.models  # noqa: F401 - fills the metadata
from scouting_db.base import Base


def run(connection: Connection) -> None:
    """Run the migrations in the caller's transaction."""
    context.configure(
        connection=connection,
        target_metadata=Base.metadata,
        render_as_batch=True,
        compare_type=True,
        # With our own BEGIN, SQLite rolls back DDL like anything else.
        transactional_ddl=True,
    )
    with context.begin_transaction():
        context.run_migrations()


run(context.config.attributes["connection"])
