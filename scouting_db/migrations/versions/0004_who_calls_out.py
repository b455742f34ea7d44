"""Pairs settle who says "out" and "bounce" too."""

from __future__ import annotations

from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

_BEFORE = (
    "middle",
    "lobs",
    "sides",
    "stack",
    "first_server",
    "poach_signal",
    "timeout_caller",
)
_NEW = "out_caller"


def _allow(*keys: str) -> None:
    listed = ", ".join(f"'{key}'" for key in keys)
    with op.batch_alter_table("agreement", schema=None) as batch_op:
        batch_op.drop_constraint(op.f("ck_agreement_key"), type_="check")
        batch_op.create_check_constraint(op.f("ck_agreement_key"), f"key IN ({listed})")


def upgrade() -> None:
    _allow(*_BEFORE, _NEW)


def downgrade() -> None:
    op.execute(f"DELETE FROM agreement WHERE key = '{_NEW}'")
    _allow(*_BEFORE)
