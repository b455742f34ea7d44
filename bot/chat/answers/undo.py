"""Undo and redo of anything: each change says what it did, and what stood before."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from bot.chat.answers.coaching import coach_before
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.formats import format_as_stored, is_under_way
from bot.chat.answers.imports import back_to_book
from bot.chat.answers.note_offers import can_be_added_again, put_in, take_out
from bot.chat.answers.notes import cut, observation_of, stored
from bot.chat.answers.own_rates import BASE_RATES, numbers_as_stored
from bot.chat.answers.pool_undo import (
    can_come_again,
    pool_again,
    pool_before,
    pool_match_before,
)
from bot.chat.answers.rally_details import detail_again, detail_before, stands_as
from bot.chat.answers.reminder_times import times_as_stored
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.answers.scout_card import is_of_card, with_question
from bot.chat.answers.undo_entries import (
    is_superseded,
    remember_before,
    unvoid_entry,
    void_entry,
)
from bot.chat.answers.video import video_again, video_before
from bot.chat.match_log import format_from_json
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.vocabulary import AgreementKey, PlayerId
from scouting_db.values import (
    BookId,
    ChangeId,
    ChangeRow,
    MatchId,
    NoteId,
    PairId,
)

Way = Callable[[Desk, Mapping[str, Any], Mapping[str, Any]], str]
"""Takes a change back or puts it back, and says what it was about."""


def undo_last(desk: Desk) -> Reply:
    """Take back the newest change of this chat that stands."""
    change = desk.book.last_change(desk.chat.chat)
    if change is None:
        return Reply(text=wording("nothing_to_undo"))
    return _undo(desk, change)


def can_be_put_back(desk: Desk, change: ChangeRow) -> bool:
    """Whether it is of a kind that can be, and its match's log or its note did not go on."""
    too_late = _is_overtaken(desk, change) or _comes_too_late(desk, change)
    return change.verb in _REDO and not too_late


def _is_overtaken(desk: Desk, change: ChangeRow) -> bool:
    if change.verb == "add_claim":
        return not can_be_added_again(desk, change)
    if change.verb == "rally_detail":
        return not stands_as(desk, change.targets, change.before)
    if change.verb == "pool":
        return not can_come_again(change.targets)
    if change.verb != "entry":
        return False
    return is_superseded(desk.book.entries(MatchId(change.targets["match"])), change.targets)


def undo(desk: Desk, change_id: ChangeId) -> Reply:
    """Take back one change by its button; a second press says so and does nothing."""
    change = desk.book.change(change_id)
    if change is None or change.verb not in _UNDO:
        return Reply(text=wording("unclear.too_old"))
    if change.undone:
        return Reply(text=wording("already_undone"))
    return _undo(desk, change)


def redo(desk: Desk, change_id: ChangeId) -> Reply:
    """Put back what was undone."""
    change = desk.book.change(change_id)
    if change is None or not change.undone or change.verb not in _REDO:
        return Reply(text=wording("unclear.too_old"))
    if _is_overtaken(desk, change) or _comes_too_late(desk, change):
        return _told(desk, change, wording("superseded"), None)
    what = _REDO[change.verb](desk, change.targets, change.before)
    desk.book.mark_redone(change.change)
    desk.changed()
    return _told(desk, change, wording("redone").format(what=what), undo_button(change.change))


def _comes_too_late(desk: Desk, change: ChangeRow) -> bool:
    """A format once it is played in, and numbers of ours once another match is on."""
    match = change.targets.get("match")
    if change.verb == "format":
        return match is not None and is_under_way(desk.book.entries(MatchId(match)))
    return change.verb == "own_rates" and match != desk.context.match


def _undo(desk: Desk, change: ChangeRow) -> Reply:
    if _comes_too_late(desk, change):
        return Reply(text=wording("unclear.too_old"))
    if change.verb == "rally_detail" and not stands_as(
        desk, change.targets, change.targets["after"]
    ):
        return Reply(text=wording("unclear.too_old"))
    what = _UNDO[change.verb](desk, change.targets, change.before)
    desk.book.mark_undone(change.change)
    desk.changed()
    text = wording("undone").format(what=what)
    if change.verb not in _REDO or (change.verb == "pool" and not can_come_again(change.targets)):
        return Reply(text=text)
    again = Button(label=wording("redo"), payload=tap(Verb.REDO, change.change))
    return _told(desk, change, text, again)


def _told(desk: Desk, change: ChangeRow, text: str, button: Button | None) -> Reply:
    """What was done; in a running match with the score as it now stands and the taps to go on."""
    match, more = change.targets.get("match"), [] if button is None else [button]
    if is_of_card(desk, change):
        return with_question(desk, Reply(text=text, buttons=rows(more)))
    if change.verb not in ("entry", "rally_detail") or match is None or match != desk.context.match:
        return Reply(text=text, buttons=rows(more))
    score, taps = scoreboard(desk, MatchId(match))
    return Reply(
        text="\n".join([text, score]), buttons=rows([*taps, *more]), about=("match", match)
    )


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


def _name_back(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    desk.book.rename(PlayerId(targets["player"]), before["name"])
    return "the new name"


def _rename_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    desk.book.rename(PlayerId(targets["player"]), targets["name"])
    return "the new name"


def _remember(desk: Desk, _targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    remember_before(desk, before)
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


_UNDO: Mapping[str, Way] = {
    "import": _take_out_import,
    "open_book": _leave_book,
    "times": _times_before,
    "add_note": _delete_note,
    "delete_note": _restore_note,
    "read_note": _unread_note,
    "add_claim": take_out,
    "entry": void_entry,
    "announce": _unannounce,
    "add_player": _remove_player,
    "agree": _withdraw,
    "nickname": _forget_nickname,
    "rename": _name_back,
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

_REDO: Mapping[str, Way] = {
    "import": _import_again,
    "times": _times_again,
    "add_note": _restore_note,
    "delete_note": _delete_note,
    "add_claim": put_in,
    "entry": unvoid_entry,
    "add_player": _restore_player,
    "agree": _agree_again,
    "nickname": _know_nickname,
    "rename": _rename_again,
    "base_rates": _usual_again,
    "own_rates": _own_rates_again,
    "format": _format_again,
    "rally_detail": detail_again,
    "video": video_again,
    "pool": pool_again,
}
