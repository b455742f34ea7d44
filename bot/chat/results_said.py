"""Results as players tell them: finished games, one by one or all, and matches in games."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from bot.chat.breaks_said import without_runs
from bot.chat.format_said import TARGETS
from bot.chat.numbers import groups
from bot.chat.other_matches import is_of_others
from bot.chat.results_brief import game_won, is_over, match_won, names_a_game
from bot.chat.results_doubted import LONGEST_GAME, is_going_on, is_now
from bot.chat.results_games import Game, GameTold, games_told, is_one_game, is_whole
from bot.chat.results_whose import is_told_otherwise, whose_each
from bot.chat.results_won import told_won
from bot.chat.said import ResultSaid, SaidScore
from bot.chat.score_groups import level_at
from bot.chat.score_words import BADLY_BEATEN, SIDE_OUT
from bot.chat.scores import is_all_score, said_score
from bot.chat.words import Word, folded_line
from knowledge.game import GameFormat
from knowledge.regex import regex

_CALL = ("ours", "theirs", "server")
"""The numbers of a call in doubles."""

GAMES_IN_WORDS = 3
"""A match told as "won in three" is the best of three. Common practice."""

_MARKS = frozenset(",;.!?\n")

_FINISHED = regex(
    r"\b(?:won|win(?! by\b)|lost|loss|beat|bt|took|final|finished|done|ended|wound up|fell|dropped"
    r"|dub|(?<=\d )w(?! \w)|^[wl](?= \d)|result|beaten|rip|gg|donut|bagel|game over|over they"
    r"|(?<!side )(?<!time )out(?= \d))\b"
    rf"|\b{BADLY_BEATEN} (?:us|we|they|them|em)\b"
)
_GOING_ON = regex(
    r"\b(?:nearly|almost|so far|still (?:going|playing|on)|not (?:over|done|finished)(?: yet)?|rn"
    r"|right now)\b"
)
_BY_A_LETTER = regex(r"^[wl] \d")
_WITHOUT_A_GAME = regex(
    r"\b(?:no ?shows?|forfeit\w*|walk ?over|w ?o (?:us|them|they)|conceded?|retired?|defaulted"
    r"|(?:didnt|did not|never) (?:show|showed|turn(?:ed)?)(?: up)?"
    r"|withdrew|pulled out|gave up|had to quit)\b"
)
_IN_GAMES = regex(r"\b(?:in|after) (?:(?:2|two|(?P<three>3|three))(?: games?)?|straight games)\b")
_SWEPT = regex(r"\bswept (?:us|we|they|them|em)\b")
_ONLY_A_RALLY = regex(
    r"\b(?:won|lost|took|win|lose) (?:that|the|this|a)? ?(?:point|rally|pt|serve)\b"
    r"(?! (?:pts|points|scoring|game))"
)
_THAT_ONE = regex(r"\b(?:won|lost|took|win|lose|got) (?:(?:that|this)(?: one)?|it)\b")
"""Of a rally behind a call of three numbers ("7-8-2 they won that one"), else of a game."""


def result_said(
    text: str,
    said: Sequence[Word],
    *,
    of_score: Sequence[Word] = (),
    format: GameFormat | None = None,
) -> ResultSaid | None:
    """Finished games, our points first; two games and more need no further word.

    `format` is the running match's: by it the last game told may be the one still going on, and
    "lost 2-1" a match told in games. `of_score` are the words that may hold a running score.
    """
    line = without_runs(folded_line(said))
    finished = _FINISHED.search(line) is not None and not _ONLY_A_RALLY.search(line)
    is_called = any(len(one.numbers) == len(_CALL) for one in groups(said))
    is_of_rally = is_called and _THAT_ONE.search(line) is not None
    if _GOING_ON.search(line) or is_of_others(line) or is_of_rally:
        return None
    told: Sequence[GameTold] = [one for one in games_told(said) if max(one.game) <= LONGEST_GAME]
    if len(told) == 1 and is_going_on(line):
        return None
    if format is not None and _is_running(said, told, format):
        return None
    if format is not None and is_one_game(told, format):
        return None
    finished = finished or (_is_one_over(told, format) and names_a_game(line))
    if not told:
        return _without_points(text, line, of_score, is_finished=finished, format=format)
    if finished and (tally := _tally(told, line, format)):
        return ResultSaid(text=text, won=tally[0] > tally[1], tally=tally)
    if format is not None and _is_bare_end(told, of_score, format) and not _says_other(told, line):
        game = (told[0].game,)
        return ResultSaid(text=text, games=game, won=_won_by(game), whole=is_whole(line))
    told = _without_running(told, format)
    games = tuple(one.game for one in told)
    if not games or not (finished or len(games) > 1):
        return None
    if not all(_is_finished(*one) for one in games) and not (finished and _is_short(said)):
        return None
    if any(first == second for first, second in games):
        return None
    games, won = _our_points_first(said, told)
    running = _running(of_score, said[told[-1].stop - 1].span[1])
    is_open = is_told_otherwise(said, games)
    return ResultSaid(
        text=text,
        games=games,
        won=None if is_open else won,
        running=running,
        whose_open=is_open,
        whole=len(games) == 1 and is_whole(line),
    )


def _is_running(said: Sequence[Word], told: Sequence[GameTold], format: GameFormat) -> bool:
    """ "They took two straight, its 5-7": told as it stands, where no game ends."""
    if len(told) != 1 or not is_now(said[: told[0].start]):
        return False
    return not format.is_won(max(told[0].game), min(told[0].game))


def _is_one_over(told: Sequence[GameTold], format: GameFormat | None) -> bool:
    if len(told) != 1:
        return False
    low, high = sorted(told[0].game)
    return is_over(low, high) if format is None else format.is_won(high, low)


def _without_points(
    text: str,
    line: str,
    of_score: Sequence[Word],
    *,
    is_finished: bool,
    format: GameFormat | None,
) -> ResultSaid | None:
    """ "Won in 3", "swept them", "they were a no-show", "game over, us 11 them 9"."""
    won, games = told_won(line), _IN_GAMES.search(line)
    is_best_of_three = format is None or format.best_of == GAMES_IN_WORDS
    unplayed = _WITHOUT_A_GAME.search(line)
    brief = match_won(line)
    if unplayed is None and brief is not None and not (games or _SWEPT.search(line)):
        return ResultSaid(text=text, won=brief)
    if unplayed is not None:
        gone = _who_gave_up(line[: unplayed.start()]) if won is None else won
        return None if gone is None else ResultSaid(text=text, won=gone)
    if won is not None and is_best_of_three and (games or _SWEPT.search(line)):
        lost = 1 if games and games["three"] else 0
        return ResultSaid(text=text, won=won, tally=_turned((lost, 2), won=won))
    found = said_score(of_score) if is_finished and not SIDE_OUT.search(line) else None
    score = None if found is None else found[0]
    if score is None or score.ours is None or score.theirs is None:
        return None
    game = (score.ours, score.theirs)
    return (
        ResultSaid(text=text, games=(game,), won=_won_by((game,))) if _is_finished(*game) else None
    )


def _who_gave_up(before: str) -> bool | None:
    """Whether they left it to us: "brandt no show", "we had to quit"; None if it is not said."""
    sides = re.findall(r"\b(we|they)\b", before)
    return sides[-1] == "they" if sides else None


def _our_points_first(
    said: Sequence[Word], told: Sequence[GameTold]
) -> tuple[tuple[Game, ...], bool | None]:
    """The games, and who won: each by its own word ("lost 11-9, won 11-6"), or all by one."""
    games = tuple(one.game for one in told)
    verdicts = whose_each(said, told, _each_won(said, told))
    if sum(verdict is not None for verdict in verdicts) > 1:
        each = zip(games, verdicts, strict=True)
        games = tuple(game if won is None else _turned(game, won=won) for game, won in each)
        return games, _won_by(games)
    won = told_won(folded_line(said))
    won = game_won(folded_line(said)) if won is None and len(games) == 1 else won
    if won is not None and won is not _won_most(games) and _is_flippable(games, won=won):
        games = tuple((second, first) for first, second in games)
    return games, _won_by(games) if won is None or _is_shared(games) else won


def _each_won(said: Sequence[Word], told: Sequence[GameTold]) -> list[bool | None]:
    """Who won each game, by the words before it, or by the clause that holds it alone."""
    starts = [0, *(one.stop for one in told)]
    before = [
        told_won(folded_line(said[start : one.start]))
        for start, one in zip(starts, told, strict=False)
    ]
    cuts = [0, *(at for at, word in enumerate(said) if at and set(word.gap) & _MARKS), len(said)]
    clauses = list(pairwise(cuts))
    holding = [next(span for span in clauses if span[0] <= one.start < span[1]) for one in told]
    if len(set(holding)) < len(holding):
        return before
    alone = [told_won(folded_line(said[start:stop])) for start, stop in holding]
    return alone if sum(one is not None for one in alone) > 1 else before


def _turned(game: Game, *, won: bool) -> Game:
    low, high = sorted(game)
    return (high, low) if won else (low, high)


def _is_shared(games: Sequence[Game]) -> bool:
    return 2 * sum(first > second for first, second in games) == len(games)


def _won_by(games: Sequence[Game]) -> bool | None:
    """Who won more games; None where they are shared."""
    return None if _is_shared(games) else _won_most(games)


def _tally(told: Sequence[GameTold], line: str, format: GameFormat | None) -> Game | None:
    """A match in games, ours first: "we lost 2-1" in a best of three; "L 0-2" in any."""
    won = told_won(line)
    if len(told) != 1 or won is None or (format is not None and format.best_of == 1):
        return None
    if format is None and not _BY_A_LETTER.match(line):
        return None
    low, high = sorted(told[0].game)
    needed = GAMES_IN_WORDS if format is None else format.best_of
    is_match = high == needed // 2 + 1 and low < high
    return _turned((low, high), won=won) if is_match else None


def _is_bare_end(told: Sequence[GameTold], of_score: Sequence[Word], format: GameFormat) -> bool:
    """ "Second 9-11": two numbers that end a game, nobody's by name, are told ours first."""
    if len(told) != 1 or not format.is_won(max(told[0].game), min(told[0].game)):
        return False
    found = said_score(of_score)
    score = None if found is None else found[0]
    is_bare = score is not None and (score.ours, score.we_serve) == (None, None)
    return is_bare and is_all_score(of_score)


