"""Train the models of entries and print how they do on writers left out.

Run from anywhere: python tests/train/train_entries.py [rules] [symptoms] [weather]
"""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from entry_figures import Outcome, all_left_out, line_of  # noqa: E402
from entry_training import Taught, train  # noqa: E402

from knowledge.reading.entry_model import Kind, packed_model  # noqa: E402


def main(kinds: list[str]) -> None:
    for kind in map(Kind, kinds or list(Kind)):
        target = ROOT / "knowledge" / "reading" / f"{kind}.npz"
        target.write_bytes(packed_model(train(Taught.of(kind))))
        sys.stdout.write(f"{target.name}: {target.stat().st_size:,} bytes\n")
        found = all_left_out(kind)
        for writer, outcomes in found.items():
            sys.stdout.write(f"{kind:9}{writer:9}{line_of(outcomes)}\n")
        sys.stdout.write(f"{kind:9}{'all':9}{line_of(sum(found.values(), Counter[Outcome]()))}\n")


if __name__ == "__main__":
    main(sys.argv[1:])
