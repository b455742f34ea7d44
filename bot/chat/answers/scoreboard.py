"""The score as it is shown: the call, who serves from where to whom, and the taps to count on."""

from __future__ import annotations

from bot.chat.answers.coachs_pairs import of_which_pair
from bot.chat.answers.desk import Desk
from bot.chat.answers.tag_taps import tag_buttons
from bot.chat.match_log import MatchLog
from bot.chat.payload import Verb, tap
from bot.chat.reply import Button
from bot.chat.wording import wording
from knowledge.advice import CALL_LIMIT
from knowledge.game import (
    Discipline,
    GameState,
    Lineup,
    courts,
    is_opening,
    receiver,
    server,
)
from knowledge.vocabulary import PlayerId, Side
from scouting_db.values import MatchId

PAIR = 2


def scoreboard(
    desk: Desk, match: MatchId, *, ask_starters: bool = False
) -> tuple[str, list[Button]]:
    """The score of the current match now, and the taps that count on from here.

    Every reply that leaves a match running carries them: a tap under an older message expects
    a line that the log already has. `ask_starters` offers the unknown ones in mid-game too, and
    says which game it is, as for somebody who asks how it stands.
    """
    log = desk.log()
    if not log.serve_known and not log.match.game.is_over and is_opening(log.match.game):
        text = "\n".join([wording("match.who_serves"), *of_which_pair(desk)])
        return text, serve_buttons(match, log)
    if log.is_serve_open and not log.match.game.is_over and not is_opening(log.match.game):
        text, asked = serve_open(match, log)
        text = "\n".join([text, *of_which_pair(desk)])
        return text, [*asked, *score_buttons(match, log.lines + 1)]
    text = score_text(desk, log, names_game=ask_starters)
    return text, score_taps(desk, match, log, ask_starters=ask_starters)


def serve_open(match: MatchId, log: MatchLog) -> tuple[str, list[Button]]:
    """The points, which are sure, and the taps that set the serve at them."""
    game = log.match.game
    calls = {"us": f"{game.ours}-{game.theirs}", "them": f"{game.theirs}-{game.ours}"}
    buttons = [
        Button(label=label, payload=tap(Verb.SCORE, who, calls[who], match, log.lines + 1))
        for label, who in ((wording("match.we_serve"), "us"), (wording("match.they_serve"), "them"))
    ]
    return wording("score.open_serve").format(ours=game.ours, theirs=game.theirs), buttons


def score_text(desk: Desk, log: MatchLog, *, names_game: bool = False) -> str:
    """The score, and to a coach of several pairs of whose match it is."""
    return "\n".join([_standing_now(desk, log, names_game=names_game), *of_which_pair(desk)])


def _standing_now(desk: Desk, log: MatchLog, *, names_game: bool) -> str:
    """The score line; between two games who won the last and who serves first next.

    From the second game on its number opens the line at 0-0, and with `names_game` at any score.
    """
    game = log.match.game
    number = log.match.games_ours + log.match.games_theirs + 1
    if not game.is_over:
        is_named = number > 1 and (names_game or is_opening(game))
        return score_line(desk, game, game_no=number if is_named else None)
    key = "match.game_over_won" if game.we_won else "match.game_over_lost"
    which = f"{number} " if game.format.best_of > 1 else ""
    over = wording(key).format(number=which, score=f"{game.ours}-{game.theirs}")
    next_first = log.match.we_serve_next_game
    if next_first is None:
        return "\n".join([over, wording("match.who_serves_next")])
    return "\n".join(
        [over, wording("match.we_serve_next" if next_first else "match.they_serve_next")]
    )


def score_taps(
    desk: Desk, match: MatchId, log: MatchLog, *, ask_starters: bool = False
) -> list[Button]:
    """Rallies and the time-out; at a game's start also who serves first and who starts right."""
    game = log.match.game
    buttons = score_buttons(match, log.lines + 1)
    if game.is_over:
        return [*buttons[:2], *serve_buttons(match, log)]
    if is_opening(game) or ask_starters:
        buttons += starter_buttons(desk, match, log)
    return [*buttons, *server_buttons(desk, match, log), *tag_buttons(desk, match, log)]


