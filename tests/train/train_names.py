"""Train the weights of names that are supposed, and print how they do on writers left out.

Run from anywhere: python tests/train/train_names.py
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from name_figures import left_out, total  # noqa: E402
from name_training import everybody, trained, written  # noqa: E402

TARGET = ROOT / "scouting_db" / "data" / "name_weights.json"


def main() -> None:
    TARGET.write_text(written(trained(everybody())), encoding="utf-8")
    sys.stdout.write(f"{TARGET.name}: {TARGET.stat().st_size:,} bytes\n")
    found = left_out()
    for writer, told in found.items():
        sys.stdout.write(f"{writer:14}{told.row()}\n")
    sys.stdout.write(f"{'all':14}{total(list(found.values())).row()}\n")


if __name__ == "__main__":
    main()
