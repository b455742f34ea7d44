"""A PostgreSQL server of the campaign's own, which may be stopped and started at any time."""

from __future__ import annotations

import os
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

OPTIONS = ("listen_addresses=127.0.0.1", "max_connections=60", "fsync=off")
"""fsync guards against the end of the machine (PostgreSQL, "Write Ahead Log"); what is tried here
is the end of the server, which leaves what it has written with the operating system."""


class OwnPostgres:
    """A cluster in a folder of its own, on a free loopback port."""

    def __init__(self, folder: Path, programs: Path) -> None:
        self._folder = folder
        self._programs = programs
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self._port = free.getsockname()[1]
        self._run("initdb", "-A", "trust", "-U", "postgres")

    @property
    def url(self) -> str:
        """As SEAMWISE_DATABASE has it."""
        return f"postgresql+psycopg://postgres@127.0.0.1:{self._port}/postgres"

    def start(self) -> None:
        """Start, and return once it takes connections."""
        options = (*OPTIONS, f"port={self._port}", f"unix_socket_directories={self._folder}")
        given = " ".join(f"-c {option}" for option in options)
        self._run("pg_ctl", "-l", str(self._folder / "log"), "-w", "-o", given, "start")

    def stop(self, mode: str) -> None:
        """`fast` ends every transaction, `immediate` is as good as a crash (pg_ctl's manual)."""
        self._run("pg_ctl", "-m", mode, "-w", "stop")

    def _run(self, program: str, *arguments: str) -> None:
        command = [str(self._programs / program), "-D", str(self._folder / "data"), *arguments]
        if os.getuid() == 0:  # which it refuses to run as
            command = ["runuser", "-u", "postgres", "--", *command]
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL, cwd="/", timeout=60)


@contextmanager
def own_postgres() -> Iterator[OwnPostgres]:
    """A running server, stopped and removed at the end; LookupError where none is installed."""
    programs = sorted(Path("/usr/lib/postgresql").glob("*/bin"), key=lambda one: one.parts[-2])
    if not programs:
        raise LookupError("no PostgreSQL server in /usr/lib/postgresql")
    folder = Path(tempfile.mkdtemp(prefix="seamwise-"))
    if os.getuid() == 0:
        shutil.chown(folder, "postgres")
    try:
        server = OwnPostgres(folder, programs[-1])
        server.start()
        try:
            yield server
        finally:
            server.stop("immediate")
    finally:
        shutil.rmtree(folder, ignore_errors=True)
