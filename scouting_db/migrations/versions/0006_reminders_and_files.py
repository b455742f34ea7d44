"""Reminders know their chat and how long before; a reply may be a file."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None

_KINDS = ("send", "photo", "edit")
_FILE = "document"
_ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
_UNCLAIMED = sa.text("claimed_at IS NULL")


def _kinds(*kinds: str) -> None:
    listed = ", ".join(f"'{kind}'" for kind in kinds)
    with op.batch_alter_table("outbox", schema=None) as batch_op:
        batch_op.drop_constraint(op.f("ck_outbox_kind"), type_="check")
        batch_op.create_check_constraint(op.f("ck_outbox_kind"), f"kind IN ({listed})")


def _make(*own: sa.Column[object], unique: str) -> None:
    """The table with its columns of either version. No version before this one wrote a row."""
    op.drop_table("reminder")
    op.create_table(
        "reminder",
        sa.Column("book_id", _ID, nullable=False),
        sa.Column("reminder_id", _ID, autoincrement=False, nullable=False),
        sa.Column("match_id", _ID, nullable=False),
        *own,
        sa.Column("zone", sa.String(64), nullable=False),
        sa.Column("due_utc", sa.BigInteger(), nullable=False),
        sa.Column("claimed_at", sa.BigInteger(), nullable=True),
        sa.ForeignKeyConstraint(
            ["book_id", "match_id"],
            ["match.book_id", "match.match_id"],
            name=op.f("fk_reminder_book_id_match_id_match"),
        ),
        sa.ForeignKeyConstraint(
            ["book_id"], ["book.book_id"], name=op.f("fk_reminder_book_id_book"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("book_id", "reminder_id", name=op.f("pk_reminder")),
        sa.UniqueConstraint(
            "book_id",
            "match_id",
            unique,
            name=op.f(f"uq_reminder_book_id_match_id_{unique}"),
        ),
    )


def upgrade() -> None:
    _kinds(*_KINDS, _FILE)
    _make(
        sa.Column(
            "chat_id",
            _ID,
            sa.ForeignKey("chat.chat_id", name=op.f("fk_reminder_chat_id_chat")),
            nullable=False,
        ),
        sa.Column("minutes_before", sa.Integer(), nullable=False),
        sa.Column("starts_wall", sa.String(64), nullable=False),
        unique="chat_id",
    )
    op.create_index(
        "ix_reminder_due",
        "reminder",
        ["chat_id", "due_utc"],
        sqlite_where=_UNCLAIMED,
        postgresql_where=_UNCLAIMED,
    )


def downgrade() -> None:
    _make(
        sa.Column("kind", sa.String(64), nullable=False),
        sa.Column("local_wall", sa.String(64), nullable=False),
        unique="kind",
    )
    op.create_index("ix_reminder_due", "reminder", ["due_utc"])
    op.execute(f"DELETE FROM outbox WHERE kind = '{_FILE}'")
    _kinds(*_KINDS)
