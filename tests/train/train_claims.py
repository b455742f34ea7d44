"""Train the claim model on the note writers' notes, and print what its threshold costs.

Run from anywhere: python tests/train/train_claims.py
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from claim_training import kept_out, taught, train_shipped  # noqa: E402

from bot.chat.claim_model import dump_claim_model  # noqa: E402


def main() -> None:
    given = taught()
    model = train_shipped(given, kept_out(given))
    target = ROOT / "bot" / "chat" / "data" / "claims.npz"
    target.write_bytes(dump_claim_model(model))
    sys.stdout.write(f"{target.name}: {target.stat().st_size:,} bytes\n")


if __name__ == "__main__":
    main()
