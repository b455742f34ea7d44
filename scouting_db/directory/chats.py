"""Channels' accounts and their chats."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from typing import Any
from sqlalchemy import Connection
from knowledge.evidence import Observation
from knowledge.vocabulary import *  # noqa
from scouting_db.values import *  # noqa
from scouting_db.directory.scope import Scope


class Chats(Scope):
    """Who we are in a channel, and where we talk."""

    def account(self, channel: str, bot_ref: str) -> AccountId:
        """The account of a channel ("console", "telegram"), made at the first call."""
        raise NotImplementedError

    def chat(self, account: AccountId, external_chat_id: str, *, is_group: bool = False) -> ChatRow:
        """The chat with that id in the channel, made at the first call."""
        raise NotImplementedError

    def chat_row(self, chat: ChatId) -> ChatRow:
        """The chat by our own id; LookupError without one."""
        raise NotImplementedError

    def save_context(self, chat: ChatId, context: Mapping[str, Any]) -> None:
        """What the chat remembers from now on."""
        raise NotImplementedError

    def move_chat(self, chat: ChatId, external_chat_id: str) -> ChatId:
        """A group was upgraded: the chat that now stands for it; differs where the new id already wrote."""
        raise NotImplementedError

    def block(self, chat: ChatId, *, now: Micros) -> None:
        """The user shut us out: nothing is sent there until `unblock`."""
        raise NotImplementedError

    def unblock(self, chat: ChatId) -> None:
        """They write to us again."""
        raise NotImplementedError
