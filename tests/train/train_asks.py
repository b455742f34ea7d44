"""Train the model that tells a question without a mark from a note.

Run from anywhere: python tests/train/train_asks.py
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from asks_training import train_asks  # noqa: E402


def main() -> None:
    target = ROOT / "bot" / "chat" / "data" / "asks.npz"
    model = train_asks()
    target.write_bytes(model.linear.packed(model.recipe))
    sys.stdout.write(f"{target.name}: {target.stat().st_size:,} bytes\n")


if __name__ == "__main__":
    main()
