"""What a new line of the match log brings: the score told, an undo, and the match's end."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.scoreboard import score_buttons, score_line, scoreboard
from bot.chat.match_log import fold
from bot.chat.render import rows
from bot.chat.reply import Reply
from bot.chat.wording import wording
from knowledge.game import MatchState
from knowledge.vocabulary import Mode
from scouting_db.values import AlreadyCounted, EntryRow, MatchId
from scouting_db.values import MatchState as StoredState


def after_entry(desk: Desk, match: MatchId, row: EntryRow | AlreadyCounted) -> Reply:
    """Keep the undo, tell the score, and end the match when it is won."""
    if isinstance(row, AlreadyCounted):
        return already_counted(desk, match)
    change = desk.record("entry", {"match": match, "n": row.n}, {"context": desk.context.to_json()})
    desk.book.set_state(match, StoredState.RUNNING)
    state = fold(desk.entries(), desk.format())
    desk.trace |= {"game": state.game, "match": match}
    if state.we_won is not None:
        return close(desk, match, won=state.we_won, games=_score_of(state))
    if state.game.is_over:
        desk.context = replace(desk.context, mode=Mode.BREAK)
        key = "match.game_over_won" if state.game.we_won else "match.game_over_lost"
        text = wording(key).format(score=f"{state.game.ours}-{state.game.theirs}")
    else:
        desk.context = replace(desk.context, mode=Mode.MATCH)
        text = score_line(state.game)
        if _changes_ends(desk, state):
            text = "\n".join([text, wording("score.ends")])
    return Reply(
        text=text,
        buttons=rows([*score_buttons(match, row.n + 1), undo_button(change)]),
        about=("match", match),
    )


def already_counted(desk: Desk, match: MatchId) -> Reply:
    """A second tap of one button: nothing more is counted."""
    return with_score(desk, match, wording("already_counted"))


def with_score(desk: Desk, match: MatchId, text: str) -> Reply:
    """A line that changes nothing, with the score as it stands and the taps to count on."""
    score, buttons = scoreboard(desk, match)
    return Reply(text="\n".join([text, score]), buttons=rows(buttons), about=("match", match))


def _changes_ends(desk: Desk, state: MatchState) -> bool:
    before = fold(desk.entries()[:-1], desk.format())
    return state.changes_ends_after(before.game)


def _score_of(state: MatchState) -> str:
    return f"{state.game.ours}-{state.game.theirs}"


def close(desk: Desk, match: MatchId, *, won: bool, games: str) -> Reply:
    """The match is over, and what was said of it with it."""
    desk.book.set_state(match, StoredState.OVER)
    desk.context = desk.context.after_result()
    text = wording("match.over_won" if won else "match.over_lost").format(games=games)
    last = desk.book.last_change(desk.chat.chat)
    buttons = [] if last is None else [undo_button(last.change)]
    return Reply(text=" ".join(text.split()), buttons=rows(buttons), about=("match", match))
