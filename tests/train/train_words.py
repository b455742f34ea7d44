"""Gather the everyday words that practice writers used, so that none is taken for a name mistyped.

Run from anywhere: python tests/train/train_words.py
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from seen_words import seen_words  # noqa: E402

TARGET = ROOT / "bot" / "chat" / "data" / "seen_words.txt"


def main() -> None:
    found = seen_words()
    TARGET.write_text("\n".join(found) + "\n", encoding="utf-8")
    sys.stdout.write(f"{TARGET.name}: {len(found):,} words, {TARGET.stat().st_size:,} bytes\n")


if __name__ == "__main__":
    main()
