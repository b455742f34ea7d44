"""One game between two rallies: who serves, at what score, and what each outcome leads to."""

from __future__ import annotations

from dataclasses import replace

from knowledge.dataclass import dataclass
from knowledge.game.formats import Discipline, GameFormat, RallyRotation, Scoring
from knowledge.game.score_call import ScoreCall
from knowledge.vocabulary import PlayerId, Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Lineup:
    """Who started where: each pair's starter stands right at 0 and serves first for their side.

    None where nobody said so: one pair's may be known without the other's.
    """

    our_starter: PlayerId | None = None
    our_partner: PlayerId | None = None
    their_starter: PlayerId | None = None
    their_partner: PlayerId | None = None

    def pair(self, *, ours: bool) -> tuple[PlayerId | None, PlayerId | None]:
        """A pair's starter and partner."""
        if ours:
            return self.our_starter, self.our_partner
        return self.their_starter, self.their_partner

    def with_pair(self, starter: PlayerId, partner: PlayerId | None, *, ours: bool) -> Lineup:
        """The same with one pair's starter and partner settled."""
        if ours:
            return replace(self, our_starter=starter, our_partner=partner)
        return replace(self, their_starter=starter, their_partner=partner)

    def turned(self, *, ours: bool) -> Lineup:
        """The same with one pair the other way round: its partner started right."""
        starter, partner = self.pair(ours=ours)
        if ours:
            return replace(self, our_starter=partner, our_partner=starter)
        return replace(self, their_starter=partner, their_partner=starter)


@dataclass(frozen=True, slots=True, kw_only=True)
class GameState:
    """One game between two rallies, from our side.

    `server` is 1 or 2 in doubles side-out, else None. `starter_serves` says whether the server
    is their pair's starter; the call alone does not settle it (4-3-1 may be either partner),
    so None means not known. `we_started` says which side served first in the game.
    `our_starter_right` and `their_starter_right` count only where courts do not follow from the
    score (doubles rally scoring): whether the starter stands right now, None if not known.
    """

    format: GameFormat
    ours: int = 0
    theirs: int = 0
    we_serve: bool = True
    server: int | None = 2
    starter_serves: bool | None = None
    we_started: bool | None = None
    our_starter_right: bool | None = True
    their_starter_right: bool | None = True
    lineup: Lineup | None = None

    @property
    def points(self) -> tuple[int, int]:
        """Ours and theirs."""
        return self.ours, self.theirs

    @property
    def serving_points(self) -> int:
        return self.ours if self.we_serve else self.theirs

    @property
    def receiving_points(self) -> int:
        return self.theirs if self.we_serve else self.ours

    @property
    def call(self) -> ScoreCall:
        """The score as the server must call it."""
        return ScoreCall(
            serving=self.serving_points, receiving=self.receiving_points, server=self.server
        )

    @property
    def we_won(self) -> bool | None:
        """True or False once the game is over, None while it is on."""
        if self.format.is_won(self.ours, self.theirs):
            return True
        return False if self.format.is_won(self.theirs, self.ours) else None

    @property
    def is_over(self) -> bool:
        return self.we_won is not None

    @property
    def serving_court(self) -> Side | None:
        """The court the server serves from; None where the call alone does not settle it.

        Singles and rally scoring: right if the server's own score is even. Doubles side-out:
        the pair's starter stands right at an even score of their own (2025 edition, 4.B.6).
        """
        if not self.format.has_two_servers:
            return court_of_parity(self.serving_points)
        starter = self.server_is_starter
        if starter is None:
            return None
        starter_court = court_of_parity(self.serving_points)
        return starter_court if starter else starter_court.other

    @property
    def server_is_starter(self) -> bool | None:
        """Whether the server is their pair's starter, also where only the call tells.

        Where the serving side cannot have scored in this turn (at 0, or one behind a side that a
        point less would have let win), its turn began at this score: server 1 is the one who
        stands right at it, and server 2 the partner, unless this may be the game's first turn.
        """
        if self.starter_serves is not None or not self.format.has_two_servers:
            return self.starter_serves
        serving, receiving = self.serving_points, self.receiving_points
        if serving != 0 and not self.format.is_won(receiving, serving - 1):
            return None
        first = court_of_parity(serving) is Side.RIGHT
        if self.server == 1:
            return first
        may_be_first_turn = receiving == 0 and self.we_started in (None, self.we_serve)
        return None if may_be_first_turn else not first

    @property
    def call_names_starter(self) -> bool | None:
        """Whether the starter serves by the call alone, whatever is held; None where it is open."""
        return replace(self, starter_serves=None).server_is_starter

    def starter_court(self, *, ours: bool) -> Side | None:
        """The court where a pair's starter correctly stands now (partner in the other).

        None only in doubles rally scoring, where a score alone does not tell who stands where.
        """
        if self.format.scoring is Scoring.RALLY:
            is_right = self.our_starter_right if ours else self.their_starter_right
            if is_right is None:
                return None
            return Side.RIGHT if is_right else Side.LEFT
        return court_of_parity(self.ours if ours else self.theirs)


