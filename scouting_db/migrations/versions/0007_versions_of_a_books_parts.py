"""The version at which each part of a book was last written, so that only that part is read anew.

0 is right for every book there is: what is kept by these lives in a process's memory only.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None

_PARTS = ("people", "notes", "matches", "log", "settled")


def upgrade() -> None:
    for part in _PARTS:
        column = sa.Column(f"{part}_version", sa.BigInteger(), server_default="0", nullable=False)
        op.add_column("book", column)


def downgrade() -> None:
    for part in _PARTS:
        op.drop_column("book", f"{part}_version")
