"""The fault campaign: `python tests/benchmarks/faults.py --kills 300 --database sqlite`.

Kills the real bot at random instants under load, with a failing server and a failing database,
and checks that nothing is lost, doubled or out of order. Exit code 1 where a promise is broken.
"""

from __future__ import annotations

import argparse
import random
import sys
import tempfile
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "tests" / "support")]

from bot_api import running  # noqa: E402
from bot_nursery import nursery  # noqa: E402
from fault_campaign import Campaign, Outcome, Plan  # noqa: E402
from fault_databases import LockedSqlite, RestartedPostgres, Troubled  # noqa: E402
from fault_ledger import faults_of, repeats_of  # noqa: E402
from own_postgres import own_postgres  # noqa: E402


def main() -> int:
    """Run one campaign and print its figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kills", type=int, default=300)
    parser.add_argument("--chats", type=int, default=20)
    parser.add_argument("--database", choices=("sqlite", "postgres"), default="sqlite")
    parser.add_argument("--workers", type=int, default=0, help="webhook workers; 0 polls")
    parser.add_argument("--seed", type=int, default=random.randrange(1_000_000))
    parser.add_argument("--log", type=Path, help="keep what the bot logged in this file")
    options = parser.parse_args()
    plan = Plan(
        kills=options.kills, chats=options.chats, seed=options.seed, workers=options.workers
    )
    shape = f"{plan.workers} workers" if plan.workers else "polling"
    _say(f"seed {plan.seed}: {plan.kills} kills, {plan.chats} chats, {options.database}, {shape}")
    with tempfile.TemporaryDirectory(prefix="seamwise-", ignore_cleanup_errors=True) as folder:
        with (
            _database(options.database, Path(folder)) as database,
            running() as api,
            nursery() as loaded,
        ):
            campaign = Campaign(
                plan,
                api=api,
                loaded=loaded,
                database=database,
                log=options.log or Path(folder) / "bot.log",
            )
            outcome = campaign.run()
        return _report(outcome)


@contextmanager
def _database(name: str, folder: Path) -> Iterator[Troubled]:
    if name == "sqlite":
        yield LockedSqlite(folder / "bot.sqlite")
    else:
        with own_postgres() as server:
            yield RestartedPostgres(server)


def _report(outcome: Outcome) -> int:
    ledger = outcome.ledger
    for name, count in sorted(outcome.injected_faults.items()):
        _say(f"{count:6d}  {name}")
    notes = sum(one.is_note for one in ledger.injected)
    _say(f"{len(ledger.injected)} messages, {notes} of them notes, in {outcome.seconds:.0f} s")
    _say(f"{len(ledger.noted)} notes in the books, {len(ledger.arrived)} replies arrived")
    repeats = repeats_of(ledger)
    for because, count in Counter(str(one.because) for one in repeats).items():
        _say(f"{count:6d}  replies repeated: {because}")
    faults = faults_of(ledger)
    for fault in faults[:50]:
        _say(f"BROKEN  {fault}")
    _say(f"{len(faults)} promises broken")
    return 1 if faults else 0


def _say(line: str) -> None:
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    sys.exit(main())
