"""One worker per store and name, across processes."""

from __future__ import annotations

import subprocess
import sys
from contextlib import ExitStack
from pathlib import Path
from random import Random

import pytest
from databases import new_postgresql, shown
from fault_databases import CutOffPostgres

from scouting_db.session import Store, open_store
from scouting_db.sole import AlreadyRunningError, sole_worker

HOLD_UNTIL_KILLED = """
import sys, time
from scouting_db.session import open_store
from scouting_db.sole import sole_worker
with sole_worker(open_store(sys.argv[1]), "telegram-1"):
    print("held", flush=True)
    time.sleep(60)
"""
CHECKOUT = Path(__file__).parents[2]


def test_a_second_worker_is_refused_until_the_first_ends(store: Store) -> None:
    with (
        sole_worker(store, "telegram-1"),
        pytest.raises(AlreadyRunningError),
        sole_worker(store, "telegram-1", patience_s=0),
    ):
        pass
    with sole_worker(store, "telegram-1", patience_s=0):
        pass


def test_another_bot_may_work_on_the_same_store(store: Store) -> None:
    with sole_worker(store, "telegram-1"), sole_worker(store, "telegram-2", patience_s=0):
        pass


@pytest.mark.postgres
@pytest.mark.parametrize("is_taken", [False, True])
def test_a_lock_that_a_restarted_server_freed_is_taken_again(is_taken: bool) -> None:
    """Unless another process was faster: then no work goes on beside its."""
    with new_postgresql() as url, ExitStack() as held:
        store, other = open_store(shown(url)), open_store(shown(url))
        held.callback(store.close)
        held.callback(other.close)
        still_alone = held.enter_context(sole_worker(store, "telegram-1"))
        still_alone()
        CutOffPostgres(shown(url)).trouble(Random())
        if is_taken:
            with sole_worker(other, "telegram-1", patience_s=5), pytest.raises(AlreadyRunningError):
                still_alone()
        still_alone()
        with pytest.raises(AlreadyRunningError), sole_worker(other, "telegram-1", patience_s=0):
            pass


def test_a_killed_process_leaves_no_lock_behind(tmp_path: Path) -> None:
    url = f"sqlite:///{tmp_path / 'book.sqlite'}"
    command = [sys.executable, "-c", HOLD_UNTIL_KILLED, url]
    store = open_store(url)
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=CHECKOUT) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with pytest.raises(AlreadyRunningError), sole_worker(store, "telegram-1", patience_s=0):
            pass
        holder.kill()
    with sole_worker(store, "telegram-1", patience_s=5):
        pass
    store.close()
