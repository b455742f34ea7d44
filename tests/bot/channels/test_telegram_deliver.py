"""One attempt against the stand-in server: what each answer of the server becomes."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Coroutine, Iterator
from dataclasses import replace
from typing import Any, TypeVar

import pytest
from bot_api import TOKEN, Fault, Server, running, too_many_requests
from telegram import Bot

from bot.channels.telegram_bot.deliver import (
    Broken,
    Delivered,
    Moved,
    Outcome,
    Pictures,
    Refused,
    ShutOut,
    Wait,
    deliver,
)
from bot.channels.telegram_bot.requests import AiohttpRequest
from bot.channels.telegram_bot.sent_pictures import KEPT_PICTURES, SentPictures
from bot.chat.reply import Button
from bot.post import Outgoing
from knowledge.advice import ChanceCurve
from knowledge.court_picture import CourtPicture, Marker

CHAT = 11
PNG = b"\x89PNG\r\n\x1a\n"
"""First bytes of a PNG file (ISO/IEC 15948)."""

Result = TypeVar("Result")


@pytest.fixture(scope="module")
def api() -> Iterator[Server]:
    with running() as server:
        yield server


def with_bot(root: str, use: Callable[[Bot], Coroutine[Any, Any, Result]]) -> Result:
    async def run() -> Result:
        request = AiohttpRequest(connections=4)
        bot = Bot(TOKEN, base_url=f"{root}/bot", request=request, get_updates_request=request)
        await request.initialize()
        try:
            return await use(bot)
        finally:
            await request.shutdown()

    return asyncio.run(run())


def sent_as(api: Server, *messages: Outgoing) -> list[Outcome]:
    async def use(bot: Bot) -> list[Outcome]:
        return [await deliver(bot, str(CHAT), message) for message in messages]

    return with_bot(api.root, use)


def test_a_message_with_buttons(api: Server) -> None:
    button = Button(label="why", payload="1:why:lob")
    (outcome,) = sent_as(api, Outgoing(text="Lob it\nshe is short", buttons=((button,),)))
    sent = api.sent(CHAT)[-1]
    assert outcome == Delivered(external_message_id=sent.message_id)
    assert (sent.text, sent.payload("why")) == ("Lob it\nshe is short", "1:why:lob")


def test_a_picture_goes_as_a_photo_with_its_words(api: Server) -> None:
    picture = CourtPicture(
        title="Stand", alt="Mira left", markers=(Marker(x_m=1, y_m=1, label="M", ours=True),)
    )
    (outcome,) = sent_as(api, Outgoing(text="Mira <left>", picture=picture))
    sent = api.sent(CHAT)[-1]
    assert outcome == Delivered(external_message_id=sent.message_id)
    assert sent.method == "sendPhoto"
    assert sent.photo is not None
    assert sent.photo.startswith(PNG)
    assert sent.text == "Mira <left>\nPicture: Mira left"


PICTURE = CourtPicture(
    title="Stand", alt="Mira left", markers=(Marker(x_m=1, y_m=1, label="M", ours=True),)
)


def uploads(api: Server) -> int:
    return api.ask(lambda state: len(state.photos))


def test_a_picture_that_the_server_has_is_not_given_again(api: Server) -> None:
    """Bot API, "Sending Files": by its file_id."""
    first, second = (Outgoing(text=text, picture=PICTURE) for text in ("Stand", "Stay"))
    pictures = Pictures()

    async def use(bot: Bot) -> list[Outcome]:
        return [await deliver(bot, str(CHAT), one, pictures=pictures) for one in (first, second)]

    before = uploads(api)
    outcomes = with_bot(api.root, use)
    told, again = api.sent(CHAT)[-2:]
    assert outcomes == [Delivered(external_message_id=one.message_id) for one in (told, again)]
    assert uploads(api) == before + 1
    assert again.photo == told.photo
    assert again.text == "Stay\nPicture: Mira left"


def test_a_picture_that_the_server_lost_is_given_again(api: Server) -> None:
    message = Outgoing(text="Stand", picture=PICTURE)
    pictures = Pictures()

    async def use(bot: Bot) -> list[Outcome]:
        first = await deliver(bot, str(CHAT), message, pictures=pictures)
        api.ask(lambda state: state.photos.clear())
        return [first, await deliver(bot, str(CHAT), message, pictures=pictures)]

    outcomes = with_bot(api.root, use)
    sent = api.sent(CHAT)[-1]
    assert outcomes[-1] == Delivered(external_message_id=sent.message_id)
    assert sent.photo is not None
    assert sent.photo.startswith(PNG)
    assert uploads(api) == 1


def test_html_that_is_refused_with_a_known_picture_is_sent_plain(api: Server) -> None:
    refused = Fault(status=400, description="Bad Request: can't parse entities: unclosed tag")
    message = Outgoing(text="Stand", picture=PICTURE)
    pictures = Pictures()

    async def use(bot: Bot) -> Outcome:
        await deliver(bot, str(CHAT), message, pictures=pictures)
        api.fail("sendPhoto", refused, refused)
        return await deliver(bot, str(CHAT), message, pictures=pictures)

    outcome = with_bot(api.root, use)
    sent = api.sent(CHAT)[-1]
    assert outcome == Delivered(external_message_id=sent.message_id)
    assert (sent.parse_mode, sent.photo is not None) == (None, True)


def test_no_more_pictures_are_known_than_are_kept() -> None:
    pictures = SentPictures()
    shown = [replace(PICTURE, title=f"Stand {n}") for n in range(KEPT_PICTURES + 1)]
    for n, picture in enumerate(shown):
        pictures.sent(picture, {"photo": [{"file_id": f"f{n}", "width": 90}]})
    assert len(pictures) == KEPT_PICTURES
    assert pictures.number_of(shown[0]) is None
    assert pictures.number_of(shown[-1]) == f"f{KEPT_PICTURES}"


def test_a_curve_goes_as_a_photo_like_any_picture(api: Server) -> None:
    curve = ChanceCurve(title="So far", alt="Started even", points=(0.5, 0.6), now="now 6 in 10")
    sent_as(api, Outgoing(text="Ahead", picture=curve))
    sent = api.sent(CHAT)[-1]
    assert sent.photo is not None
    assert sent.photo.startswith(PNG)
    assert sent.text == "Ahead\nPicture: Started even"


def test_an_edit_changes_the_message(api: Server) -> None:
    (first,) = sent_as(api, Outgoing(text="5-4-2"))
    assert isinstance(first, Delivered)
    change = Outgoing(text="6-4-2", replaces=first.external_message_id)
    assert sent_as(api, change) == [first]
    assert api.sent(CHAT)[-1].method == "editMessageText"


def test_an_edit_that_changes_nothing_counts_as_done(api: Server) -> None:
    (first,) = sent_as(api, Outgoing(text="5-4-2"))
    assert isinstance(first, Delivered)
    before = len(api.sent(CHAT))
    same = Outgoing(text="5-4-2", replaces=first.external_message_id)
    assert sent_as(api, same) == [first]
    assert len(api.sent(CHAT)) == before


def test_an_edit_of_a_message_that_is_gone_is_said_anew(api: Server) -> None:
    (outcome,) = sent_as(api, Outgoing(text="7-4-2", replaces=999_999))
    sent = api.sent(CHAT)[-1]
    assert (sent.method, sent.text) == ("sendMessage", "7-4-2")
    assert outcome == Delivered(external_message_id=sent.message_id)


@pytest.mark.parametrize("text", ["", "   ", "\n"])
def test_a_blank_message_is_refused_with_its_reason(api: Server, text: str) -> None:
    (outcome,) = sent_as(api, Outgoing(text=text))
    assert isinstance(outcome, Refused)
    assert "empty" in outcome.because


@pytest.mark.parametrize(
    ("fault", "outcome"),
    [
        (too_many_requests(7), Wait(seconds=7.0)),
        (
            Fault(status=403, description="Forbidden: bot was kicked from the group chat"),
            ShutOut(because="Forbidden: bot was kicked from the group chat"),
        ),
        (
            Fault(status=400, description="Bad", parameters={"migrate_to_chat_id": -100}),
            Moved(new_chat="-100"),
        ),
        (
            Fault(status=400, description="Bad Request: chat not found"),
            Refused(because="Chat not found"),
        ),
        (Fault(status=500, description="Oops"), Broken(because="Oops", unsent=False)),
    ],
    ids=["429", "403", "migrated", "400", "500"],
)
def test_each_error_of_the_server(api: Server, fault: Fault, outcome: Outcome) -> None:
    api.fail("sendMessage", fault)
    (found,) = sent_as(api, Outgoing(text="x"))
    assert type(found) is type(outcome)
    if not isinstance(outcome, Refused):
        assert found == outcome


def test_a_connection_that_breaks_may_have_carried_the_message(api: Server) -> None:
    api.fail("sendMessage", Fault(drop=True))
    (outcome,) = sent_as(api, Outgoing(text="x"))
    assert isinstance(outcome, Broken)
    assert not outcome.unsent
    assert TOKEN not in outcome.because


def test_without_a_connection_it_was_surely_not_sent() -> None:
    with running() as gone:
        pass
    (outcome,) = sent_as(gone, Outgoing(text="x"))
    assert isinstance(outcome, Broken)
    assert outcome.unsent
    assert TOKEN not in outcome.because
