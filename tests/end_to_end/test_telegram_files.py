"""Files and reminders through the real process: fetched before they are stored, sent once."""

from __future__ import annotations

import json
import sqlite3
import time
from contextlib import closing

from bot_api import Server, message_update, tap_update
from bot_api_updates import document
from bot_process import BotProcess

DRAW = b"Player 1;Player 2\r\nAna Ruiz;Ben Hale\r\n"


def test_a_roster_is_fetched_shown_and_added_on_a_tap(api: Server, mira: int) -> None:
    api.ask(lambda state: state.files.update({"documents/draw": DRAW}))
    api.put(message_update(chat_id=mira, **document("draw.csv", "draw", len(DRAW))))
    (preview,) = api.wait_for_sent(1, mira)
    assert preview.text.startswith("draw․csv: 2 players, 2 new.")  # a name, and no link
    payload = preview.payload("add them")
    api.put(tap_update(chat_id=mira, message_id=preview.message_id, data=payload))
    assert api.wait_for_sent(2, mira)[-1].text == "Added 2 players, 1 pairs, 0 hands."


def test_a_file_that_cannot_be_had_is_told(api: Server, bot: BotProcess, mira: int) -> None:
    api.put(message_update(chat_id=mira, **document("draw.csv", "gone", 40)))
    (told,) = api.wait_for_sent(1, mira)
    assert told.text.startswith("I can't take that file")
    assert bot.received(mira) == ["done"]


def test_a_file_too_large_is_not_even_fetched(api: Server, mira: int) -> None:
    before = api.called().count("getFile")
    api.put(message_update(chat_id=mira, **document("huge.csv", "huge", 30_000_000)))
    api.wait_for_sent(1, mira)
    assert api.called().count("getFile") == before


def test_the_book_is_sent_as_a_document(api: Server, mira: int) -> None:
    api.say(mira, "/add Hale")
    api.wait_for_sent(1, mira)
    api.say(mira, "export")
    sent = api.wait_for_sent(2, mira)[-1]
    assert sent.method == "sendDocument"
    assert sent.document is not None
    assert json.loads(sent.document)["tables"]["player"][0]["name"] == "Hale"


def test_a_reminder_that_is_due_is_sent_by_the_loop(
    api: Server, bot: BotProcess, mira: int
) -> None:
    """The process's clock is real, so the reminder is set for a moment ago in the database."""
    for n, line in enumerate(("timezone UTC", "/add Hale", "/add Ruiz"), start=1):
        api.say(mira, line)
        api.wait_for_sent(n, mira)
    soon = time.gmtime(time.time() + 7200)
    # With am or pm: at this hour of the night a bare 1:05 is tomorrow's afternoon.
    api.say(mira, f"next: hale and ruiz, {time.strftime('%I:%M %p', soon).lower()}")
    api.wait_for_sent(4, mira)
    now = int(time.time() * 1e6)
    with closing(sqlite3.connect(bot.database, timeout=10)) as raw:
        assert raw.execute(f"UPDATE reminder SET due_utc = {now}").rowcount == 1
        raw.commit()
    api.say(mira, "/players")
    api.wait_for_sent(6, mira)
    told = [one.text for one in api.sent(mira)]
    assert sum(text.startswith(("In 2 h", "In 1 h")) for text in told) == 1
