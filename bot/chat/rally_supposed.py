"""A rally that a question only supposes: "and if we lose it", "win chance if they get this one"."""

from __future__ import annotations

from enum import StrEnum

from knowledge.game import GameState, after, side_out
from knowledge.regex import regex
from knowledge.vocabulary import Topic


class SupposedRally(StrEnum):
    """How it ends: a rally of ours, of theirs, or the serve goes over."""

    WON = "won"
    LOST = "lost"
    SIDE_OUT = "side_out"


ASKS_CHANCES = frozenset({Topic.WIN_CHANCE, Topic.RISK_AT_SCORE, Topic.TIMEOUT_NOW})
"""Topics whose answer hangs on the score, so that a rally more or less changes it."""

_IF = r"(?:if|when|once|suppose|supposing|say|should)"
_SIDE = r"(?P<side>we|they)(?: (?:do|just|also|even|then|only|now|were to|was to))*"
_LOSES = r"lose|loses|lost|drop|drops|dropped|miss|misses|missed"
_HOW = rf"(?:(?P<loses>{_LOSES})|win|wins|won|get|gets|got|take|takes|took|score|scores|scored)"
_RALLY = (
    r"(?:it|(?:this|that|the next|next|the)(?: (?:one|rally|point|pt|ball))?"
    r"|(?:a|one)(?: more)?(?: (?:rally|point|pt))|one(?: more)?|another(?: one)?)"
)
_SERVE = r"(?P<serve>(?:the|our|their|my) serve|serve)"
_GAME = (
    r"(?! (?:game|match|set|two|2|three|both|first|second|third|last|next game|time ?outs?|to\b"
    r"|break|pause|breather|rest|minute|medical|ball|balls|lobs?|middle|risk|chance|hint|call))"
)
"""`should we take a time-out`, `if we take that ball`: what is taken there is no rally."""
_NOUN = (
    r"(?:after|on|with|following) (?:a |one |the |another )?(?:(?:(?P<bad>loss|miss|lost (?:rally"
    r"|point))|(?:win|winner|won (?:rally|point)))|(?P<over>side ?out))"
)
_ENDS = r"(?: (?:now|too|then|first|here|instead|also))*"
_OPENS = r"(?:(?:and|or|but|so|ok|okay|what|even|then|n|how about|what about) )"
_SHORT = regex(
    rf"(?:{_OPENS}*{_IF} {_SIDE} {_HOW}(?: (?:{_SERVE}|{_RALLY}))?|{_OPENS}+{_NOUN}){_ENDS}"
)
"""The whole message: the question stands before it."""

_WITHIN = regex(
    rf"\b{_IF} {_SIDE} {_HOW} (?:{_SERVE}|{_RALLY}){_GAME}\b|\b{_NOUN}\b(?! (?:of|in)\b)"
)


def only_supposes_a_rally(line: str) -> bool:
    """Whether the folded line says nothing but which rally is supposed."""
    return _SHORT.fullmatch(line) is not None


def rally_supposed(line: str) -> SupposedRally | None:
    """How the rally ends that the folded line supposes, whatever else it asks."""
    found = _SHORT.fullmatch(line) or _WITHIN.search(line)
    if found is None:
        return None
    said = found.groupdict()
    if said["over"] or said["serve"]:
        return SupposedRally.SIDE_OUT
    if said["side"] is None:
        return SupposedRally.WON if said["bad"] is None else SupposedRally.LOST
    is_ours, loses = said["side"] == "we", said["loses"] is not None
    return SupposedRally.LOST if is_ours is loses else SupposedRally.WON


def after_supposed(game: GameState, rally: SupposedRally) -> GameState:
    """The game after that rally; one that is over goes on with none."""
    if game.is_over:
        return game
    if rally is SupposedRally.SIDE_OUT:
        return side_out(game)
    return after(game, won_by_us=rally is SupposedRally.WON)
