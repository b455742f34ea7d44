"""From a score as said to a state of the game: whose number is whose, and who serves."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.match_log import MatchLog
from bot.chat.said import SaidScore, ScoreSaid
from bot.chat.score_whose_call import serving_side_of
from bot.chat.words import folded_line, words
from knowledge.dataclass import dataclass
from knowledge.game import (
    GameFormat,
    GameState,
    ScoreCall,
    Scoring,
    faults_of_call,
    side_out,
    start,
    state_at,
)
from knowledge.regex import regex


@dataclass(frozen=True, slots=True, kw_only=True)
class StateSaid:
    """The state a score says. `is_serve_guessed`: neither it nor what we knew tells who serves."""

    game: GameState
    is_serve_guessed: bool = False


def says_no_points(score: SaidScore) -> bool:
    return score.call is None and score.ours is None and score.theirs is None


def says_one_side(said: ScoreSaid) -> bool:
    """Whether it tells the points of one side only: "no they have 5"."""
    score = said.score
    return score is not None and (score.ours is None) is not (score.theirs is None)


def state_said(said: ScoreSaid, known: GameState | None, format: GameFormat) -> StateSaid | None:
    """The state a score says beside what was known; None where it is not said whose is whose."""
    score = (
        SaidScore(ours=said.all_at, theirs=said.all_at) if said.all_at is not None else said.score
    )
    if score is None:
        return None
    if known is not None and says_one_side(said):
        return _one_side_put_right(score, known)
    if said.side_out and score.call is not None and score.ours is not None:
        return _side_out_at(score.ours, score.theirs or 0, score.call, known, format)
    if said.side_out:
        gone = None if known is None or score.call is None else after_side_out(score.call, known)
        return None if gone is None else StateSaid(game=gone)
    if known is not None and said.rally_ours is not None and (said.scored or _is_bare(score)):
        reached = _after_scoring(score, known, ours=said.rally_ours)
        if reached is not None or _is_bare(score):
            return reached
    score = score if known is None else _as_points_stand(_as_their_run(score, known), known)
    we_serve = score.we_serve
    if we_serve is None:
        stays = known is not None and (
            _names_both_anew(said, score, known) or _is_turned(said, score, known)
        )
        we_serve = known.we_serve if known and stays else serving_side_of(score, known)
    points = _points(score, we_serve)
    if points is None:
        return None
    ours, theirs = points
    serving = True if we_serve is None else we_serve
    if format.is_won(ours, theirs) or format.is_won(theirs, ours):
        serving = ours > theirs
    return StateSaid(
        game=state_at(
            format,
            ours=ours,
            theirs=theirs,
            we_serve=serving,
            server=_server(score, known, serving, format, is_opening=not (ours or theirs)),
        ),
        is_serve_guessed=we_serve is None or _is_serve_left_open(score, known, (ours, theirs)),
    )


_SORRY = regex(
    r"^(?:(?:ah|oh|ok|um|uh|hang on|hold on) )*"
    r"(?:no|nope|nah|sorry|oops|whoops|wait|actually|correction|i mean|i meant)\b"
)


def _names_both_anew(said: ScoreSaid, score: SaidScore, known: GameState) -> bool:
    """ "Sorry they have 5 we have 2": points put right, and not played since the call before.

    Whoever served then serves still, though only one side's points are more than they were. The
    same two numbers the other way round were the other side's call.
    """
    if score.ours is None or score.theirs is None or (score.theirs, score.ours) == known.points:
        return False
    return _SORRY.match(folded_line(words(said.text))) is not None


def _is_turned(said: ScoreSaid, score: SaidScore, known: GameState) -> bool:
    """ "No wait its 3-0-1" after their 0-3-2: the same two numbers the other way round put points
    right. That would be our call as well, but who serves was told and is not taken back.
    """
    call = score.call
    if call is None or call.server is None or score.ours is not None or score.we_serve is not None:
        return False
    stood = (known.ours, known.theirs) if known.we_serve else (known.theirs, known.ours)
    is_turned = (call.receiving, call.serving) == stood and call.serving != call.receiving
    return is_turned and _SORRY.match(folded_line(words(said.text))) is not None


def _is_serve_left_open(score: SaidScore, known: GameState | None, points: tuple[int, int]) -> bool:
    """ "2-6" after 0-3 where they served: both have scored since, so that either may serve now, and
    who tells our points first has not said that we do. If only they scored, they may serve still.
    """
    if known is None or known.format.scoring is not Scoring.SIDE_OUT or not _is_bare(score):
        return False
    ours, theirs = points
    assert score.call is not None, "a bare score is a call"
    if score.call.serving != ours or ours == theirs:
        return False
    we_rose, they_rose = ours > known.ours, theirs > known.theirs
    return they_rose and (we_rose or not known.we_serve)


def with_serve_open(state: StateSaid | None, said: ScoreSaid, log: MatchLog) -> StateSaid | None:
    """The state with its serve marked as a guess, where neither the score nor the log tells it."""
    if state is None or log.serve_known or said.side_out or state.game.is_over:
        return state
    is_told = said.score is not None and said.score.we_serve is not None
    return state if is_told or names_server(said) else replace(state, is_serve_guessed=True)


def names_server(said: ScoreSaid) -> bool:
    """Whether it is a call of three numbers, or says which of the two servers it is."""
    score = said.score
    if score is None:
        return False
    return score.server is not None or (score.call is not None and score.call.server is not None)


def _as_their_run(score: SaidScore, known: GameState) -> SaidScore:
    """ "6-9" where they served at 6-6: our six stands, and only who serves can have scored.

    As their call it would give us three points that we never served for (2025 rulebook, side-out
    scoring). Other scores are told apart by which reading is nearer.
    """
    is_side_out = known.format.scoring is Scoring.SIDE_OUT
    if known.we_serve or not is_side_out or known.ours != known.theirs or not _is_bare(score):
        return score
    assert score.call is not None, "a bare score is a call"
    ours, theirs = score.call.serving, score.call.receiving
    if ours != known.ours or theirs <= known.theirs:
        return score
    return replace(score, call=None, ours=ours, theirs=theirs)


def _as_points_stand(score: SaidScore, known: GameState) -> SaidScore:
    """ "4-5, they serve" after 3-5: with the server's number first they would have lost a point, so
    ours is first.
    """
    call = score.call
    is_theirs = score.we_serve is False and score.ours is None
    if call is None or call.server is not None or not is_theirs:
        return score
    falls = call.serving < known.theirs or call.receiving < known.ours
    stands = call.serving >= known.ours and call.receiving >= known.theirs
    if not (falls and stands):
        return score
    return replace(score, call=None, ours=call.serving, theirs=call.receiving)


def _one_side_put_right(score: SaidScore, known: GameState) -> StateSaid:
    """ "No they have 5": the other side's points and the serve stay as they were."""
    ours = known.ours if score.ours is None else score.ours
    theirs = known.theirs if score.theirs is None else score.theirs
    game = state_at(
        known.format, ours=ours, theirs=theirs, we_serve=known.we_serve, server=known.server
    )
    return StateSaid(game=game)


