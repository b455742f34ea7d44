"""The demo's notes read anew, and the file of their readings that the demo book comes with.

Run from the checkout: `python tests/support/demo_notes.py` writes the file.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT)]

from bot.chat.answers.notes import stored  # noqa: E402
from bot.demo_book import demo_store  # noqa: E402
from bot.demo_book.note_readings import FILE, read_now  # noqa: E402
from scouting_db.values import Micros, NewObservation, PlayerRow  # noqa: E402

KEPT = ROOT / "bot" / "demo_book" / FILE


def read_anew() -> str:
    """What the file should hold: for each note what it says of whom, players by name."""
    found: dict[str, list[dict[str, Any]]] = {}

    def keeping(text: str, roster: Sequence[PlayerRow]) -> tuple[NewObservation, ...]:
        names = {row.player: row.name for row in roster}
        read = read_now(text, roster)
        found[text] = [
            plain | {"player": names[one.player]}
            for plain, one in zip(stored(read), read, strict=True)
        ]
        return read

    demo_store(now=Micros(0), read=keeping).close()
    return "{\n" + ",\n".join(_entry(text, said) for text, said in found.items()) + "\n}\n"


def _entry(text: str, said: Sequence[dict[str, Any]]) -> str:
    lines = ",\n".join(f"  {json.dumps(one, ensure_ascii=False)}" for one in said)
    return f" {json.dumps(text, ensure_ascii=False)}: [\n{lines}\n ]"


if __name__ == "__main__":
    KEPT.write_text(read_anew(), encoding="utf-8")
