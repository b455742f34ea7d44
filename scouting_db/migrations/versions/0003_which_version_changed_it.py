"""The book's version that last changed a note or a match, so that only what changed is read."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None

_TABLES = ("note", "match")


def upgrade() -> None:
    for table in _TABLES:
        with op.batch_alter_table(table, schema=None) as batch_op:
            batch_op.add_column(
                sa.Column("changed", sa.BigInteger(), server_default="0", nullable=False)
            )
            batch_op.create_index(f"ix_{table}_changed", ["book_id", "changed"], unique=False)


def downgrade() -> None:
    for table in _TABLES:
        with op.batch_alter_table(table, schema=None) as batch_op:
            batch_op.drop_index(f"ix_{table}_changed")
            batch_op.drop_column("changed")
