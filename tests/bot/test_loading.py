"""The collector while a process loads, and afterwards."""

from __future__ import annotations

import gc
import subprocess
import sys
import weakref
from collections.abc import Iterator
from pathlib import Path

import pytest

from bot.loading import loaded, loading

ROOT = Path(__file__).parents[2]


@pytest.fixture(autouse=True)
def unfrozen() -> Iterator[None]:
    yield
    gc.unfreeze()
    gc.enable()


class Ring:
    """Something that holds itself."""

    def __init__(self) -> None:
        self.itself = self


def test_nothing_is_collected_while_loading_and_again_afterwards() -> None:
    assert gc.isenabled()
    with loading():
        assert not gc.isenabled()
    assert gc.isenabled()


def test_whoever_had_it_off_keeps_it_off() -> None:
    gc.disable()
    with loading():
        pass
    assert not gc.isenabled()


def test_it_is_on_again_after_a_failure() -> None:
    with pytest.raises(ValueError, match="no"), loading():
        raise ValueError("no")
    assert gc.isenabled()


def test_once_loaded_rubbish_is_collected_and_what_is_there_left_alone() -> None:
    kept = Ring()
    with loading():
        early = weakref.ref(Ring())
        loaded()
        assert gc.isenabled()
        assert early() is None, "rubbish of the start must not stay for ever"
        assert gc.get_freeze_count() > 0
        assert not any(one is kept for one in gc.get_objects())
        late = weakref.ref(Ring())
        gc.collect()
        assert late() is None
    assert gc.isenabled()


@pytest.mark.parametrize(
    ("arguments", "typed", "on_at_the_end"),
    [(["ask", "/help"], "", False), (["ask", "--json"], "/help\n", True), ([], "/help\n", True)],
)
def test_a_short_answer_collects_nothing_and_a_conversation_does(
    arguments: list[str], typed: str, on_at_the_end: bool
) -> None:
    """A conversation may last for days; one answer ends before there is anything to collect."""
    code = (
        "import gc, sys; from bot.channels import console; say = console.Console.say\n"
        "def told(self, text): print('collects', gc.isenabled(), file=sys.stderr); "
        "return say(self, text)\n"
        "console.Console.say = told\n"
        f"from bot.__main__ import main; sys.exit(main({arguments!r}))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=ROOT,
        input=typed,
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stderr.splitlines()[-1] == f"collects {on_at_the_end}"


def test_the_command_loads_nothing_before_the_collector_is_off() -> None:
    code = (
        "import sys; import bot.__main__;"
        "sys.exit(any(one in sys.modules for one in ('sqlalchemy', 'scouting_db', 'numpy')))"
    )
    assert subprocess.run([sys.executable, "-c", code], cwd=ROOT, check=False).returncode == 0
