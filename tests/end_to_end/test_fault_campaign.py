"""The fault campaign in short: some kills, much weather, every promise checked; seeds printed.

The long form is `python tests/benchmarks/faults.py`.
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from bot_api import Server, running
from bot_api_weather import FAULTS, Climate
from bot_nursery import Nursery, the_nursery
from databases import new_postgresql, shown
from fault_campaign import Campaign, Outcome, Plan
from fault_databases import CutOffPostgres, LockedSqlite, Troubled
from fault_ledger import CRASH, faults_of, repeats_of

KILLS, CHATS = 4, 5

STORMY = Climate(sending=0.2, fetching=0.4, starting=0.02, again=0.5)
"""So much that a few seconds see some of it."""


@pytest.fixture(scope="module")
def loaded() -> Nursery:
    return the_nursery()


@pytest.fixture
def api() -> Iterator[Server]:
    with running() as server:
        yield server


def campaign(
    api: Server, loaded: Nursery, database: Troubled, folder: Path, *, workers: int = 0
) -> Outcome:
    """A short one; its seed is shown where it fails."""
    seed = random.SystemRandom().randrange(1_000_000)
    print(f"seed {seed}")  # noqa: T201
    plan = Plan(
        kills=KILLS,
        chats=CHATS,
        seed=seed,
        workers=workers,
        climate=STORMY,
        longest_life_s=4.0,
        most_replies=10,
        per_second=30,
        trouble_every=2,
    )
    log = folder / "bot.log"
    return Campaign(plan, api=api, loaded=loaded, database=database, log=log).run()


def assert_kept(outcome: Outcome) -> None:
    """Every promise kept, and the faults really injected."""
    assert faults_of(outcome.ledger) == []
    counts = outcome.injected_faults
    by_itself = sum(counts[name] for name in counts if name.startswith("ended by itself"))
    assert counts["kill -9"] + by_itself > KILLS
    assert sum(counts[name] for name in counts if name.startswith("database")) == 2
    assert counts["updates delivered again"] + counts["deliveries whose answer was lost"] > 0
    assert any(counts[f"send: {name}"] for name in FAULTS)
    assert len(outcome.ledger.injected) > CHATS
    crashes = Counter(one.chat for one in repeats_of(outcome.ledger) if one.because == CRASH)
    assert max(crashes.values(), default=0) <= len(outcome.ledger.killed)


def test_a_sqlite_file_that_others_lock(api: Server, loaded: Nursery, tmp_path: Path) -> None:
    database = LockedSqlite(tmp_path / "bot.sqlite")
    assert_kept(campaign(api, loaded, database, tmp_path))


@pytest.mark.postgres
def test_a_postgresql_server_that_ends_its_sessions(
    api: Server, loaded: Nursery, tmp_path: Path
) -> None:
    with new_postgresql() as url:
        assert_kept(campaign(api, loaded, CutOffPostgres(shown(url)), tmp_path))


@pytest.mark.postgres
def test_workers_that_share_a_postgresql(api: Server, loaded: Nursery, tmp_path: Path) -> None:
    with new_postgresql() as url:
        database = CutOffPostgres(shown(url))
        assert_kept(campaign(api, loaded, database, tmp_path, workers=2))
