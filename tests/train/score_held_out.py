"""Score the two voices nobody reads, once, and write date, commit and figures into the log.

Run from anywhere: python tests/train/score_held_out.py
Every run is a look, and looks are few: each adds a line to tests/cases/held_out_log.md.
"""

from __future__ import annotations

import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from topic_examples import voice_examples  # noqa: E402
from topic_figures import score  # noqa: E402

from bot.chat.topic_model import the_model  # noqa: E402

HELD_OUT = ("ilse", "kay")
LOG = ROOT / "tests" / "cases" / "held_out_log.md"
HEAD = """# Looks at the held-out voices

Two voices, `ilse` and `kay`, are never read: no phrase, lexicon form or feature was chosen by
looking at them. `python tests/train/score_held_out.py` scores their questions with the shipped
model and adds a line here. At once: answered with the right topic. Shown: the right topic is the
answer or among the buttons (two beside an answer, three when we ask). Misled: answered wrongly
with the right topic not shown. Either: at once, counting the pairs of topics_either.toml.

| date | commit | voice | n | at once | shown | misled | asked | either |
|---|---|---|---|---|---|---|---|---|
"""


def main() -> None:
    commit = subprocess.run(
        ["git", "-C", str(ROOT), "describe", "--always", "--dirty"],
        capture_output=True,
        text=True,
        check=True,
    ).stdout.strip()
    today = datetime.now(UTC).date().isoformat()
    lines = []
    for voice in HELD_OUT:
        found = score(voice_examples(voice), the_model())
        lines.append(f"| {today} | {commit} | {voice} | {found.row()} |\n")
    if not LOG.exists():
        LOG.write_text(HEAD, encoding="utf-8")
    with LOG.open("a", encoding="utf-8") as log:
        log.writelines(lines)
    sys.stdout.writelines(lines)


if __name__ == "__main__":
    main()
