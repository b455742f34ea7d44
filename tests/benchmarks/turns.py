"""What a warm text turn costs, topic by topic: our CPU, its stages, and its SQL statements.

Run from the checkout: `python tests/benchmarks/turns.py [TOPIC ...]`. Takes a few minutes.
The bar is design section 7: a warm text turn at most 1 ms of our CPU and 8 SQL statements.
Ours is the turn less the same statements run bare in the same process, side by side.

  same   the same question again, in a book that nobody changed
  words  the question in words that were not read yet (each of the topic's phrases)
  note, rally, score   the question right after one of these was written down

On a busy machine the quickest turn tells most; the median stands beside it.
"""

from __future__ import annotations

import os

os.environ["OMP_NUM_THREADS"] = os.environ["OPENBLAS_NUM_THREADS"] = "1"

import argparse
import sys
from itertools import cycle
from pathlib import Path
from statistics import mean, median

sys.path.insert(0, str(Path(__file__).parents[1] / "support"))

from measured import Table
from scouted_pair import scout
from talk import Talk, demo_talk
from turn_stages import STAGES, STORE, Bench, Cost, forget_texts

from bot.chat.phrases import phrases_of
from bot.chat.said import Question
from knowledge.vocabulary import Topic

OBSERVATIONS, RALLIES = 2_000, 5_000
PAIR = ("Okafor", "Lindqvist")
TURNS = 15
WORDINGS, WORDING_TURNS = 4, 4
CHANGED_TURNS = 6
CHANGES = {
    "note": cycle(("okafor pops up backhand dinks", "undo")),
    "rally": cycle(("our rally", "undo")),
    "score": cycle(("3-2-1", "4-2-1")),
}
"""What is said before the question: told, and taken back before the next."""

COLUMNS = ("stmts", "turn", "med", "bare", "ours", "med", *(name for name, _, _ in STAGES), STORE)


def talk_about_them(*, scouted: bool) -> Talk:
    """The demo book and a match against the pair; `scouted` with all their notes and rallies."""
    talk = demo_talk()
    if scouted:
        scout(talk, PAIR, observations=OBSERVATIONS, rallies=RALLIES)
    talk.say("next: okafor and lindqvist")
    return talk


def wordings(talk: Talk, topic: Topic) -> list[str]:
    """The topic's phrases that are answered as a question of it, the first being asked again."""
    found: list[str] = []
    for phrase in phrases_of(topic):
        if phrase.after is None and len(found) <= WORDINGS:
            talk.say(phrase.text)
            said = talk.heard.understood if talk.heard else None
            if isinstance(said, Question) and said.topic is topic:
                found.append(phrase.text)
    return found


def new_words(bench: Bench, texts: list[str]) -> list[float]:
    """Ours, for each of the wordings read for the first time."""
    return [
        bench.costs(text, turns=WORDING_TURNS, before=forget_texts)[0].ours_ms for text in texts
    ]


def after(bench: Bench, text: str, change: str) -> list[Cost]:
    """The question after each change of that kind."""
    bench.talk.say(text)
    costs = []
    for _ in range(CHANGED_TURNS):
        bench.talk.say(next(CHANGES[change]))
        costs.append(bench.first(text, repeats=5))
    return costs


def row(bench: Bench, topic: Topic, played: Bench) -> tuple[str, dict[str, float]]:
    """The topic's line, and its figures by name."""
    first, *others = wordings(bench.talk, topic)
    for _ in range(2):
        bench.talk.say(first)
    best, middle = bench.costs(first, turns=TURNS)
    stages = [best.stages_ms[name] for name in (*(one for one, _, _ in STAGES), STORE)]
    words = new_words(bench, others)
    cells = [best.turn_ms, middle.turn_ms, best.bare_ms, best.ours_ms, middle.ours_ms, *stages]
    line = f"{topic.value[:22]:23}{best.statements:6}" + "".join(f"{one:7.2f}" for one in cells)
    line += f" |{min(words):7.2f}{median(words):7.2f} |"
    figures = {"same": best.ours_ms, "words": median(words), "bare": best.bare_ms}
    for change in CHANGES:
        costs = after(played, first, change)
        ours = [one.ours_ms for one in costs]
        figures[change] = min(ours)
        line += f"{min(ours):7.2f}{median(ours):7.2f}{max(one.statements for one in costs):3}"
    return line, figures


def report(name: str, topics: list[Topic], *, scouted: bool) -> None:
    """The table of one book."""
    bench = Bench(talk_about_them(scouted=scouted))
    played = Bench(talk_about_them(scouted=scouted))
    played.talk.say("we serve")
    say(f"\n{name}: milliseconds of CPU, quickest (med: median)")
    head = f"{'':23}{COLUMNS[0]:>6}" + "".join(f"{one[:6]:>7}" for one in COLUMNS[1:])
    head += f" |{'words':>7}{'med':>7} |"
    say(head + "".join(f"{change:>7}{'med':>7}{'':3}" for change in CHANGES))
    figures = []
    for topic in topics:
        line, found = row(bench, topic, played)
        say(line)
        figures.append(found)
    for what, over in (("mean", mean), ("median", median), ("most", max)):
        say(
            f"{what:8}"
            + "".join(f"{key}: {over(f[key] for f in figures):.2f}  " for key in figures[0])
        )
    bench.talk.store.close()
    played.talk.store.close()


BRIEF_TURNS = 8


def tables() -> list[Table]:
    """A row a topic, in the demo book: briefer than the report, for the README."""
    talk = talk_about_them(scouted=False)
    bench, rows, sums = Bench(talk), [], []
    for topic in Topic:
        first, *others = wordings(talk, topic)
        talk.say(first)
        same = bench.cost(first, turns=BRIEF_TURNS)
        words = median(new_words(bench, others[:2])) if others else None
        stages = [same.stages_ms[name] for name in (*(one for one, _, _ in STAGES), STORE)]
        talk.say(next(CHANGES["note"]))
        changed = bench.first(first, repeats=3)
        talk.say(next(CHANGES["note"]))
        figures = (same.ours_ms, *stages, words, changed.ours_ms)
        sums.append(figures)
        told = [_shown(one) for one in figures]
        rows.append((topic.value, *told[:-2], str(same.statements), *told[-2:],
                     str(changed.statements)))  # fmt: skip
    columns = ([one for one in column if one is not None] for column in zip(*sums, strict=True))
    middle = [_shown(median(column)) for column in columns]
    rows.append(("median", *middle[:-2], "", *middle[-2:], ""))
    talk.store.close()
    return [
        Table(
            title="(b) A warm text turn by topic, milliseconds of CPU; `ours` is the turn without"
            " what its SQL costs bare (bars: 1 ms of our CPU, 8 statements)",
            head=(
                "topic", "ours", *(name for name, _, _ in STAGES), STORE, "statements",
                "in new words", "after a note", "statements",
            ),
            rows=rows,
        )
    ]  # fmt: skip


def _shown(cost_ms: float | None) -> str:
    return "" if cost_ms is None else f"{cost_ms:.2f}"


def say(line: str) -> None:
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("topics", nargs="*", type=Topic, help="topics, all of them by default")
    parser.add_argument("--book", choices=("demo", "grown"), help="one of the two books only")
    options = parser.parse_args()
    topics = options.topics or [*Topic]
    if options.book != "grown":
        report("the demo book", topics, scouted=False)
    if options.book != "demo":
        size = f"{OBSERVATIONS} observations and {RALLIES} rallies"
        report(f"a book of {size} more", topics, scouted=True)


if __name__ == "__main__":
    main()
