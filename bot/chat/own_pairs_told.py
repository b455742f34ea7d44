"""A coach's pairs with the draw that each plays: "womens is danka and petra, mixed lotte/brody"."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.chat.coach_said import COACHING, NAME, pair_named
from bot.chat.common_words import is_common
from bot.chat.draws import DRAW, draw_of
from bot.chat.said import Certainty, CoachSaid, OwnPair
from bot.chat.view import ChatView
from knowledge.regex import regex

PAIR = 2
LONGEST_TEXT = 200

_AND = r"(?: and | n |/| ?& ?| ?\+ ?)"
_IN = r"(?:(?:in|for|play(?:s|ing)?|are|is|doing) )?(?:the )?"
_WHEN = r"(?: (?:today|later|too|now|also|first|next|here|after(?: that)?))*"
_ONE = regex(
    rf"(?:(?:and |then |the |my |in |for )*(?P<before>{DRAW})(?: pair| team| doubles)?"
    rf"(?: is| are|['’]s|:| =| with)? )?(?P<one>{NAME}){_AND}(?P<other>{NAME}){_WHEN}"
    rf"(?: \(?{_IN}(?P<after>{DRAW})(?: doubles)?\)?)?{_WHEN}[ .!]*",
    re.IGNORECASE,
)
_OPENS = regex(
    rf"(?:(?:ok|okay|hi|hey|so|today)[ ,]+)*(?:{COACHING}(?: today)?"
    r"(?: (?:2|two|both|my two|several|three|3) (?:pairs|teams)(?: today| here| now)?)?[ ,:;–—-]*)"
    r"(?:they are |theyre )?",
    re.IGNORECASE,
)
_PARTS = regex(r"\s*[,;\n]\s*(?:and |then )?|(?<=[^\W\d_])\s+and\s+(?=[^\s/]+/)", re.IGNORECASE)
_JOINED = regex(r"(?: and | n )", re.IGNORECASE)
_ASKS = regex(r"(?P<pairs>[^:]*[^:\s]) ?: (?P<asks>.+)", re.DOTALL)


def own_pairs_told(text: str, chat: ChatView) -> CoachSaid | None:
    """The pairs in the order told; one alone only with its draw, or where it is told by a coach.

    Without "coaching" the draw has to stand beside each, and nobody of another pair's side may.
    """
    if len(text) > LONGEST_TEXT or "?" in text.split(":")[0] or chat.forwarded:
        return None
    line = " ".join(text.split())
    opens = _OPENS.match(line)
    is_coach = opens is not None and opens[0] != ""
    rest = line[opens.end() :] if opens is not None and is_coach else line
    told, asks = _pairs(rest, chat), ""
    asked = _ASKS.fullmatch(rest)
    if not told and asked is not None:
        told, asks = _pairs(asked["pairs"], chat), asked["asks"]
    is_told = is_coach or all(one.draw and _are_known(one) for one in told)
    if not told or not is_told:
        return None
    if len(told) == 1 and not (told[0].draw and (chat.own_pairs or is_coach)):
        return None
    first, *others = sorted(told, key=lambda one: not _speaks(one, chat))
    said = CoachSaid(text=text, ours=first.players, draw=first.draw, also=tuple(others))
    return replace(said, asks=asks, coaches=True)


def _are_known(one: OwnPair) -> bool:
    return all(named.certainty is Certainty.SURE for named in one.players)


def _speaks(one: OwnPair, chat: ChatView) -> bool:
    return {player for named in one.players for player in named.players} == set(chat.ours)


def _pairs(line: str, chat: ChatView) -> tuple[OwnPair, ...]:
    """Each part is a pair of ours, known or new, or there is none at all."""
    found = [_ONE.fullmatch(part) for part in _PARTS.split(line) if part.strip()]
    names = _JOINED.split(line.strip(" .!"))
    if len(found) == 1 and len(names) == 2 * PAIR:
        found = [_ONE.fullmatch(" and ".join(names[at : at + PAIR])) for at in (0, PAIR)]
    told = [None if one is None else _pair(one, chat) for one in found]
    return tuple(one for one in told if one) if told and all(told) else ()


def _pair(found: re.Match[str], chat: ChatView) -> OwnPair | None:
    players = pair_named(found["one"], found["other"], chat)
    ours = {row.player for row in chat.roster if row.ours}
    known = [one for one in players if one.certainty is not Certainty.NOBODY]
    new = [one.typed for one in players if one.certainty is Certainty.NOBODY]
    if not players or not all(set(one.players) & ours for one in known):
        return None
    if any(is_common(word.lower()) and not word[:1].isupper() for word in new):
        return None
    return OwnPair(players=players, draw=draw_of(found["before"] or found["after"] or ""))