class GameOverError(ValueError):
    """A rally was added to a game that is over."""


def start(format: GameFormat, *, we_serve: bool, lineup: Lineup | None = None) -> GameState:
    """The first rally of a game: 0-0-2 in doubles side-out, since the first pair has one server."""
    return GameState(
        format=format,
        we_serve=we_serve,
        server=2 if format.has_two_servers else None,
        starter_serves=True,
        we_started=we_serve,
        lineup=lineup,
    )


def after(state: GameState, *, won_by_us: bool) -> GameState:
    """The state after one rally; GameOverError if the game was over.

    Side-out: the serving side scores, its partners swap courts and the same server goes on;
    otherwise server 1 hands to the partner, who serves from where they stand, and server 2
    hands to the other side, whose player on the right serves first. Rally: the winner scores
    and serves; under `freeze_on_serve` the game point counts only on one's own serve.
    """
    if state.is_over:
        raise GameOverError(f"the game ended at {state.ours}-{state.theirs}")
    server_won = won_by_us is state.we_serve
    if state.format.scoring is Scoring.RALLY:
        return _after_scoring_rally(state, won_by_us=won_by_us)
    if server_won:
        return _with_point(state, ours=state.we_serve)
    if state.format.has_two_servers and state.server == 1:
        starter = state.server_is_starter
        handed = None if starter is None else not starter
        return replace(state, server=2, starter_serves=handed)
    return side_out(state)


def _after_scoring_rally(state: GameState, *, won_by_us: bool) -> GameState:
    server_won = won_by_us is state.we_serve
    scored = _with_point(state, ours=won_by_us)
    frozen = scored.is_over and state.format.freeze_on_serve and not server_won
    standing = state if frozen else scored
    swaps = state.format.rally_rotation is RallyRotation.SWAP_ON_OWN_SERVE
    if server_won and swaps and state.format.discipline is Discipline.DOUBLES:
        standing = _swapped(standing, ours=won_by_us)
    return with_rally_server(replace(standing, we_serve=won_by_us))


def with_rally_server(state: GameState) -> GameState:
    """Singles, or doubles rally scoring: whoever stands in the court of the parity serves."""
    if state.format.discipline is Discipline.SINGLES:
        return replace(state, starter_serves=True)
    court = state.starter_court(ours=state.we_serve)
    serves = None if court is None else court is court_of_parity(state.serving_points)
    return replace(state, starter_serves=serves)


def _swapped(state: GameState, *, ours: bool) -> GameState:
    if ours:
        return replace(state, our_starter_right=_opposite(state.our_starter_right))
    return replace(state, their_starter_right=_opposite(state.their_starter_right))


def _opposite(is_right: bool | None) -> bool | None:
    return None if is_right is None else not is_right


def _with_point(state: GameState, *, ours: bool) -> GameState:
    if ours:
        return replace(state, ours=state.ours + 1)
    return replace(state, theirs=state.theirs + 1)


def side_out(state: GameState) -> GameState:
    """The other side's serve at the same score: its player on the right serves, as server 1."""
    served = replace(state, we_serve=not state.we_serve)
    if not state.format.has_two_servers:
        return with_rally_server(replace(served, server=None))
    first = court_of_parity(served.serving_points) is Side.RIGHT
    return replace(served, server=1, starter_serves=first)


def court_of_parity(points: int) -> Side:
    """Right, the even court, at an even score."""
    return Side.RIGHT if points % 2 == 0 else Side.LEFT
