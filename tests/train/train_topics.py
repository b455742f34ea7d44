"""Train the topic model on our phrases and the open voices, and print how it does out of voice.

Run from anywhere: python tests/train/train_topics.py
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from topic_figures import HEADER, all_voices_figures, out_of_voice_figures  # noqa: E402
from topic_training import left_out_voices, train_shipped  # noqa: E402
from whole_path import together, whole_path_out_of_voice  # noqa: E402

from bot.chat.topic_model import dump_model  # noqa: E402

ASKED_SHARES = (0.0, 0.005, 0.015, 0.03, 0.06, 0.1)
"""Shares of questions asked back about, whose cost is printed."""


def main() -> None:
    left_out = left_out_voices()
    found = {voice: one.scored for voice, one in left_out.items()}
    whole_path = whole_path_out_of_voice(left_out)
    model, by_voice = train_shipped(found), out_of_voice_figures(found)
    target = ROOT / "bot" / "chat" / "data" / "topics.npz"
    target.write_bytes(dump_model(model))
    lines = [f"{'left out':10}{HEADER}"]
    lines += [f"{voice:10}{figures}" for voice, figures in by_voice.items()]
    lines += [f"{'all':10}{all_voices_figures(found)}", "", f"{'whole path':10}{HEADER}"]
    lines += [f"{voice:10}{figures}" for voice, figures in whole_path.items()]
    lines += [f"{'all':10}{together(whole_path)}", "", f"{'ask of':10}{HEADER}"]
    lines += [f"{asked:<10.1%}{all_voices_figures(found, asked=asked)}" for asked in ASKED_SHARES]
    sys.stdout.write("\n".join(lines) + f"\n{target.name}: {target.stat().st_size:,} bytes\n")


if __name__ == "__main__":
    main()