def _is_bare(score: SaidScore) -> bool:
    """Two numbers, neither of them anybody's by name."""
    call = score.call
    return call is not None and call.server is None and (score.ours, score.we_serve) == (None, None)


def _after_scoring(score: SaidScore, known: GameState, *, ours: bool) -> StateSaid | None:
    """The state after points of one side, which serves then; None where neither reading fits."""
    if score.call is None or score.we_serve is (not ours):
        return None
    numbers = (score.call.serving, score.call.receiving)
    theirs_first = score.call.server is not None and not ours
    for we, they in (numbers[::-1], numbers) if theirs_first else (numbers, numbers[::-1]):
        rose, kept = (we > known.ours, they == known.theirs)
        if not ours:
            rose, kept = (they > known.theirs, we == known.ours)
        if rose and kept:
            explicit = replace(score, call=None, ours=we, theirs=they, we_serve=ours)
            return state_said(ScoreSaid(text="", score=explicit), known, known.format)
    return None


def _server(
    score: SaidScore,
    known: GameState | None,
    we_serve: bool,
    format: GameFormat,
    *,
    is_opening: bool,
) -> int | None:
    """Which server serves; where nothing was counted yet, 0-0 is the start, with one server."""
    said = score.server if score.call is None else score.call.server
    if said is not None or not format.has_two_servers:
        return said
    if known is None and is_opening:
        return start(format, we_serve=we_serve).server
    return known.server if known is not None and known.we_serve is we_serve else 1


def _points(score: SaidScore, we_serve: bool | None) -> tuple[int, int] | None:
    """Ours and theirs: as named, else from the call of whoever serves."""
    if score.ours is not None and score.theirs is not None:
        return score.ours, score.theirs
    if score.call is None or we_serve is None:
        return None
    first, second = score.call.serving, score.call.receiving
    return (first, second) if we_serve else (second, first)


def after_side_out(call: ScoreCall, known: GameState) -> GameState | None:
    """The state after the side-out that came at this call; None where the call can't be told apart.

    Only the serving side scores (2025 rulebook, side-out scoring), so since we last knew nobody
    else has: whichever reading of the two numbers agrees with that is the one.
    """
    for ours, theirs in (
        (call.serving, call.receiving),
        (call.receiving, call.serving),
    ):
        kept = theirs == known.theirs if known.we_serve else ours == known.ours
        if kept and ours >= known.ours and theirs >= known.theirs:
            return side_out(replace(known, ours=ours, theirs=theirs))
    return None


def _side_out_at(
    ours: int, theirs: int, call: ScoreCall, known: GameState | None, format: GameFormat
) -> StateSaid:
    """ "12-13 us, side out": the serve goes over if by the log the server's points alone rose, else
    it is a call anew, the server's number first. After a side-out the first server serves (2025
    rulebook, side-out scoring).
    """
    now = None if known is None else known.theirs if known.we_serve else known.ours
    is_followed = known is not None and now == (theirs if known.we_serve else ours)
    we_serve = not known.we_serve if known is not None and is_followed else call.serving == ours
    return StateSaid(game=state_at(format, ours=ours, theirs=theirs, we_serve=we_serve, server=1))


MOST_PAST_TARGET = 20
"""Points past the target that no game to it is known to reach. Common practice, no source."""


def with_points(game: GameState, number: int, *, ours: bool) -> GameState:
    """The game with one side's points put right, the serve as it was."""
    return replace(game, ours=number) if ours else replace(game, theirs=number)


def is_past_belief(game: GameState) -> bool:
    """Whether a score that the rules allow is a slip all the same: 99-98 in a game to 11."""
    return max(game.ours, game.theirs) > game.format.target + MOST_PAST_TARGET


def faults_said(said: ScoreSaid, format: GameFormat) -> tuple[str, ...]:
    """What is wrong with a call, whoever serves; players often leave the server out."""
    call = said.score.call if said.score else None
    if call is None:
        return ()
    if format.has_two_servers and call.server is None:
        call = replace(call, server=1)
    return faults_of_call(call, format)
