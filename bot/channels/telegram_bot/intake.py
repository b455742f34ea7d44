"""From updates as the server sends them to rows of the inbox, fetched or delivered to us."""

from __future__ import annotations

import logging
from collections import OrderedDict
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any

from sqlalchemy import Connection
from telegram import Bot
from telegram.error import TelegramError
from telegram.request import BaseRequest

from bot.channels.gate import Gate
from bot.channels.telegram_bot.courtesy import Courtesy
from bot.channels.telegram_bot.incoming import Migration, Ourselves, incoming_of
from bot.channels.telegram_bot.writer import Writer
from bot.chat.file import LARGEST_BYTES
from bot.post import Arrival, Incoming, accept
from knowledge.dataclass import dataclass
from scouting_db.directory import Directory
from scouting_db.values import AccountId, InboxId, Micros

log = logging.getLogger(__name__)

KEPT_ADMITTED = 4096
"""Updates remembered as let in: one that is delivered again counts once for its writer's pace."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Admitted:
    """What of some updates is to be stored."""

    arrivals: tuple[Arrival, ...]
    moves: tuple[Migration, ...]


class Intake:
    """Reads updates, asks the gate, and stores. `on_accept` is called once they are committed;
    `on_hand_in` as soon as the writer has them, behind whom it sees what it is handed next.
    """

    def __init__(
        self,
        *,
        bot: Bot,
        request: BaseRequest,
        me: Ourselves,
        account: AccountId,
        writer: Writer,
        courtesy: Courtesy,
        clock: Callable[[], Micros],
        on_accept: Callable[[], None] = lambda: None,
        on_hand_in: Callable[[], None] = lambda: None,
        gate: Gate | None = None,
    ) -> None:
        self._bot = bot
        self._request = request
        self._me = me
        self._account = account
        self._writer = writer
        self._courtesy = courtesy
        self._clock = clock
        self._on_accept = on_accept
        self._on_hand_in = on_hand_in
        self._gate = gate or Gate()
        self._let_in: OrderedDict[int, None] = OrderedDict()

    async def admit(self, updates: Sequence[dict[str, Any]]) -> Admitted:
        """What is to be stored; everything else is settled with that. Taps are answered at once.

        An update that nobody can read is told in the log by its number, and left.
        """
        read = [(int(raw["update_id"]), self._read(raw)) for raw in updates]
        arrivals = [
            Arrival(update_id=number, incoming=await self._with_file(raw, value))
            for raw, (number, value) in zip(updates, read, strict=True)
            if value is not None and not isinstance(value, Migration)
        ]
        self._courtesy.answer_taps(arrivals)
        return Admitted(
            arrivals=self._through_gate(arrivals),
            moves=tuple(value for _, value in read if isinstance(value, Migration)),
        )

    async def store(self, admitted: Admitted) -> tuple[InboxId, ...]:
        """The rows that are new, once they are on the disk. Where that fails, whoever wrote is told
        that the notebook is busy, and the error goes on: what came in is not to be confirmed.

        Their turns and replies do not wait for the disk: what a power cut takes with the update the
        server delivers again, since nothing was confirmed, and at worst it is answered twice.
        """
        if not admitted.arrivals and not admitted.moves:
            return ()
        try:
            stored = self._writer.hand_in(lambda connection: self._store(connection, admitted))
            self._on_hand_in()
            rows = await stored
            self._on_accept()
            await self._writer.settle()
        except Exception:
            self._courtesy.say_busy({one.incoming.chat for one in admitted.arrivals})
            raise
        return rows

    def _through_gate(self, arrivals: Sequence[Arrival]) -> tuple[Arrival, ...]:
        known = {one.update_id for one in arrivals if one.update_id in self._let_in}
        strangers = [one for one in arrivals if one.update_id not in known]
        admitted = self._gate.admit(strangers, now=self._clock())
        self._courtesy.say(admitted.lines)
        for one in admitted.arrivals:
            self._let_in[one.update_id] = None
            if len(self._let_in) > KEPT_ADMITTED:
                self._let_in.popitem(last=False)
        taken = known.union(one.update_id for one in admitted.arrivals)
        return tuple(one for one in arrivals if one.update_id in taken)

    def _read(self, raw: dict[str, Any]) -> Incoming | Migration | None:
        try:
            return incoming_of(raw, self._me, now=self._clock())
        except (LookupError, TypeError, AttributeError, ValueError) as error:
            # Of the update itself only its number: the log never holds what people write.
            log.error("update %s cannot be read: %s", raw["update_id"], type(error).__name__)
            return None

    async def _with_file(self, raw: dict[str, Any], incoming: Incoming) -> Incoming:
        """The same with the file that came with it; without its content where it cannot be had.

        Fetched before the update is stored, so that a turn needs no network and a file once
        accepted is not lost. Bot API: getFile gives a path, the file server its content.
        """
        if incoming.file is None:
            return incoming
        try:
            document = raw["message"]["document"]
            if not 0 <= document.get("file_size", 0) <= LARGEST_BYTES:
                return incoming
            told: Any = await self._bot.do_api_request(
                "getfile", api_kwargs={"file_id": str(document["file_id"])}
            )
            url = f"{self._bot.base_file_url}/{told['file_path']}"
            content = bytes(await self._request.retrieve(url))
        except (TelegramError, LookupError, TypeError) as error:
            log.warning("a file could not be fetched: %s", type(error).__name__)
            return incoming
        if len(content) > LARGEST_BYTES:
            return incoming
        return replace(incoming, file=replace(incoming.file, content=content))

    def _store(self, connection: Connection, admitted: Admitted) -> tuple[InboxId, ...]:
        directory = Directory(connection)
        directory.take_turns_accepting(self._account)
        for move in admitted.moves:
            chat = directory.chat(self._account, move.old_chat, is_group=True)
            directory.move_chat(chat.chat, move.new_chat)
        return accept(connection, self._account, admitted.arrivals, now=self._clock())
