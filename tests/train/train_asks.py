"""Train the model that tells a question without a mark from a note.

Run from anywhere: python tests/train/train_asks.py
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from asks_training import train_asks  # noqa: E402

from bot.chat.asks_model import dump_asks_model  # noqa: E402


def main() -> None:
    target = ROOT / "bot" / "chat" / "data" / "asks.npz"
    target.write_bytes(dump_asks_model(train_asks()))
    sys.stdout.write(f"{target.name}: {target.stat().st_size:,} bytes\n")


if __name__ == "__main__":
    main()
