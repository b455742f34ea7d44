"""The `seamwise` command."""

from __future__ import annotations

import argparse
import logging
import os
import sys
from collections.abc import Sequence
from importlib.metadata import version
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING

from bot.loading import loaded, loading

if TYPE_CHECKING:  # what is loaded at a start is loaded inside `main`
    from scouting_db.session import Store

WELCOME = """\
Seamwise, with a demo book: Mira and Tom at the Saltmarsh Autumn Doubles.
Try: who covers the middle · where do I dink okafor · plan
Note something: ruiz is a lefty, pops up backhand dinks
A number presses a button. Leave with Ctrl-D. Nothing of the demo is kept:
your own book is seamwise --book my.sqlite
"""

WELCOME_OWN = "Seamwise. Ask, note, or type /help. A number presses a button; Ctrl-D leaves.\n"


WEBHOOK_EXTRA = """\
Webhook workers need their HTTP server: install with pip install '.[webhook]'.
Without it, let the bot fetch its messages: seamwise telegram
"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; returns its exit code."""
    # The products here are small: more threads of linear algebra take a third longer, and the
    # cores of whoever else works on the machine. Read when numpy is loaded; who set it, keeps it.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    with loading():
        return _main(arguments)


def _main(arguments: Sequence[str] | None) -> int:
    for stream in (sys.stdin, sys.stdout):
        if isinstance(stream, TextIOWrapper):
            # Bytes that are no text, or a terminal without a sign of ours, must end nothing.
            stream.reconfigure(errors="replace")
    parser = _parser()
    options = parser.parse_args(arguments)
    if options.version:
        sys.stdout.write(f"seamwise {version('seamwise')}\n")
        return 0
    # A terminal is its user's page: errors are told there in words, and logged only on request.
    level = os.environ.get(
        "SEAMWISE_LOG", "info" if options.run in (_telegram, _serve) else "critical"
    )
    logging.basicConfig(
        level=level.upper(), format="%(asctime)s %(levelname)s %(name)s %(message)s"
    )
    return _told(options)


def _told(options: argparse.Namespace) -> int:
    """The exit code of what was asked for; what the database refuses is told in words."""
    from sqlalchemy.exc import SQLAlchemyError

    from scouting_db.passing import is_passing
    from scouting_db.session import StoreError

    try:
        return int(options.run(options))
    except StoreError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    except SQLAlchemyError as error:
        if not is_passing(error):
            raise
        from bot.chat.wording import wording

        sys.stderr.write(wording("busy") + "\n")
        return 1
    except BrokenPipeError:
        # The reader left early (`| head`). Python would complain once more while closing down.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="seamwise", description="A courtside chat bot for doubles pickleball."
    )
    parser.add_argument("--version", action="store_true", help="print the version and stop")
    _book_options(parser, top=True)
    parser.set_defaults(run=_talk)
    commands = parser.add_subparsers(metavar="command")
    ask = commands.add_parser("ask", help="answer once, or one JSON object per line of input")
    ask.add_argument("text", nargs="*", help="the message; with --json it is read from stdin")
    ask.add_argument("--json", action="store_true", help="messages from stdin, JSON to stdout")
    _book_options(ask, top=False)
    ask.set_defaults(run=_ask)
    telegram = commands.add_parser("telegram", help="run the Telegram bot (SEAMWISE_TOKEN)")
    telegram.set_defaults(run=_telegram)
    serve = commands.add_parser("serve", help="run webhook workers (SEAMWISE_WEBHOOK_URL)")
    serve.add_argument("--host", default="127.0.0.1", help="the address to listen on")
    serve.add_argument("--port", type=_port, default=8080, help="the port to listen on")
    serve.add_argument(
        "--workers", type=_count, default=1, help="processes; more than one need PostgreSQL"
    )
    serve.add_argument(
        "--no-register", action="store_true", help="don't tell the messenger our address"
    )
    serve.set_defaults(run=_serve)
    book = commands.add_parser("book", help="back up, export, import or check a book")
    verbs = book.add_subparsers(dest="verb", metavar="verb", required=True)
    for verb, does in _KEEPING.items():
        keep = verbs.add_parser(verb, help=does)
        if verb != "check":
            keep.add_argument("file", type=Path, help="the file to write or to read")
        _book_options(keep, top=False)
        keep.set_defaults(run=_keep_book, file=None)
    return parser


