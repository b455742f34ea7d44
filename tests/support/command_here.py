"""The `seamwise` command run in this process: loading it anew takes seconds each time."""

from __future__ import annotations

import io
import sys
from contextlib import redirect_stderr, redirect_stdout
from subprocess import CompletedProcess
from unittest.mock import patch

from bot.__main__ import main


def command_here(*arguments: str, typed: str = "") -> CompletedProcess[str]:
    """Run the command to its end, with what is typed as its input; settings as they are here.

    What hangs on a process of its own (its streams, what it loads, how it ends) is tried on one.
    """
    typing = io.TextIOWrapper(io.BytesIO(typed.encode()), encoding="utf-8")
    with (
        patch.object(sys, "stdin", typing),
        redirect_stdout(io.StringIO()) as told,
        redirect_stderr(io.StringIO()) as refused,
    ):
        try:
            code = main(arguments)
        except SystemExit as ended:  # argparse ends the process itself
            code = int(ended.code or 0)
    return CompletedProcess(arguments, code, told.getvalue(), refused.getvalue())
