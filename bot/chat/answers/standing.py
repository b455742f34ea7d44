"""Where a question's match stands: its own score, games and format over the running match's."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.answers.told_log import told_log
from bot.chat.asked import Asked, SaidState
from bot.chat.payload import Verb, tap
from bot.chat.rally_supposed import after_supposed
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import SaidScore, ScoreSaid, Slots
from bot.chat.score_reading import state_said
from bot.chat.score_supposed import cannot_follow, ours_first
from bot.chat.wording import wording
from knowledge.advice import MatchFact
from knowledge.dataclass import dataclass
from knowledge.game import (
    FormatError,
    GameFormat,
    GameState,
    MatchState,
    PlayedRally,
    Scoring,
    faults,
    match_faults,
    side_out,
    start,
    state_at,
)
from knowledge.vocabulary import Topic

LONGEST_MATCH = 5
LARGER_TARGETS = (15, 21)
"""What a score too high for its game may have been played to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """What the engine is told of the match; `faults` say why it cannot be, for the user."""

    format: GameFormat
    is_format_known: bool = True
    game: GameState | None = None
    match: MatchState | None = None
    played: tuple[PlayedRally, ...] = ()
    score_said: bool = False
    faults: tuple[str, ...] = ()


OF_A_SCORE = frozenset(
    {Topic.WIN_CHANCE, Topic.RISK_AT_SCORE, Topic.TIMEOUT_NOW, Topic.WHERE_TO_STAND}
)
"""Topics whose answer says which score it is about: one that cannot be is told."""


def score_said(desk: Desk, slots: Slots, *, supposed: bool) -> SaidState | None:
    """A score inside a question, from our side; a bare one is ours first unless they serve it.

    In a running match a bare score that may stand now is read as a score message is: nearest to
    where we stood. One that is only `supposed` is ours first there too.
    """
    score = slots.score
    if score is None:
        return _by_needs(desk, slots)
    serving = slots.serving if score.we_serve is None else score.we_serve
    known = _played_on(desk.match_state())
    if known is not None and serving is None:
        if _is_as_it_stands(score, known.game):
            return _as_said(known.game)
        if supposed or cannot_follow(score, known.game):
            score = ours_first(score, known.game)
        said = ScoreSaid(text="", score=score)
        read = state_said(said, known.game, _own_format(slots, known.format))
        return None if read is None else _as_said(read.game)
    return _from_our_side(score, we_serve=True if serving is None else serving)


def _is_as_it_stands(score: SaidScore, game: GameState) -> bool:
    """ "At 6-3", where we have 6 and they serve: two numbers, ours first, don't tell who serves."""
    call = score.call
    is_bare = call is not None and call.server is None and score.ours is None
    return is_bare and call is not None and (call.serving, call.receiving) == game.points


def _by_needs(desk: Desk, slots: Slots) -> SaidState | None:
    """The score by what either side still needs, at what the game is played to."""
    if slots.needs is None:
        return None
    target = _own_format(slots, desk.format()).target
    points = target - slots.needs.ours, target - slots.needs.theirs
    if min(points) < 0:
        return None
    return SaidState(*points, slots.needs.server, slots.serving is not False)


def _own_format(slots: Slots, standing: GameFormat) -> GameFormat:
    """The question's format over the standing one; one that cannot be played is told later."""
    try:
        return slots.format_said.over(standing) if slots.format_said else standing
    except FormatError:
        return standing


def _as_said(game: GameState) -> SaidState:
    return SaidState(game.ours, game.theirs, game.server, game.we_serve)


def _from_our_side(score: SaidScore, *, we_serve: bool) -> SaidState | None:
    if score.ours is not None and score.theirs is not None:
        return SaidState(score.ours, score.theirs, score.server, we_serve)
    if score.call is None:
        return None
    first, second = score.call.serving, score.call.receiving
    ours, theirs = (first, second) if we_serve else (second, first)
    return SaidState(ours, theirs, score.call.server, we_serve)


def standing(desk: Desk, asked: Asked) -> Standing:
    """The match as this question has it; nothing of it is stored."""
    try:
        format = _format(desk, asked)
    except FormatError as error:
        return Standing(format=desk.format(), faults=(_sentence(str(error)),))
    logged = desk.match_state()
    is_said = asked.score is not None and not _is_as_logged(asked.score, logged, format)
    if asked.score is not None and is_said:
        logged = _played_on(logged)
        known = logged.game if logged and asked.games is None else None
        game: GameState | None = _state_at(asked.score, format, known)
    else:
        game = _logged_game(logged, asked, format)
    if asked.rally is not None:
        is_said, now = True, game or start(format, we_serve=asked.we_serve is not False)
        game = after_supposed(now, asked.rally)
    match = _match(game, asked, logged, format)
    faults = () if match is None else match_faults(match)
    return Standing(
        format=format,
        is_format_known=asked.format is not None or desk.context.match is not None,
        game=match.game if match else None,
        match=match,
        played=_played(desk, asked.topic) if logged and not is_said else (),
        score_said=is_said,
        faults=tuple(dict.fromkeys(map(_sentence, faults))),
    )


