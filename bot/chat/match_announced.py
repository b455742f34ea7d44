"""The announcement of a match in a message of the chat, with its names in full and who serves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.announced_names import is_slip_of_schedule, named_in_full, with_nearest
from bot.chat.announcements import begins_as_match, match_said
from bot.chat.event_heading import without_heading
from bot.chat.message import Message, opponents
from bot.chat.names import index_of
from bot.chat.opponents_told import denied, is_schedules, opponents_told
from bot.chat.said import Certainty, MatchSaid, Mention
from bot.chat.schedule_said import A_PAIR
from bot.chat.score_serving import serving_side
from bot.chat.serving_said import serves_at_first
from bot.chat.short_forms import in_full
from bot.chat.view import ChatView


def match_announced(message: Message, chat: ChatView) -> MatchSaid | None:
    """The match to come; None where play is told, or who serves in the match that is on."""
    theirs = [one for one in opponents(message.mentions, chat) if not _is_a_slip(one)]
    named: Sequence[Mention] = theirs
    said = without_heading(message.said)
    begins = begins_as_match(said)
    if begins:
        named = named_in_full(message.text, said, message.mentions, named)
    else:
        not_them = denied(message.said, named)
        named = [one for one in named if one not in not_them and not is_schedules(one)]
    told = () if begins else opponents_told(message, theirs)
    found = match_said(message.text, said, told or named, announced=bool(told))
    line = message.told.line.text
    serves_now = chat.match_on and "serv" in line and serving_side(line) is not None
    if found is None or (serves_now and len(named) < A_PAIR):
        return None
    if message.note.claims and not begins:
        return None
    asked = with_nearest(found.mentions, index_of(chat))
    return replace(found, mentions=asked, we_serve=_serving(message))


def _is_a_slip(one: Mention) -> bool:
    """A day mistyped, where nobody of the book is called so: "tomorow"."""
    return one.certainty is Certainty.NOBODY and is_slip_of_schedule(one.typed.lower())


def _serving(message: Message) -> bool | None:
    """Whether we serve first, typed short too: "they srv"."""
    spans = [one.span for one in message.mentions if not one.pronoun]
    return serves_at_first(in_full(message.said, names=spans))
