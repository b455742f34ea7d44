"""Commands: what begins with a slash, and what each word of them asks for."""

from __future__ import annotations

import re

from bot.chat.said import BookVerb
from bot.chat.sharing_words import SHARING_COMMANDS
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.vocabulary import Topic

_COMMAND = regex(r"^/(\w+)(?:@\w+)?(?:\s+|$)(.*)", re.DOTALL)

BOOK_COMMANDS = {
    "start": BookVerb.START,
    "help": BookVerb.HELP,
    "players": BookVerb.WHO,
    "notes": BookVerb.SHOW_NOTES,
    "pair": BookVerb.OUR_PAIR,
    "mode": BookVerb.MODE,
    "log": BookVerb.LOG_ONLY,
    "add": BookVerb.ADD_PLAYER,
    "rename": BookVerb.RENAME_PLAYER,
    "nickname": BookVerb.ADD_NICKNAME,
    "export": BookVerb.EXPORT,
    "share": BookVerb.SHARE,
    "forget": BookVerb.FORGET,
    "scout": BookVerb.SCOUT,
    "review": BookVerb.REVIEW,
    **SHARING_COMMANDS,
}

TOPIC_COMMANDS = {
    "plan": Topic.GAME_PLAN,
    "cue": Topic.CUE,
    "adjust": Topic.ADJUST,
    "report": Topic.OPPONENT_REPORT,
    "probe": Topic.PROBE,
    "timeout": Topic.TIMEOUT_NOW,
    "stand": Topic.WHERE_TO_STAND,
}

COMMAND_WORDS = frozenset({"note", "n", "undo", *BOOK_COMMANDS, *TOPIC_COMMANDS})
"""Every command's word."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Command:
    """A typed command: its word without the slash, and the rest of the message."""

    word: str
    rest: str


def command(text: str) -> Command | None:
    found = _COMMAND.match(text.strip())
    return None if found is None else Command(word=found[1].lower(), rest=found[2].strip())
