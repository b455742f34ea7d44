"""Details of a counted rally: told with it, added in words or by tap, corrected, taken back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.rally_book import (
    Played,
    keep,
    kept_of,
    noted,
    played_at,
    reading,
    served_otherwise,
    who_ended,
    with_told,
)
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.match_log import unvoided
from bot.chat.payload import Verb, tap
from bot.chat.rally_kept import KeptRally
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import Certainty, DetailSaid, Mention, RallyDetails, RallySaid
from bot.chat.wording import wording
from knowledge.vocabulary import Ending, PlayerId
from scouting_db.values import EntryKind, EntryRow, MatchId, Micros

ADDS_WITHIN_S = 20
"""How long after a rally "hale's error" is about it and not a rally of its own. The next one is
over later: ten seconds to serve (rulebook, from memory) and a rally of ten more on average
(professional mixed: 10.6 s, Sports 2025, 13:397)."""

_MICROS_PER_S = 1_000_000

TAPPED_ENDINGS: Mapping[str, Ending] = {
    "winner": Ending.WINNER,
    "error": Ending.UNFORCED_ERROR,
    "forced": Ending.FORCED_ERROR,
}
"""What a tap may say of a rally's end."""


# With the rally itself.


def keep_told(desk: Desk, match: MatchId, n: int, said: RallySaid) -> None:
    """What the words that counted a rally tell of it, kept with it: undone together."""
    played = played_at(desk, match, n)
    if played is None:
        return
    kept = kept_of(desk, match, n).with_line(said.text)
    keep(desk, with_told(desk, played, kept, said.details))


def lines_about(desk: Desk, match: MatchId, n: int, strangers: Sequence[Mention] = ()) -> list[str]:
    """What a reply says of the rally below the score: what was understood, and who doesn't play."""
    played = played_at(desk, match, n)
    if played is None:
        return []
    kept = kept_of(desk, match, n)
    lines = noted(desk, played, kept), served_otherwise(desk, played, kept)
    found = [line for line in lines if line is not None]
    return found + [_not_playing(desk, one) for one in strangers[:1]]


def _not_playing(desk: Desk, mention: Mention) -> str:
    return wording("rally.stranger").format(name=name_of_stranger(desk, mention))


def name_of_stranger(desk: Desk, mention: Mention) -> str:
    """As replies call somebody the book knows; any other name as it was typed."""
    if mention.certainty is Certainty.SURE and desk.view.player(mention.players[0]) is not None:
        return desk.view.short_name(mention.players[0])
    return f"{mention.typed[:1].upper()}{mention.typed[1:]}"


def buttons_about(
    desk: Desk, match: MatchId, n: int, strangers: Sequence[Mention] = ()
) -> list[Button]:
    """The one optional tap that says more of the rally: how it ended, then whose it was."""
    played = played_at(desk, match, n)
    if played is None:
        return []
    kept = kept_of(desk, match, n)
    row = kept.row
    if strangers:
        who = _ended_by(played, row.ending) if row.ending else played.theirs
        return _names(desk, who, Verb.MEANT, match, n)
    if row.ending is None:
        return ending_buttons(played)
    if who_ended(desk, played, kept) is None:
        return _names(desk, _ended_by(played, row.ending), Verb.ENDED_BY, match, n)
    return []


def ending_buttons(played: Played) -> list[Button]:
    """Winner, the loser's miss, or a forced one."""
    miss = "rally.their_miss" if played.won_by_us else "rally.our_miss"
    labels = {"winner": "rally.tap_winner", "error": miss, "forced": "rally.tap_forced"}
    return [
        Button(label=wording(key), payload=tap(Verb.ENDED, what, played.match, played.n))
        for what, key in labels.items()
    ]


def _ended_by(played: Played, ending: Ending) -> tuple[PlayerId, ...]:
    """The pair that ended it so."""
    return played.ours if played.won_by_us is not ending.is_error else played.theirs


def _names(
    desk: Desk, players: Sequence[PlayerId], verb: Verb, match: MatchId, n: int
) -> list[Button]:
    return [
        Button(label=desk.view.short_name(player), payload=tap(verb, player, match, n))
        for player in players
        if desk.view.player(player) is not None
    ]


# By tap.


def tell_ending(desk: Desk, what: str, match: MatchId, n: int) -> Reply:
    """How an earlier rally ended; a second tap corrects the first."""
    ending = TAPPED_ENDINGS[what]
    return _tell(desk, match, n, RallyDetails(ending=ending, is_called=True))


def tell_whose(desk: Desk, player: PlayerId, match: MatchId, n: int) -> Reply:
    """Whose winner or error it was."""
    played = played_at(desk, match, n)
    if played is None or player not in (*played.ours, *played.theirs):
        return Reply(text=wording("unclear.too_old"))
    return _tell(desk, match, n, RallyDetails(by=player, by_us=player in played.ours))


def tell_meant(desk: Desk, player: PlayerId, match: MatchId, n: int) -> Reply:
    """Whom the name of somebody not in this match stood for: the words are read again so."""
    played = played_at(desk, match, n)
    if played is None or player not in (*played.ours, *played.theirs):
        return Reply(text=wording("unclear.too_old"))
    before = kept_of(desk, match, n)
    after = before
    for line in before.lines:
        told = reading(desk, played, line, instead=player).details
        after = with_told(desk, played, after, told)
    return _change(desk, played, before, after)


