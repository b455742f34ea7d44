"""Every measurement of speed in one table after the other, as markdown for the README.

Run from the checkout: `python tests/benchmarks/all.py [--write] [PART ...]`; some eight minutes on
an idle machine. Parts are letters: a the bot beside a bare echo handler, b a turn by topic, c name
look-up, d the arithmetic beside general libraries, e start-up, f pictures, g growth, h memory.
`--write` puts what was measured into README.md between its marks, and tells of parts that were not
measured anew by leaving them as they are. Each part is a program of its own too (its module beside
this one).
"""

from __future__ import annotations

import argparse
import os
import platform
import re
import subprocess
import sys
import time
from datetime import UTC, datetime
from importlib.metadata import version
from pathlib import Path

HERE = Path(__file__).resolve().parent
README = HERE.parents[1] / "README.md"
PARTS = {
    "a": "steady",
    "b": "turns",
    "c": "names",
    "d": "references",
    "e": "startup",
    "f": "pictures",
    "g": "growth",
    "h": "memory",
}
BEGIN, END = "<!-- measured -->", "<!-- /measured -->"

ONE = """
import sys
sys.path[:0] = {paths!r}
import {module}
for table in {module}.tables():
    sys.stdout.write(table.markdown())
"""


def machine() -> str:
    """What it was measured on, in a line."""
    cpu = re.search(r"model name\s*: (.*)", Path("/proc/cpuinfo").read_text())
    memory = re.search(r"MemTotal:\s*(\d+)", Path("/proc/meminfo").read_text())
    told = [
        f"{os.cpu_count()} cores of {cpu[1].strip() if cpu else platform.machine()}",
        f"{int(memory[1]) / 1024**2:.0f} GB" if memory else "",
        f"{platform.system()} {platform.release().split('-')[0]}",
        f"Python {platform.python_version()}",
        f"SQLAlchemy {version('sqlalchemy')}, numpy {version('numpy')}",
        f"python-telegram-bot {version('python-telegram-bot')}",
        f"load {os.getloadavg()[0]:.1f} before",
    ]
    day = datetime.now(UTC).date().isoformat()
    return f"Measured {day} on {', '.join(filter(None, told))}."


def measured(part: str) -> str:
    """A part's tables, from a process of its own, so that none warms another."""
    paths = [str(HERE), str(HERE.parents[1]), str(HERE.parent / "support")]
    environment = os.environ | {"OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1"}
    code = ONE.format(paths=paths, module=PARTS[part])
    command = [sys.executable, "-c", code]
    done = subprocess.run(
        command, env=environment, cwd=HERE.parents[1], stdout=subprocess.PIPE, text=True, check=True
    )
    return done.stdout


def written(text: str, found: dict[str, str], told: str) -> str:
    """The README with these parts between its marks; others stay as they stood."""
    before, _, rest = text.partition(BEGIN)
    inside, mark, after = rest.partition(END)
    if not mark:
        raise SystemExit(f"README.md has no {BEGIN} ... {END}")
    stood = {
        one[1]: one[0] for one in re.finditer(r"^\((\w)\) .*?(?=^\(\w\) |\Z)", inside, re.M | re.S)
    }
    parts = stood | found
    body = "\n\n".join(parts[part].strip() for part in PARTS if part in parts)
    return f"{before}{BEGIN}\n{told}\n\n{body}\n{END}{after}"


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("parts", nargs="*", metavar="PART", help="letters; all by default")
    parser.add_argument("--write", action="store_true", help="put them into README.md")
    options = parser.parse_args()
    unknown = set(options.parts) - set(PARTS)
    if unknown:
        parser.error(f"no part {', '.join(sorted(unknown))}: parts are {', '.join(PARTS)}")
    told, found = machine(), {}
    sys.stdout.write(told + "\n\n")
    for part in options.parts or PARTS:
        began = time.monotonic()
        found[part] = measured(part)
        sys.stdout.write(found[part])
        sys.stdout.flush()
        sys.stderr.write(f"{part}: {time.monotonic() - began:.0f} s\n")
    if options.write:
        README.write_text(written(README.read_text("utf-8"), found, told), encoding="utf-8")


if __name__ == "__main__":
    main()