def _says_other(told: Sequence[GameTold], line: str) -> bool:
    """ "Lost 15-8": the winner's points first, by the word beside them."""
    won = told_won(line)
    return won is not None and won is not (told[0].game[0] > told[0].game[1])


def _without_running(told: Sequence[GameTold], format: GameFormat | None) -> Sequence[GameTold]:
    """The games without the last one told, if by the format it is still going on."""
    if format is None or len(told) < 2 or format.is_won(max(told[-1].game), min(told[-1].game)):
        return told
    return told[:-1]


def _running(of_score: Sequence[Word], end: int) -> SaidScore | None:
    """The score of the next game, told after the finished ones."""
    after = [word for word in of_score if word.span[0] >= end]
    found, level = said_score(after, own_first=True), level_at(after)
    if found is None and level is not None and level[0] > 1:  # "one all" counts games
        return SaidScore(ours=level[0], theirs=level[0])
    return None if found is None else found[0]


def _is_finished(first: int, second: int) -> bool:
    """Whether such a game may be over, whatever it was played to."""
    return max(first, second) >= min(TARGETS) and first != second


def _is_short(said: Sequence[Word]) -> bool:
    return len(said) <= 12


def _won_most(games: Sequence[tuple[int, int]]) -> bool:
    return 2 * sum(first > second for first, second in games) > len(games)


def _is_flippable(games: Sequence[tuple[int, int]], *, won: bool) -> bool:
    """Turned round, the games agree with who won: they were told winner's points first."""
    return _won_most([(second, first) for first, second in games]) is won
