"""Train the claim model on the note writers' notes (over half an hour; needs the `train` extra).

Run from anywhere: python tests/train/train_claims.py
With `--keep-out NAME,...` it trains without these writers, ships nothing, and prints how their
notes and the open voices' are read when claims are made from several chances.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from claim_examples import (  # noqa: E402
    Taught,
    apart_from,
    claim_files,
    claims_digest,
    rows_of,
    scored_notes,
    taught_by,
)
from claim_training import train  # noqa: E402
from note_scores import (  # noqa: E402
    LATER_VOICES,
    can_be_scored,
    notes_of,
    reader_of,
    score_rows,
)
from voices import OPEN_VOICES  # noqa: E402

from bot.chat.claim_model import ClaimModel, dump_claim_model  # noqa: E402

TARGET = ROOT / "bot" / "chat" / "data" / "claims.npz"
MADE_FROM = (0.4, 0.5, 0.6, 0.7, 0.8)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--keep-out", default="", metavar="NAME,...")
    given = parser.parse_args()
    kept_out = [name for name in given.keep_out.split(",") if name]
    notes = [
        note for path in claim_files() if path.stem not in kept_out for note in taught_by(path)
    ]
    learned = apart_from(notes, scored_notes())
    model = train(learned, recipe(notes, learned))
    if kept_out:
        tell(model, kept_out)
        return
    TARGET.write_bytes(dump_claim_model(model))
    sys.stdout.write(f"{TARGET.name}: {TARGET.stat().st_size:,} bytes\n")


def recipe(notes: Sequence[Taught], learned: Sequence[Taught]) -> dict[str, object]:
    return {
        "sources": claims_digest(),
        "trained_on": "tests/train/note_writers, later_notes, paired_notes and hard_notes",
        "notes": len(learned),
        "near_duplicates_left_out": len(notes) - len(learned),
        "command": "python tests/train/train_claims.py",
    }


def tell(model: ClaimModel, kept_out: Sequence[str]) -> None:
    """How notes are read that the model has not seen, voice by voice and chance by chance."""
    groups = {
        "open": [note for voice in OPEN_VOICES for note in notes_of(voice)],
        "later": [note for voice in LATER_VOICES for note in notes_of(voice)],
        **{path.stem: rows_of(path) for path in claim_files() if path.stem in kept_out},
    }
    for name, rows in groups.items():
        scorable = [row for row in rows if can_be_scored(row)]
        for chance in MADE_FROM:
            figures = score_rows(scorable, reader_of(model, chance))
            sys.stdout.write(f"{name:8} from {chance}: {figures}\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main()
