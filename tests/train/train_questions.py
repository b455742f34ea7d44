"""Train the question network on the practice writers (about 10 minutes; needs the `train` extra).

Run from anywhere: python tests/train/train_questions.py
Then train the topics, whose curves it moves: python tests/train/train_topics.py
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from question_training import train  # noqa: E402

from bot.chat.question_network import dump_question_network  # noqa: E402

TARGET = ROOT / "bot" / "chat" / "data" / "questions.npz"


def main() -> None:
    TARGET.write_bytes(dump_question_network(train()))
    sys.stdout.write(f"{TARGET.name}: {TARGET.stat().st_size:,} bytes\n")


if __name__ == "__main__":
    main()
