"""What a cold `seamwise ask` costs beside importing, bare, everything foreign that it loads.

Run from the checkout: `python tests/benchmarks/startup.py`. Takes half a minute. CPU time of whole
processes (user and system), which take turns; the quickest of each counts. Compiled modules are
there, as after an installation. The bar is design section 7: at most three times the bare imports.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

from measured import Table, child_cpu_s

ROOT = Path(__file__).resolve().parents[2]
QUESTION = "who covers the middle"
ROUNDS = 5
BAR = 3.0

OURS = ("bot", "knowledge", "scouting_db")

LOADED = f"""
import sys
from bot.__main__ import main
started = set(sys.modules)
main(["ask", {QUESTION!r}])
foreign = [one for one in sys.modules if one.partition(".")[0] not in {OURS!r}]
import json
sys.stderr.write(json.dumps([one for one in foreign if one not in {{"__main__", "__mp_main__"}}]))
"""

BARE = """
import importlib, json, os
for name in json.loads(os.environ["SEAMWISE_BENCH_MODULES"]):
    try:
        importlib.import_module(name)
    except ImportError:  # made by its package while it loads, not a file of its own
        pass
"""


def foreign_modules(environment: dict[str, str]) -> list[str]:
    """What the command has loaded by the end that is not ours, in the order loaded."""
    command = [sys.executable, "-c", LOADED]
    done = subprocess.run(command, env=environment, cwd=ROOT, capture_output=True, check=True)
    modules: list[str] = json.loads(done.stderr.decode().splitlines()[-1])
    return modules


def measure() -> dict[str, float]:
    """CPU seconds by what was started, the quickest of the rounds."""
    with tempfile.TemporaryDirectory() as compiled:
        environment = os.environ | {
            "PYTHONPATH": str(ROOT),
            "PYTHONPYCACHEPREFIX": compiled,
            "OPENBLAS_NUM_THREADS": "1",
        }
        environment.pop("PYTHONDONTWRITEBYTECODE", None)
        modules = foreign_modules(environment)
        environment["SEAMWISE_BENCH_MODULES"] = json.dumps(modules)
        commands = {
            "an empty program": ("-c", "pass"),
            "the bare imports": ("-c", BARE),
            "`import bot.channels.console`": ("-c", "import bot.channels.console"),
            "`seamwise ask`, demo book": ("-m", "bot", "ask", QUESTION),
            "`seamwise ask`, own book": (
                "-m", "bot", "ask", "--book", f"{compiled}/mine.sqlite", QUESTION,
            ),
        }  # fmt: skip
        best = dict.fromkeys(commands, float("inf"))
        for lap in range(ROUNDS + 1):
            for name, arguments in commands.items():
                spent = child_cpu_s([sys.executable, *arguments], environment, ROOT)
                if lap:  # the first compiles, and makes the book
                    best[name] = min(best[name], spent)
    return best


def tables() -> list[Table]:
    """Each in milliseconds, and times the bare imports."""
    found = measure()
    bare = found["the bare imports"]
    rows = [(name, f"{1000 * spent:.0f}", f"{spent / bare:.2f}") for name, spent in found.items()]
    return [
        Table(
            title=f"(e) Start-up: CPU of a whole process (bar: {BAR:g} times the bare imports)",
            head=("process", "CPU ms", "times bare"),
            rows=rows,
        )
    ]


if __name__ == "__main__":
    for table in tables():
        sys.stdout.write(table.markdown())
