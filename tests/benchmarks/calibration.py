"""Do the intervals cover what they claim? Simulated opponents, doubts halved and doubled beside.

Run from the checkout: `python tests/benchmarks/calibration.py [--players 2000]`; some minutes.
"""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from evidence_simulation import table


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--players", type=int, default=2000)
    for line in table(players=parser.parse_args().players):
        sys.stdout.write(f"{line}\n")


if __name__ == "__main__":
    main()
