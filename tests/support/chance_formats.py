"""The formats, rates and states that checks of the chances run over."""

from __future__ import annotations

from collections.abc import Iterator

from chance_oracles import chain_of
from hypothesis import strategies as st

from knowledge.game import Discipline, GameFormat, GameState, Scoring

KINDS = (
    {"scoring": Scoring.SIDE_OUT, "discipline": Discipline.DOUBLES},
    {"scoring": Scoring.SIDE_OUT, "discipline": Discipline.SINGLES},
    {"scoring": Scoring.RALLY, "discipline": Discipline.DOUBLES},
    {"scoring": Scoring.RALLY, "discipline": Discipline.SINGLES},
    {"scoring": Scoring.RALLY, "freeze_on_serve": True},
)
TARGETS = (1, 2, 11, 15, 21)
SHORT = 11


def _endings(target: int) -> Iterator[dict[str, int | None]]:
    """Margin and cap: a cap of the target itself, of one more and of four more among them."""
    yield {"win_by": 1}
    for over in (None, 0, 1, 4) if target <= SHORT else (None, 4):
        yield {"win_by": 2, "cap": None if over is None else target + over}
    if target <= SHORT:
        yield {"win_by": 1, "cap": target}


FORMATS = tuple(
    GameFormat(target=target, **ending, **kind)  # type: ignore[arg-type]
    for target in TARGETS
    for ending in _endings(target)
    for kind in KINDS
)
"""Every way to play: target, winning margin, cap, scoring, discipline and freeze."""

SHORT_FORMATS = tuple(one for one in FORMATS if one.target <= SHORT)

COMMON = GameFormat()
"""Doubles side-out to 11, win by 2."""

SINGLES = GameFormat(discipline=Discipline.SINGLES)

formats = st.sampled_from(FORMATS)
short_formats = st.sampled_from(SHORT_FORMATS)
rates = st.floats(0.02, 0.98)
"""Away from 0 and 1, where general solvers lose digits; the limits have checks of their own."""


def label(format: GameFormat) -> str:
    """A short name for a test's id."""
    cap = "" if format.cap is None else f", cap {format.cap}"
    return f"{format}{cap}{', frozen' if format.freeze_on_serve else ''}"


def playing_states(format: GameFormat) -> tuple[GameState, ...]:
    """Every state that can arise in which the game is on, level scores folded."""
    return chain_of(format).playing


@st.composite
def format_and_state(
    draw: st.DrawFn, choices: st.SearchStrategy[GameFormat] = formats
) -> tuple[GameFormat, GameState]:
    """A format and one of its states."""
    format = draw(choices)
    return format, draw(st.sampled_from(playing_states(format)))


def mirrored(state: GameState) -> GameState:
    """The same state as the other side sees it."""
    return GameState(
        format=state.format,
        ours=state.theirs,
        theirs=state.ours,
        we_serve=not state.we_serve,
        server=state.server,
    )


def at(ours: int, theirs: int, *, we_serve: bool, server: int | None = None) -> GameState:
    """A state of the common game, or of singles if there is no server number."""
    format = COMMON if server is not None else SINGLES
    return GameState(format=format, ours=ours, theirs=theirs, we_serve=we_serve, server=server)
