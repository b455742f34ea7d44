"""Whom the words of a rally mean: the four on court, a side only, or somebody not in this match."""

from __future__ import annotations

from dataclasses import field

from bot.chat.said import Certainty, Mention
from bot.chat.view import ChatView
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId

_FIRST = frozenset(["i", "me", "my", "im", "ive", "myself"])
_PARTNER = frozenset(["partner", "partners", "pard", "p"])
_WE = frozenset(["we", "us", "our", "weve"])
_THEY = frozenset(["they", "them", "their", "theyve", "opponents", "opponent"])
_ONE = frozenset(["he", "she", "him", "her", "his", "hers", "hes", "shes"])


@dataclass(frozen=True, slots=True, kw_only=True)
class Who:
    """`ours` is the side, `player` who of it; None is not known."""

    ours: bool | None = None
    player: PlayerId | None = None


@dataclass(slots=True, kw_only=True)
class WhoIsWho:
    """Reads the people of one message; `strangers` are names of nobody on court.

    `instead` is whom such a name stands for, once that was settled.
    """

    chat: ChatView
    instead: PlayerId | None = None
    strangers: list[Mention] = field(default_factory=list)
    last: Who | None = None

    def named(self, mention: Mention) -> Who:
        found = self._on_court(mention)
        if found is None:
            self.strangers.append(mention)
            found = Who() if self.instead is None else self._player(self.instead)
        self.last = found
        return found

    def pronoun(self, word: str) -> Who | None:
        """Whom a pronoun means; None for any other word."""
        if word in _FIRST:
            return self._one_of_us(self.chat.asker)
        if word in _PARTNER:
            return self._one_of_us(self._partner())
        if word in _WE:
            return Who(ours=True)
        if word in _THEY:
            return Who(ours=False)
        return (self.last or Who(ours=False)) if word in _ONE else None

    def _on_court(self, mention: Mention) -> Who | None:
        """The player, or the side that all who may be meant play on; None for anybody else."""
        if mention.certainty is Certainty.NOBODY:
            return None
        playing = [one for one in mention.players if one in (*self.chat.ours, *self.chat.theirs)]
        if len(playing) == 1:
            return self._player(playing[0])
        sides = {one in self.chat.ours for one in playing}
        return Who(ours=sides.pop()) if len(sides) == 1 else None

    def _player(self, player: PlayerId) -> Who:
        return Who(ours=player in self.chat.ours, player=player)

    def _one_of_us(self, player: PlayerId | None) -> Who:
        return Who(ours=True, player=player if player in self.chat.ours else None)

    def _partner(self) -> PlayerId | None:
        others = [one for one in self.chat.ours if one != self.chat.asker]
        return others[0] if self.chat.asker in self.chat.ours and len(others) == 1 else None
