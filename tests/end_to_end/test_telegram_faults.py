"""The real process while the server refuses, breaks off or asks to wait.

The descriptions are the server's own words (tdlib/telegram-bot-api), from memory.
"""

from __future__ import annotations

import time

import pytest
from bot_api import Fault, Server, tap_update, too_many_requests
from bot_process import BotProcess, rows


def test_the_server_s_wait_is_kept_for_that_chat_alone(api: Server, mira: int, tom: int) -> None:
    wait_s = 2
    api.fail("sendMessage", too_many_requests(wait_s))
    began = time.monotonic()
    api.say(mira, "/help")
    api.wait_until(lambda _: api.ask(lambda state: not state.faults["sendMessage"]))
    api.say(tom, "/help")
    (to_tom,) = api.wait_for_sent(1, tom)
    (to_mira,) = api.wait_for_sent(1, mira)
    assert to_mira.at - began >= wait_s
    assert to_tom.at < to_mira.at


@pytest.mark.parametrize(
    "fault",
    [Fault(status=500), Fault(status=502, description="Bad Gateway"), Fault(drop=True)],
    ids=["500", "502", "dropped"],
)
def test_a_failed_send_is_repeated(api: Server, bot: BotProcess, mira: int, fault: Fault) -> None:
    api.fail("sendMessage", fault, fault)
    api.say(mira, "/help")
    api.wait_for_sent(1, mira)
    api.wait_until(lambda _: bot.states(mira) == {"sent": 1})
    assert len(api.sent(mira)) == 1


def test_an_answer_lost_on_the_way_repeats_one_reply_at_most(
    api: Server, bot: BotProcess, mira: int
) -> None:
    api.fail("sendMessage", Fault(drop=True, after=True))
    api.say(mira, "/help")
    api.wait_until(lambda _: bot.states(mira) == {"sent": 1})
    assert len(api.sent(mira)) == 2


def test_whoever_blocks_us_gets_nothing_until_they_write_again(
    api: Server, bot: BotProcess, mira: int
) -> None:
    blocked = f"SELECT blocked_at IS NOT NULL FROM chat WHERE external_chat_id = '{mira}'"
    api.ask(lambda state: state.blocked.add(mira))
    api.say(mira, "/help")
    api.wait_until(lambda _: bot.states(mira) == {"dropped": 1})
    assert rows(bot.database, blocked) == [(1,)]
    api.ask(lambda state: state.blocked.discard(mira))
    api.say(mira, "/help")
    api.wait_for_sent(1, mira)
    assert rows(bot.database, blocked) == [(0,)]


def test_an_upgraded_group_gets_its_reply_under_the_new_id(
    api: Server, bot: BotProcess, group: int, mira: int
) -> None:
    new_group = group - 1_000_000_000_000
    api.ask(lambda state: state.migrated.update({group: new_group}))
    api.say(group, "/help", user_id=mira)
    api.wait_for_sent(1, new_group)
    api.wait_until(lambda _: bot.states(new_group) == {"sent": 1})
    assert bot.received(group) == []


def test_html_refused_for_any_reason_goes_out_as_plain_text(api: Server, mira: int) -> None:
    api.fail("sendMessage", Fault(status=400, description="Bad Request: can't parse entities: x"))
    api.say(mira, "/help")
    (reply,) = api.wait_for_sent(1, mira)
    assert reply.parse_mode is None
    assert "<b>" not in reply.source


def test_a_message_that_is_refused_does_not_hold_up_the_next(
    api: Server, bot: BotProcess, mira: int
) -> None:
    api.fail("sendMessage", Fault(status=400, description="Bad Request: no such luck"))
    api.say(mira, "/help")
    api.say(mira, "/help")
    api.wait_for_sent(1, mira)
    api.wait_until(lambda _: bot.states(mira) == {"dropped": 1, "sent": 1})


def test_a_tap_answered_too_late_is_swallowed(api: Server, bot: BotProcess, mira: int) -> None:
    api.fail(
        "answerCallbackQuery",
        Fault(status=400, description="Bad Request: query is too old and response timeout expired"),
    )
    api.put(tap_update(chat_id=mira, message_id=5, data="nonsense", tap_id="late"))
    api.wait_for_sent(1, mira)
    assert bot.received(mira) == ["done"]


def test_a_second_poller_is_named_in_the_log_and_we_go_on(
    api: Server, bot: BotProcess, mira: int
) -> None:
    api.fail("getUpdates", Fault(status=409, description="Conflict: terminated by other"))
    api.say(mira, "/help")
    api.wait_until(lambda _: "409" in bot.logged())
    api.say(mira, "/help")
    api.wait_for_sent(2, mira)


@pytest.mark.parametrize(
    "fault",
    [
        Fault(status=500),
        Fault(drop=True),
        Fault(drop=True, after=True),
        too_many_requests(1),
    ],
    ids=["500", "dropped", "answer lost", "429"],
)
def test_a_failed_fetch_loses_nothing_and_doubles_nothing(
    api: Server, bot: BotProcess, mira: int, fault: Fault
) -> None:
    api.fail("getUpdates", fault)
    api.say(mira, "/help")
    api.say(mira, "/help")
    api.wait_for_sent(2, mira)
    api.wait_until(lambda _: bot.states(mira) == {"sent": 2})
    assert bot.received(mira) == ["done", "done"]