def _tell(desk: Desk, match: MatchId, n: int, told: RallyDetails) -> Reply:
    played = played_at(desk, match, n)
    if played is None:
        return Reply(text=wording("unclear.too_old"))
    before = kept_of(desk, match, n)
    return _change(desk, played, before, with_told(desk, played, before, told))


# In words.


def take_detail(desk: Desk, said: DetailSaid) -> Reply | None:
    """What is said of the last rally; None where it was not about one."""
    last = last_told_of(desk)
    if last is not None and said.leaves_who:
        return None if desk.context.asked_last else _ask_who(desk, last, said)
    return None if last is None else add_words(desk, last, said.text, is_remark=True)


def _ask_who(desk: Desk, played: Played, said: DetailSaid) -> Reply:
    """Whose the rally was, of the four; nothing is written for a word that may mean three."""
    known = kept_of(desk, played.match, played.n).row
    four = _ended_by(played, known.ending) if known.ending else (*played.ours, *played.theirs)
    but = desk.asker if said.not_asker else None
    who = [player for player in four if player != but] or four
    buttons = rows(_names(desk, who, Verb.ENDED_BY, played.match, played.n))
    return Reply(text=wording("rally.whose"), buttons=buttons, about=("match", played.match))


def last_told_of(desk: Desk) -> Played | None:
    """The rally counted last, if nothing else was done in this chat since."""
    match = desk.context.match
    change = desk.book.last_change(desk.chat.chat)
    if match is None or change is None or change.verb not in ("entry", "rally_detail"):
        return None
    counted = unvoided(desk.entries())
    if not counted or counted[-1].kind is not EntryKind.RALLY:
        return None
    if change.targets.get("match") != match or change.targets.get("n") != counted[-1].n:
        return None
    return played_at(desk, match, counted[-1].n)


def adds_to_last(desk: Desk, said: RallySaid) -> Played | None:
    """The rally that was just counted, where the words only tell how one ended and fit it.

    "Hale's error" after a tap is that rally's end; after one told at length it is the next one.
    """
    last = None if said.says_whose or said.scored else last_told_of(desk)
    if last is None or last.won_by_us is not said.won_by_us:
        return None
    entry = next(one for one in desk.entries() if one.n == last.n)
    row = kept_of(desk, last.match, last.n).row
    is_open = row.by_player is None and (row.words is None or row.ending is None)
    is_fresh = desk.now - entry.at <= Micros(ADDS_WITHIN_S * _MICROS_PER_S)
    return last if is_fresh and is_open else None


def add_words(
    desk: Desk,
    played: Played,
    text: str,
    *,
    is_remark: bool = False,
    said: RallySaid | None = None,
) -> Reply:
    """Words about a counted rally: later ones correct earlier ones, and all are kept.

    `said` is the rally as they tell it, where they were read as one.
    """
    found = said or reading(desk, played, text, is_remark=is_remark)
    before = kept_of(desk, played.match, played.n)
    after = with_told(desk, played, before.with_line(text), found.details)
    return _change(desk, played, before, after, strangers=found.strangers)


def read_anew(desk: Desk, played: Played, text: str) -> Reply:
    """A rally whose message was edited: its details are what the text now says, no more."""
    before = kept_of(desk, played.match, played.n)
    blank = replace(
        before,
        row=replace(before.row, ending=None, by_player=None, stroke=None, wing=None, words=None),
        choices=tuple(one for one in before.choices if one.tagged_before),
    )
    found = reading(desk, played, text)
    after = with_told(desk, played, blank.with_line(text), found.details)
    return _change(desk, played, before, after, strangers=found.strangers)


def _change(
    desk: Desk,
    played: Played,
    before: KeptRally,
    after: KeptRally,
    *,
    strangers: Sequence[Mention] = (),
) -> Reply:
    """Keep it, undoable in one step, and say so under the score."""
    match, n = played.match, played.n
    if after == before:
        return _told(desk, played, [wording("score.counted_so")], [])
    keep(desk, after)
    change = desk.record(
        "rally_detail", {"match": match, "n": n, "after": after.to_json()}, before.to_json()
    )
    lines = lines_about(desk, match, n, strangers) or [wording("rally.words_kept")]
    more = [*buttons_about(desk, match, n, strangers), undo_button(change)]
    return _told(desk, played, lines, more)


def _told(desk: Desk, played: Played, lines: Sequence[str], more: Sequence[Button]) -> Reply:
    if desk.context.match != played.match:
        return Reply(text="\n".join(lines), buttons=rows(more), about=("match", played.match))
    score, taps = scoreboard(desk, played.match)
    return Reply(
        text="\n".join([score, *lines]),
        buttons=rows([*taps, *more]),
        about=("match", played.match),
    )


# Undo and redo.


def detail_before(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    """The rally's details as they were before the change."""
    keep(desk, KeptRally.from_json(MatchId(targets["match"]), targets["n"], before))
    return wording("rally.details")


def detail_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """The rally's details as the change left them."""
    keep(desk, KeptRally.from_json(MatchId(targets["match"]), targets["n"], targets["after"]))
    return wording("rally.details")


def stands_as(desk: Desk, targets: Mapping[str, Any], stored: Mapping[str, Any]) -> bool:
    """Whether the rally's details are still these: else something newer was told of it."""
    match, n = MatchId(targets["match"]), targets["n"]
    return kept_of(desk, match, n) == KeptRally.from_json(match, n, stored)


def is_last(entries: Sequence[EntryRow], n: int) -> bool:
    """Whether nothing that counts came after rally `n`."""
    counted = unvoided(entries)
    return bool(counted) and counted[-1].n == n