def _port(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text) <= 65_535:
        raise argparse.ArgumentTypeError(f"{text!r} is no port; expected 1 to 65535")
    return int(text)


def _count(text: str) -> int:
    if not text.isdecimal() or not 1 <= int(text) <= MOST_WORKERS:
        raise argparse.ArgumentTypeError(f"{text!r}; expected 1 to {MOST_WORKERS}")
    return int(text)


MOST_WORKERS = 64
"""A typing mistake must not start thousands of processes."""

_KEEPING = {
    "backup": "copy the whole database to a file, while it is in use",
    "export": "write your book as JSON, or its players to a .csv file",
    "import": "open a book from JSON, or add a roster or draw from a .csv file",
    "check": "look for faults in the database",
}


def _book_options(parser: argparse.ArgumentParser, *, top: bool) -> None:
    default = None if top else argparse.SUPPRESS
    parser.add_argument(
        "--book", default=default, help="a SQLite file or a database URL instead of the demo"
    )
    parser.add_argument(
        "--pictures", type=Path, default=default, help="a folder to write pictures to"
    )


def _open(book: str | None) -> Store:
    """The user's own store, or a fresh demo book in memory."""
    from scouting_db.session import open_store

    if book is None:
        from bot.channels.console import system_clock
        from bot.demo_book import demo_store

        return demo_store(now=system_clock())
    return open_store(book if "://" in book else f"sqlite:///{Path(book).absolute()}")


def _talk(options: argparse.Namespace) -> int:
    from bot.channels.console import open_console, talk, typed_lines

    store = _open(options.book)
    try:
        console = open_console(store, user_name="You", pictures=options.pictures)
        loaded()
        sys.stdout.write((WELCOME if options.book is None else WELCOME_OWN) + "\n")
        talk(console, typed_lines(sys.stdin), sys.stdout)
    finally:
        store.close()
    return 0


def _ask(options: argparse.Namespace) -> int:
    from bot.channels.console import open_console, shown, talk_json

    if not options.json and not options.text:
        sys.stderr.write('Ask something: seamwise ask "who covers the middle"\n')
        return 2
    store = _open(options.book)
    try:
        console = open_console(store, user_name="You", pictures=options.pictures)
        if options.json:
            loaded()
            talk_json(console, options.text or sys.stdin, sys.stdout)
        else:
            replies = console.say(" ".join(options.text))
            sys.stdout.write(shown(console, replies) + "\n")
    finally:
        store.close()
    return 0


def _telegram(_options: argparse.Namespace) -> int:
    import asyncio

    from bot.channels.telegram_bot import run
    from bot.settings import Settings, SettingsError

    try:
        settings = Settings.from_environment(os.environ)
    except SettingsError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    return asyncio.run(run(settings))


def _serve(options: argparse.Namespace) -> int:
    from bot.settings import Settings, SettingsError

    if options.no_register:
        # Workers in processes of their own read their settings there.
        os.environ["SEAMWISE_REGISTER"] = "off"
    try:
        from bot.channels.telegram_bot.serve import Served, serve

        settings = Settings.from_environment(os.environ)
    except SettingsError as error:
        sys.stderr.write(f"{error}\n")
        return 2
    except ModuleNotFoundError as error:
        if str(error.name).partition(".")[0] not in ("starlette", "uvicorn"):
            raise
        sys.stderr.write(WEBHOOK_EXTRA)
        return 2
    return serve(settings, Served(host=options.host, port=options.port, workers=options.workers))


def _keep_book(options: argparse.Namespace) -> int:
    from bot.keeping import keep_book
    from scouting_db.session import open_store

    loaded()
    store = _open(options.book) if options.book else open_store(os.environ.get("SEAMWISE_DATABASE"))
    try:
        return keep_book(options.verb, store, options.file)
    finally:
        store.close()


if __name__ == "__main__":
    sys.exit(main())
