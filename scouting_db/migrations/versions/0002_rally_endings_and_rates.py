"""How a rally ended, and what it says of the players' rates."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None

_CLOSED = {
    "ending": ("winner", "forced_error", "unforced_error"),
    "stroke": (
        "serve",
        "return",
        "third",
        "drive",
        "drop",
        "dink",
        "speed_up",
        "counter",
        "reset",
        "volley",
        "overhead",
        "lob",
    ),
    "wing": ("forehand", "backhand"),
}


def _one_of(column: str, values: tuple[str, ...]) -> str:
    return f"{column} IN ({', '.join(map(repr, values))})"


def upgrade() -> None:
    op.create_table(
        "rally_rate",
        sa.Column("book_id", sa.BigInteger().with_variant(sa.Integer(), "sqlite"), nullable=False),
        sa.Column(
            "match_id",
            sa.BigInteger().with_variant(sa.Integer(), "sqlite"),
            autoincrement=False,
            nullable=False,
        ),
        sa.Column(
            "n",
            sa.BigInteger().with_variant(sa.Integer(), "sqlite"),
            autoincrement=False,
            nullable=False,
        ),
        sa.Column(
            "player_id",
            sa.BigInteger().with_variant(sa.Integer(), "sqlite"),
            autoincrement=False,
            nullable=False,
        ),
        sa.Column("rate", sa.String(length=64), nullable=False),
        sa.Column("made", sa.Boolean(), nullable=False),
        sa.CheckConstraint(
            "rate IN ('serve_in', 'return_in', 'return_deep', 'third_forward', 'steady')",
            name=op.f("ck_rally_rate_rate"),
        ),
        sa.ForeignKeyConstraint(
            ["book_id", "match_id", "n"],
            ["entry.book_id", "entry.match_id", "entry.n"],
            name=op.f("fk_rally_rate_book_id_match_id_n_entry"),
        ),
        sa.ForeignKeyConstraint(
            ["book_id", "player_id"],
            ["player.book_id", "player.player_id"],
            name=op.f("fk_rally_rate_book_id_player_id_player"),
        ),
        sa.ForeignKeyConstraint(
            ["book_id"],
            ["book.book_id"],
            name=op.f("fk_rally_rate_book_id_book"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint(
            "book_id", "match_id", "n", "player_id", "rate", name=op.f("pk_rally_rate")
        ),
    )
    with op.batch_alter_table("rally_rate", schema=None) as batch_op:
        batch_op.create_index(
            "ix_rally_rate_player", ["book_id", "player_id", "rate"], unique=False
        )

    with op.batch_alter_table("rally", schema=None) as batch_op:
        batch_op.add_column(sa.Column("stroke", sa.String(length=64), nullable=True))
        batch_op.add_column(sa.Column("wing", sa.String(length=64), nullable=True))
        for column, values in _CLOSED.items():
            batch_op.create_check_constraint(op.f(f"ck_rally_{column}"), _one_of(column, values))


def downgrade() -> None:
    with op.batch_alter_table("rally", schema=None) as batch_op:
        for column in _CLOSED:
            batch_op.drop_constraint(op.f(f"ck_rally_{column}"), type_="check")
        batch_op.drop_column("wing")
        batch_op.drop_column("stroke")

    with op.batch_alter_table("rally_rate", schema=None) as batch_op:
        batch_op.drop_index("ix_rally_rate_player")

    op.drop_table("rally_rate")
