"""The score that an answer is about, in words, so that everybody sees which one it is."""

from __future__ import annotations

from knowledge.game import GameState


def score_read(game: GameState, *, games: str = "", names_both: bool = False) -> str:
    """ "At 9-3-1, they serve: we 3, they 9": their own call leaves open which number is whose.

    `names_both`: ours is told too where it comes first anyway.
    """
    call = f"At {game.call}, {'we' if game.we_serve else 'they'} serve"
    is_told = game.ours != game.theirs and (names_both or not game.we_serve)
    whose = f": we {game.ours}, they {game.theirs}" if is_told else ""
    frozen = ", the last point on serve only" if game.format.freeze_on_serve else ""
    return f"{call}{whose}{games}{frozen}."
