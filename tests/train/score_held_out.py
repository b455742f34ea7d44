"""Score the voices nobody reads, once, and write date, commit and figures into the log.

Run from anywhere: python tests/train/score_held_out.py
Every run is a look, and looks are few: each adds lines to tests/cases/held_out_log.md.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Sequence
from datetime import UTC, datetime
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from near_duplicates import near_duplicates  # noqa: E402
from note_scores import score_notes, score_notes_under_either, shown_claims  # noqa: E402
from slot_voices import score_slots  # noqa: E402
from topic_examples import (  # noqa: E402
    Example,
    our_examples,
    voice_examples,
    writer_examples,
)
from topic_figures import Figures, score  # noqa: E402
from voices import (  # noqa: E402
    LATEST_UNREAD_NAME_VOICES,
    UNREAD_FRESH_NAME_VOICES,
    UNREAD_FRESH_SCORE_VOICES,
    UNREAD_NAME_VOICES,
    UNREAD_SLOT_VOICE,
    score_names,
    score_names_under_either,
    score_scores,
    score_scores_under_either,
)
from whole_path import score_whole_path  # noqa: E402

from bot.chat.topic_model import the_model  # noqa: E402

HELD_OUT = ("ilse", "kay", "roz", "teun")
AFTER_THE_TRAINING = ("roz", "teun")
"""Written after the shipped models were trained; empty again once they are trained anew."""

LOG = ROOT / "tests" / "cases" / "held_out_log.md"
QUESTIONS, OTHERS = "<!-- questions end here -->", "<!-- notes, names and scores end here -->"
"""Marks in the log before which a look's lines are put."""


def main() -> None:
    commit = subprocess.run(
        ["git", "-C", str(ROOT), "describe", "--always", "--dirty"],
        capture_output=True,
        text=True,
        check=True,
    ).stdout.strip()
    look = f"| {datetime.now(UTC).date().isoformat()} | {commit}"
    questions = [
        f"{look} | {voice}{path} | {found(_unread_questions(voice)).row()} |\n"
        for voice in HELD_OUT
        for path, found in (("", _by_topic), (", whole path", score_whole_path))
    ]
    others = [f"{look} | {voice} | {_notes(voice)} | {_rest(voice)} | | |\n" for voice in HELD_OUT]
    slots = score_slots(UNREAD_SLOT_VOICE)
    others.append(
        f"{look} | {UNREAD_SLOT_VOICE} (slots) | | | | | {_rest(UNREAD_SLOT_VOICE)}"
        f" | {slots.found_share:.1%} | {slots.wrong_share:.1%} |\n"
    )
    others += [
        f"{look} | {voice} (names) | | | | | {_rest(voice)} | | |\n" for voice in UNREAD_NAME_VOICES
    ]
    others += [
        f"{look} | {voice} (names) | | | | | {_names(voice)} | | | |\n"
        for voice in UNREAD_FRESH_NAME_VOICES
    ]
    others += [
        f"{look} | {voice} (names) | | | | | {_names_by_either(voice)} | | | |\n"
        for voice in LATEST_UNREAD_NAME_VOICES
    ]
    others += [
        f"{look} | {voice} (scores) | | | | | | | {_scores(voice)} | | |\n"
        for voice in UNREAD_FRESH_SCORE_VOICES
    ]
    text = LOG.read_text(encoding="utf-8")
    text = text.replace(QUESTIONS, "".join(questions) + QUESTIONS)
    text = text.replace(OTHERS, "".join(others) + OTHERS)
    LOG.write_text(text, encoding="utf-8")
    sys.stdout.writelines([*questions, *others])


def _unread_questions(voice: str) -> list[Example]:
    """A voice's questions without those that nearly repeat a line trained on.

    Training leaves out what nearly repeats a held-out voice; one that came after the training
    has to be kept apart from this side.
    """
    examples = voice_examples(voice)
    if voice not in AFTER_THE_TRAINING:
        return examples
    taught = [one.text for one in (*our_examples(), *writer_examples())]
    repeats = near_duplicates([one.text for one in examples], taught)
    return [one for one, is_repeat in zip(examples, repeats, strict=True) if not is_repeat]


def _by_topic(examples: Sequence[Example]) -> Figures:
    return score(examples, the_model())


def _notes(voice: str) -> str:
    """Notes by one labeller and by either of two, as cells of a table.

    In brackets what is found with the buttons, on which a claim stands that is likely and no more.
    """
    cells: list[str] = []
    for score_by in (score_notes, score_notes_under_either):
        made, shown = score_by(voice), score_by(voice, read=shown_claims)
        cells.append(f"{made.found_share:.1%} ({shown.found_share:.1%})")
        cells.append(f"{made.invented_share:.1%}")
    return " | ".join(cells)


def _rest(voice: str) -> str:
    """Names and scores, as cells of a table; in brackets by either of two labellers."""
    right, _ = score_scores_under_either(voice)
    return f"{_names_by_either(voice)} | {_scores(voice)} ({right})"


def _names_by_either(voice: str) -> str:
    names, (found, wrong) = score_names_under_either(voice), _names(voice).split(" | ")
    return f"{found} ({names.right}) | {wrong} ({len(names.silently_wrong)})"


def _names(voice: str) -> str:
    names = score_names(voice)
    return f"{names.right}/{names.typed} | {len(names.silently_wrong)}"


def _scores(voice: str) -> str:
    right, told = score_scores(voice)
    return f"{right}/{told}"


if __name__ == "__main__":
    main()