def _played_on(logged: MatchState | None) -> MatchState | None:
    """The match that another score is asked about: behind a finished game it is the next one's."""
    if logged is None or not logged.game.is_over or logged.we_won is not None:
        return logged
    return logged.next_game(we_serve=logged.we_serve_next_game is not False)


ENDINGS_COUNT = frozenset({Topic.ADJUST, Topic.RESET_HEAD})
"""Topics that look at how the rallies of the match ended: for them that is read too."""


def _played(desk: Desk, topic: Topic) -> tuple[PlayedRally, ...]:
    return (told_log(desk) if topic in ENDINGS_COUNT else desk.log()).played


def _format(desk: Desk, asked: Asked) -> GameFormat:
    """The question's own format over the match's, long enough for the games said."""
    format = desk.format() if asked.format is None else asked.format.over(desk.format())
    if asked.format is not None and asked.format.best_of is not None:
        return format
    while asked.games and format.best_of < LONGEST_MATCH and not _has_room(format, asked.games):
        format = replace(format, best_of=format.best_of + 2)
    return format


def _has_room(format: GameFormat, games: tuple[int, int]) -> bool:
    return max(games) < format.best_of // 2 + 1 and sum(games) < format.best_of


def _is_as_logged(said: SaidState, logged: MatchState | None, format: GameFormat) -> bool:
    """Whether the score said is the running match's own: then more of it is known."""
    return logged is not None and logged.format == format and said == _as_said(logged.game)


def _state_at(said: SaidState, format: GameFormat, known: GameState | None = None) -> GameState:
    """The game at that score; without a number server 1 serves, but at 0-0 the game begins.

    Who started where is known from the running game, unless another one is meant.
    """
    lineup = known.lineup if known else None
    if (said.ours, said.theirs, said.server) == (0, 0, None):
        return start(format, we_serve=said.we_serve, lineup=lineup)
    unsaid = 1 if format.has_two_servers else None
    return state_at(
        format,
        ours=said.ours,
        theirs=said.theirs,
        we_serve=said.we_serve,
        server=unsaid if said.server is None else said.server,
        we_started=known.we_started if known else None,
        lineup=lineup,
    )


def _logged_game(logged: MatchState | None, asked: Asked, format: GameFormat) -> GameState | None:
    """The running game, in the question's format and on the serve that the question says."""
    if logged is None:
        return None
    game = logged.game
    if game.is_over:
        # Nobody serves in it any more, another format's game it never was, and games that are said
        # have it among them.
        return game if format == game.format and asked.games is None else None
    if format != game.format:
        said = SaidState(game.ours, game.theirs, None, game.we_serve)
        server = game.server if format.has_two_servers else None
        game = _state_at(said._replace(server=server), format, game)
    if asked.we_serve is not None and game.we_serve is not asked.we_serve:
        return _on_the_other_serve(game) or (side_out(game) if asked.topic in OF_A_SCORE else None)
    return game


def _on_the_other_serve(game: GameState) -> GameState | None:
    """The running game with the serve on the other side; None where no such game is.

    In rally scoring the serve goes over with a point, so at these points the partners may stand
    elsewhere, or the other side cannot have served at all: then the question has no score.
    """
    loose = state_at(
        game.format,
        ours=game.ours,
        theirs=game.theirs,
        we_serve=not game.we_serve,
        we_started=game.we_started,
        lineup=game.lineup,
    )
    turned = (side_out(game), loose) if game.format.scoring is Scoring.RALLY else (side_out(game),)
    return next((one for one in turned if not faults(one)), None)


def _match(
    game: GameState | None,
    asked: Asked,
    logged: MatchState | None,
    format: GameFormat,
) -> MatchState | None:
    """The match around that game; games said without a score stand at the next one's start."""
    if game is None:
        if asked.games is None:
            return None
        game = start(format, we_serve=asked.we_serve is not False)
    match = MatchState(game=game) if logged is None else replace(logged, game=game)
    if asked.games is not None:
        match = replace(match, games_ours=asked.games[0], games_theirs=asked.games[1])
    if asked.timeouts_left is not None:
        used = max(0, format.timeouts - asked.timeouts_left)
        match = replace(match, timeouts_used_ours=used)
    return match


def cannot_be(asked: Asked, where: Standing) -> Reply:
    """Every fault of what was said, kindly, and what it may have been."""
    lines = [wording("standing.check"), *[f"· {fault}" for fault in where.faults]]
    if where.match is not None and asked.score is not None:
        lines.append(wording("standing.score_form"))
    return Reply(text="\n".join(lines), buttons=rows(_larger_formats(asked, where)))


def _larger_formats(asked: Asked, where: Standing) -> list[Button]:
    if asked.score is None or asked.format is not None:
        return []
    high = max(asked.score.ours, asked.score.theirs)
    return [
        Button(
            label=wording("standing.game_to").format(target=target),
            payload=tap(Verb.SETTLE, asked.topic, MatchFact.FORMAT, target),
        )
        for target in LARGER_TARGETS
        if where.format.target < high and target >= high and not where.format.cap
    ]


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:].removesuffix('.')}."
