"""The score that an answer is about, in words, so that everybody sees which one it is."""

from __future__ import annotations

from knowledge.game import GameState


def score_read(game: GameState, *, games: str = "") -> str:
    """ "At 9-3-1, they serve: we 3, they 9": the call alone leaves open which number is whose."""
    call = f"At {game.call}, {'we' if game.we_serve else 'they'} serve"
    whose = "" if game.ours == game.theirs else f": we {game.ours}, they {game.theirs}"
    return f"{call}{whose}{games}."
