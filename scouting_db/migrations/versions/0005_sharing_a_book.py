"""Invitations are found by a handle, wrong codes are counted, and a chat may change its book.

Nothing wrote invitations before, so their table is made anew.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None

_ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _drop_invitations() -> None:
    for index in sa.inspect(op.get_bind()).get_indexes("invitation"):
        op.drop_index(str(index["name"]), table_name="invitation")
    op.drop_table("invitation")


def _of_book() -> sa.ForeignKeyConstraint:
    name = op.f("fk_invitation_book_id_book")
    return sa.ForeignKeyConstraint(["book_id"], ["book.book_id"], name=name, ondelete="CASCADE")


def _role() -> sa.CheckConstraint:
    return sa.CheckConstraint("role IN ('editor', 'reader')", name=op.f("ck_invitation_role"))


def _of_person(table: str, column: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint(
        [column],
        ["person.person_id"],
        name=op.f(f"fk_{table}_{column}_person"),
        ondelete="CASCADE",
    )


def upgrade() -> None:
    _drop_invitations()
    op.create_table(
        "invitation",
        sa.Column("handle", sa.String(length=64), nullable=False),
        sa.Column("secret_hash", sa.LargeBinary(length=32), nullable=False),
        sa.Column("book_id", _ID, nullable=False),
        sa.Column("role", sa.String(length=64), nullable=False),
        sa.Column("made_by", _ID, nullable=False),
        sa.Column("expires_at", sa.BigInteger(), nullable=False),
        sa.Column("used_at", sa.BigInteger(), nullable=True),
        sa.Column("attempts", sa.Integer(), nullable=False),
        _role(),
        _of_book(),
        _of_person("invitation", "made_by"),
        sa.PrimaryKeyConstraint("handle", name=op.f("pk_invitation")),
    )
    for column in ("book_id", "made_by"):
        op.create_index(op.f(f"ix_invitation_{column}"), "invitation", [column], unique=False)
    op.create_table(
        "wrong_code",
        sa.Column("person_id", _ID, nullable=False),
        sa.Column("since", sa.BigInteger(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        _of_person("wrong_code", "person_id"),
        sa.PrimaryKeyConstraint("person_id", name=op.f("pk_wrong_code")),
    )
    with op.batch_alter_table("account", schema=None) as batch_op:
        batch_op.add_column(sa.Column("name", sa.String(length=64), nullable=True))
    with op.batch_alter_table("chat", schema=None) as batch_op:
        batch_op.add_column(
            sa.Column("book_since", sa.BigInteger(), server_default="0", nullable=False)
        )


def downgrade() -> None:
    with op.batch_alter_table("chat", schema=None) as batch_op:
        batch_op.drop_column("book_since")
    with op.batch_alter_table("account", schema=None) as batch_op:
        batch_op.drop_column("name")
    op.drop_table("wrong_code")
    _drop_invitations()
    op.create_table(
        "invitation",
        sa.Column("token_hash", sa.LargeBinary(length=32), nullable=False),
        sa.Column("book_id", _ID, nullable=False),
        sa.Column("role", sa.String(length=64), nullable=False),
        sa.Column("expires_at", sa.BigInteger(), nullable=False),
        sa.Column("used_at", sa.BigInteger(), nullable=True),
        sa.Column("attempts", sa.Integer(), nullable=False),
        _role(),
        _of_book(),
        sa.PrimaryKeyConstraint("token_hash", name=op.f("pk_invitation")),
    )
    op.create_index(op.f("ix_invitation_book_id"), "invitation", ["book_id"], unique=False)