def serve_buttons(match: MatchId, log: MatchLog) -> list[Button]:
    """Who serves first; after a game the side whose turn it is by the rulebook stands first."""
    key = "first" if log.match.game.is_over else "serve"
    buttons = [
        Button(
            label=wording(f"match.{who}_{key}"),
            payload=tap(Verb.SERVE, side, match, log.next_game_no),
        )
        for who, side in (("we", "us"), ("they", "them"))
    ]
    they_are_next = log.match.game.is_over and log.match.we_serve_next_game is False
    return buttons[::-1] if they_are_next else buttons


def starter_buttons(desk: Desk, match: MatchId, log: MatchLog) -> list[Button]:
    """Who started right: ours unless known by now, when only the other; theirs until known."""
    if log.match.format.discipline is Discipline.SINGLES:
        return []
    lineup = log.match.game.lineup or Lineup()
    ours, theirs = desk.ours, desk.context.theirs
    offered = [("us", one, "match.our_starter") for one in ours if one != lineup.our_starter]
    if lineup.their_starter is None:
        offered += [("them", one, "match.their_starter") for one in theirs]
    return [
        Button(
            label=wording(key).format(name=name),
            payload=tap(Verb.SIDES, side, player, match, log.next_game_no),
        )
        for side, player, key in offered
        if len(ours if side == "us" else theirs) == PAIR
        and (name := _name(desk, player)) is not None
    ]


def server_buttons(desk: Desk, match: MatchId, log: MatchLog) -> list[Button]:
    """Which of a known pair serves, where the score does not settle it."""
    game = log.match.game
    if server(game) is not None or game.format.discipline is Discipline.SINGLES:
        return []
    return [
        Button(
            label=wording("score.serves").format(name=name),
            payload=tap(Verb.SERVER, player, match, log.lines + 1),
        )
        for player in (game.lineup or Lineup()).pair(ours=game.we_serve)
        if player is not None and (name := _name(desk, player)) is not None
    ]


def score_buttons(match: MatchId, expected: int) -> list[Button]:
    """The taps of a running match; each carries the log number it expects."""
    return [
        Button(label=wording("match.our_rally"), payload=tap(Verb.RALLY, "us", match, expected)),
        Button(
            label=wording("match.their_rally"), payload=tap(Verb.RALLY, "them", match, expected)
        ),
        Button(label=wording("match.timeout"), payload=tap(Verb.TIMEOUT, "us", match, expected)),
    ]


def score_line(desk: Desk, game: GameState, *, game_no: int | None = None) -> str:
    """The call, who serves from where, and to whom; whoever is not known by name is left out.

    `game_no` stands first where it is new which game of the match this is.
    """
    which = "" if game_no is None else wording("match.game_no").format(number=game_no)
    return which + _line_of(desk, game, room=CALL_LIMIT - len(which))


def _line_of(desk: Desk, game: GameState, *, room: int) -> str:
    serves = _name(desk, server(game))
    who = (
        wording("score.we" if game.we_serve else "score.they")
        if serves is None
        else wording("score.serves").format(name=serves)
    )
    if game.serving_court is None:
        return wording("score.line").format(call=game.call, who=who + _standing(desk, game))
    who += wording("score.from").format(court=game.serving_court)
    receives = _name(desk, receiver(game))
    to = "" if receives is None else wording("score.to").format(name=receives)
    full = wording("score.line").format(call=game.call, who=who + to)
    return full if len(full) <= room else wording("score.line").format(call=game.call, who=who)


def _standing(desk: Desk, game: GameState) -> str:
    """The serving pair's courts where the call does not settle which of the two serves."""
    at = courts(game, ours=game.we_serve) or {}
    right, left = (_name(desk, at.get(side)) for side in (Side.RIGHT, Side.LEFT))
    if right is None or left is None:
        return ""
    return wording("score.standing").format(right=right, left=left)


def _name(desk: Desk, player: PlayerId | None) -> str | None:
    """As replies call somebody; None for who is not known or no longer in the book."""
    if player is None or desk.view.player(player) is None:
        return None
    return desk.view.short_name(player)
