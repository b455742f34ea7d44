"""What undo and redo do for each kind of change, by its verb."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from bot.chat.answers.claims_told import cut
from bot.chat.answers.coaching import coach_before
from bot.chat.answers.desk import Desk
from bot.chat.answers.formats import format_as_stored
from bot.chat.answers.imports import back_to_book
from bot.chat.answers.note_offers import put_in, take_out
from bot.chat.answers.notes import observation_of, stored
from bot.chat.answers.own_rates import BASE_RATES, numbers_as_stored
from bot.chat.answers.pair_of_match import pair_before
from bot.chat.answers.pool_undo import pool_again, pool_before, pool_match_before
from bot.chat.answers.rally_details import detail_again, detail_before
from bot.chat.answers.reminder_times import times_as_stored
from bot.chat.answers.renamed import name_back, rename_again
from bot.chat.answers.undo_entries import remember_before, unvoid_entry, void_entry
from bot.chat.answers.video import video_again, video_before
from bot.chat.context import Context
from bot.chat.match_log import format_from_json
from knowledge.vocabulary import AgreementKey, PlayerId
from scouting_db.values import BookId, MatchId, NoteId, PairId

Way = Callable[[Desk, Mapping[str, Any], Mapping[str, Any]], str]
"""Takes a change back or puts it back, and says what it was about."""


def _delete_note(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    note = NoteId(targets["note"])
    desk.book.delete_note(note)
    card = desk.context.scouting
    if card is not None:
        desk.context = replace(desk.context, scouting=card.without_note(note))
    return _note_words(desk, note)


def _restore_note(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    note = NoteId(targets["note"])
    desk.book.restore_note(note)
    card = desk.context.scouting
    if card is not None:
        desk.context = replace(desk.context, scouting=card.with_note_again(note))
    return _note_words(desk, note)


def _part_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """The whole note is there again instead of what was left of it."""
    desk.book.delete_note(NoteId(targets["kept"]))
    desk.book.restore_note(NoteId(targets["note"]))
    return f"“{cut(targets['words'])}”"


def _part_out(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.book.delete_note(NoteId(targets["note"]))
    desk.book.restore_note(NoteId(targets["kept"]))
    return f"“{cut(targets['words'])}”"


def _note_words(desk: Desk, note: NoteId) -> str:
    row = desk.book.note(note)
    return "the note" if row is None else f"“{cut(row.text)}”"


def _unread_note(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    note = NoteId(targets["note"])
    row = desk.book.note(note)
    desk.book.replace_observations(
        note, [observation_of(one) for one in before["observations"]], origin=None
    )
    if row is not None:
        desk.trace["before"] = stored(row.observations)
    return "how I read that note"


def _read_note_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    told = [observation_of(one) for one in targets["after"]]
    desk.book.replace_observations(NoteId(targets["note"]), told, origin=None)
    return "how I read that note"


def _unannounce(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    match = MatchId(targets["match"])
    if not desk.book.entries(match):
        desk.book.remove_match(match)
        if "times" in before:
            times_as_stored(desk, before["times"])
    if desk.context.match == match:
        remember_before(desk, before)
    return "the match"


def _remove_player(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    player = PlayerId(targets["player"])
    name = desk.view.name_of(player)
    desk.book.remove_player(player)
    return name


def _restore_player(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    player = PlayerId(targets["player"])
    desk.book.restore_player(player)
    return "the player"


def _withdraw(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.book.withdraw(PairId(targets["pair"]), AgreementKey(targets["key"]))
    return "what you agreed"


def _agree_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.book.agree(
        PairId(targets["pair"]),
        AgreementKey(targets["key"]),
        targets["value"],
        targets["words"],
    )
    return "what you agreed"


def _forget_nickname(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.book.remove_alias(PlayerId(targets["player"]), targets["words"])
    return "the nickname"


def _know_nickname(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.book.add_alias(PlayerId(targets["player"]), targets["words"])
    return "the nickname"


def _remember(desk: Desk, _targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    remember_before(desk, before)
    pair_before(desk, before)
    return "your pair"


def _usual_before(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    desk.book.prefer(targets.get("key", BASE_RATES), before["value"])
    return "your usual rally numbers"


def _usual_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.book.prefer(targets.get("key", BASE_RATES), targets["value"])
    return "your usual rally numbers"


def _format_before(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    format_as_stored(desk, MatchId(targets["match"]), format_from_json(before["format"]))
    return "the format"


def _format_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    format_as_stored(desk, MatchId(targets["match"]), format_from_json(targets["format"]))
    return "the format"


def _own_rates_before(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    numbers_as_stored(desk, before)
    return _own_rates_words(targets)


def _own_rates_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    numbers_as_stored(desk, targets)
    return _own_rates_words(targets)


def _own_rates_words(targets: Mapping[str, Any]) -> str:
    are_set = targets.get("rates") is not None or targets.get("counts") is not None
    return "your rally numbers" if are_set else "dropping your numbers"


def _times_before(desk: Desk, _targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    times_as_stored(desk, before)
    return "times and reminders"


def _times_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    times_as_stored(desk, targets["after"])
    return "times and reminders"


def _take_out_import(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    for note in targets["notes"]:
        desk.book.delete_note(NoteId(note))
    for player in targets["players"]:
        desk.book.remove_player(PlayerId(player))
    return f"{len(targets['players'])} players"


def _import_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    for player in targets["players"]:
        desk.book.restore_player(PlayerId(player))
    for note in targets["notes"]:
        desk.book.restore_note(NoteId(note))
    return f"{len(targets['players'])} players"


def _leave_book(desk: Desk, _targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    went = back_to_book(desk, BookId(before["book"]))
    return "opening that book" if went else "nothing: the book before is closed to you"


def _part_them(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    """The pair goes unless something was done with it since; "they" means whom it meant before."""
    pair = desk.view.pair_id([PlayerId(one) for one in targets["players"]])
    if pair is not None:
        desk.book.unmake_pair(pair)
    if desk.context.match == Context.from_json(before["context"]).match:
        remember_before(desk, before)
    return "who plays with whom"


def _pair_them_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.pair_of([PlayerId(one) for one in targets["players"]])
    return "who plays with whom"


UNDO: Mapping[str, Way] = {
    "import": _take_out_import,
    "open_book": _leave_book,
    "times": _times_before,
    "add_note": _delete_note,
    "delete_note": _restore_note,
    "part_note": _part_again,
    "read_note": _unread_note,
    "add_claim": take_out,
    "entry": void_entry,
    "announce": _unannounce,
    "add_player": _remove_player,
    "pair": _part_them,
    "agree": _withdraw,
    "nickname": _forget_nickname,
    "rename": name_back,
    "context": _remember,
    "base_rates": _usual_before,
    "own_rates": _own_rates_before,
    "format": _format_before,
    "rally_detail": detail_before,
    "pool": pool_before,
    "video": video_before,
    "coach": coach_before,
    "pool_match": pool_match_before,
}

REDO: Mapping[str, Way] = {
    "import": _import_again,
    "times": _times_again,
    "add_note": _restore_note,
    "delete_note": _delete_note,
    "part_note": _part_out,
    "read_note": _read_note_again,
    "add_claim": put_in,
    "entry": unvoid_entry,
    "add_player": _restore_player,
    "pair": _pair_them_again,
    "agree": _agree_again,
    "nickname": _know_nickname,
    "rename": rename_again,
    "base_rates": _usual_again,
    "own_rates": _own_rates_again,
    "format": _format_again,
    "rally_detail": detail_again,
    "video": video_again,
    "pool": pool_again,
}

TAKES_OUT = frozenset({"delete_note", "part_note"})
"""Changes that took something out of the book: taking them back brings it in again."""
