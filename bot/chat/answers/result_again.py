"""A game's result told again right after it: the same game, or put right, unless it is the next."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.entries import with_score
from bot.chat.match_results import finished_games
from bot.chat.payload import Verb, tap
from bot.chat.pending import Pending
from bot.chat.render import with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import ResultSaid
from bot.chat.wording import wording
from bot.chat.words import folded_line, words
from knowledge.regex import regex
from scouting_db.values import MatchId

AGAIN_MICROS = 4 * 60 * 1_000_000
"""Within so long no further game has been played. Common practice, no source."""

_ANOTHER = regex(
    r"\b(?:again|also|too|as well|another|same score|twice|both|next|2nd|second|3rd|third"
    r"|games? (?:[2-5]|two|three|four|five))\b"
)


_NTH = (
    (
        1,
        regex(
            r"\b(?:(?:the )?(?:first|1st) (?:game|one|set)"
            r"|the (?:first|1st|opener)(?! to\b| \w+ (?:point|serve))"
            r"|game (?:1|one)|g1)\b"
        ),
    ),
    (
        2,
        regex(
            r"\b(?:(?:the )?(?:second|2nd) (?:game|one|set)|the (?:second|2nd)(?! serve)"
            r"|game (?:2|two)|g2)\b"
        ),
    ),
)
"""Which game is told, by its number; a match goes on behind the second only into its last."""

_SORRY = regex(
    r"\b(?:no|nope|sorry|wait|oops|whoops|hang on|hold on|actually|correction|meant|typo|mistake"
    r"|backwards?|(?:wrong|other) way (?:a)?round)\b"
)


def turns_the_last(desk: Desk, said: ResultSaid) -> bool:
    """Whether the game just told is told again as the other side's: "no sorry we won it 11-9".

    A next game with the same two numbers the other way round is not over so soon, whatever else is
    said of the slip.
    """
    match = desk.context.match
    if match is None or len(said.games) != 1 or said.running is not None:
        return False
    ours, theirs = said.games[0]
    line = folded_line(words(said.text))
    is_told_so = _SORRY.search(line) is not None and not _ANOTHER.search(line)
    return is_told_so and finished_games(desk.log())[-1:] == ((theirs, ours),) and _is_fresh(desk)


def game_told_anew(desk: Desk, said: ResultSaid) -> bool | Reply:
    """Whether a game named by its number is the last one known, told otherwise: that is put right.

    An earlier one, or the same points once more, add no game: the reply says what is known.
    """
    match, known = desk.context.match, finished_games(desk.log())
    nth = {number for number, form in _NTH if form.search(folded_line(words(said.text)))}
    if match is None or desk.context.pool is not None or len(said.games) != 1 or len(nth) != 1:
        return False
    number = nth.pop()
    if said.running is not None or said.corrects or number > len(known):
        return False
    if known[number - 1] == said.games[0]:
        return with_score(desk, match, wording("match.game_counted"))
    if number == len(known) and desk.log().match.game.is_over:
        return True
    told = " ".join(f"{ours}-{theirs}" for ours, theirs in known)
    return with_score(desk, match, wording("match.other_games").format(games=told))


def _is_fresh(desk: Desk) -> bool:
    """Whether the last game was told moments ago, and nothing of the next one yet."""
    now = desk.log().match.game
    is_begun = not now.is_over and (now.ours > 0 or now.theirs > 0)
    return not is_begun and desk.now - desk.entries()[-1].at <= AGAIN_MICROS


def told_again(desk: Desk, match: MatchId, said: ResultSaid) -> Reply | None:
    """What is counted already, and a tap for a next game that ended the same; None if it is new."""
    known = finished_games(desk.log())
    if len(said.games) != 1 or said.running is not None or tuple(known[-1:]) != said.games:
        return None
    if not _is_fresh(desk) or _ANOTHER.search(folded_line(words(said.text))):
        return None
    number, next_game = desk.context.pending_count + 1, len(known) + 1
    desk.context = desk.context.with_pending(
        Pending(number=number, typed="", text=f"game {next_game} {said.text}", candidates=())
    )
    label = wording("match.next_game_too").format(game=next_game)
    button = Button(label=label, payload=tap(Verb.LATER, number))
    return with_buttons(with_score(desk, match, wording("match.game_counted")), [button])
