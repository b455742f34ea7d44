"""A player under a new name: the old one still finds them, where it is no slip of the new."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rapidfuzz.distance import DamerauLevenshtein

from bot.chat.answers.desk import Desk
from knowledge.vocabulary import PlayerId
from scouting_db.sounds import fold
from scouting_db.values import ChangeId

ALIKE = 0.6
"""From here on the old spelling was a slip of the new; as in `spelling_told`, a guess of ours."""


def rename(desk: Desk, player: PlayerId, new: str) -> ChangeId:
    """The change. Whoever was told by looks ("redcap") goes on being told so for a while, and
    "lanky" is not read as a body once he is Marcus."""
    row, old = desk.view.player(player), desk.view.name_of(player)
    known = {fold(words) for words in (row.aliases if row is not None else ())}
    kept = {"alias": old} if _is_another(old, new) and fold(old) not in known else {}
    desk.book.rename(player, new)
    if kept:
        desk.book.add_alias(player, old)
    return desk.record("rename", {"player": player, "name": new, **kept}, {"name": old})


def name_back(desk: Desk, targets: Mapping[str, Any], before: Mapping[str, Any]) -> str:
    """The name before, and no longer by it too."""
    player = PlayerId(targets["player"])
    if "alias" in targets:
        desk.book.remove_alias(player, targets["alias"])
    desk.book.rename(player, before["name"])
    return "the new name"


def rename_again(desk: Desk, targets: Mapping[str, Any], _before: Mapping[str, Any]) -> str:
    """The new name once more."""
    player = PlayerId(targets["player"])
    desk.book.rename(player, targets["name"])
    if "alias" in targets:
        desk.book.add_alias(player, targets["alias"])
    return "the new name"


def _is_another(old: str, new: str) -> bool:
    """Whether no word of the old name is, or is much like, one of the new."""
    return all(
        DamerauLevenshtein.normalized_similarity(one, other) < ALIKE
        for one in fold(old).split()
        for other in fold(new).split()
    )
