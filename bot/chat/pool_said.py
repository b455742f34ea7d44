"""A pool told in one message: "pool: okafor/lindqvist, ruiz/hale; one game to 15"."""

from __future__ import annotations

import re
from typing import Any

from bot.chat.announcements import clock, court_of
from bot.chat.format_said import SaidFormat, format_parts
from bot.chat.pool_teams import drop_format, drop_schedule, fragments_of, is_chatter, names_in
from bot.chat.record_asked import record_asked
from bot.chat.said import Mention, PoolAsked, PoolSaid, PoolTeam, PoolVerb, Understood
from bot.chat.short_forms import in_full
from bot.chat.view import ChatView
from bot.chat.words import READ_AT_MOST, words
from knowledge.regex import regex

MOST_TEAMS = 24
"""Pairs read of one pool: none that is played in a day has more. Our own bound."""

MOST_FRAGMENTS = 96
"""Pieces looked at of one message, so that noise costs little; the rest counts as not read."""

MOST_WORDS = 16
"""Words looked at of what may ask after the pool: the longest such question has fewer."""

_POOL = r"(?:po+ls?|poll|round[ -]?robin|rr|group)"
_WHEN = (
    r"(?:(?:mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur|sun)(?:day)?s?"
    r"|todays?|tonights?|tomorrows?|tmrw|tmw|tmr|mornings?|afternoons?|evenings?|am|pm)\b"
    r"(?!\s*[/&+]|\s+and\b)"
)
"""A day or a part of it as a heading has it; joined with a name it is one: "sun/li"."""

_OPENS = regex(
    rf"^\W*(?:{_WHEN} )*"
    r"(?:(?:ok(?:ay)?|so|hey|hi|our|the|my|todays|today['’]?s|we(?:['’]?re| are) in|in|we have"
    r"|we['’]?ve got|here(?:['’]?s| is)|new|add) )*(?:a |the |our )?"
    rf"{_POOL}\b(?P<which> ?(?:[a-h]|\d{{1,2}})\b(?![/-]))?"
    r"(?: (?:play|stage|match(?:es)?|games|day|opponents?|opps|draw|teams|pairs|schedule|list"
    r"|is|are|has|with|today|tomorrow|of|against|vs|we play|we have|(?:\d|two|three|four|five)"
    r" (?:teams|pairs|matches|games)))*"
    rf"(?:[\s,(]+(?:on |this |in the |the )?{_WHEN}\)?)*\s*"
    r"(?P<mark>[:\-–—=,.\n]*)\s*",
    re.IGNORECASE,
)
_ONE_OF_MANY = regex(r"^\W*pool (?:\d+|[a-h]) opp", re.IGNORECASE)
"""The opponents of one match of a pool."""

_AT_A_TIME = regex(r"(?:at |@ ?)?\d{1,2}(?:[:.]\d{2})? ?(?:am|pm)? ?[:\n]", re.IGNORECASE)
"""The end of a heading that says when the pool begins."""

_HEADING = regex(r"([^/&+,;:\n]{1,40}):(?!\d)\s*")

_STANDING = regex(
    r"(?:(?:ok|show|show me|see|whats|what is|what|hows|how is|how|our|the|my|do we stand in|are we"
    r"|doing|in|we|stand|is|where) )*(?:po+ls?|group|round robin|rr)"
    r"(?: (?:standings?|table|results?|so far|now|score|scores|status|please|pls|looking|going"
    r"|play|matches|list|order|schedule))*"
    r"|(?:(?:show|the|our|whats|what|where) )*(?:pool )?(?:standings?|standngs|table)"
)
_WHOM_NEXT = regex(
    r"\bwhom? (?:(?:do|are|will|shall|should) )?we (?:play|playing|face|facing|meet|meeting|get"
    r"|up against|against) next\b|\bwho (?:is|comes) next in (?:the|our) pool\b"
    r"|\b(?:which|what) (?:pair|team|match|opponents?) (?:is|comes|are|come) (?:now|next|after)\b"
)
_HOW_FAR = regex(
    r"\bhow many (?:pool )?(?:matches|games)(?: \w+){0,3} (?:left|to go|to play)\b"
    r"|\bhow many (?:pool )?(?:matches|games) (?:have we|do we have|are)\b.*\b(?:left|to go)\b"
    r"|\bhow(?:s| is| does)? the (?:pool|group) (?:look|looking|go|going|stand)\b"
    r"|\b(?:where|how) (?:are|do|did) we (?:\w+ )?(?:in|within) (?:the|our) (?:pool|group)\b"
)
_NEXT = regex(
    r"(?:(?:ok|and|so|who|whos|whom|what|whats|is|do|we|play|are|have|got|our|the|now|up) )*"
    r"(?:next|nxt|nex|nextt)(?: (?:up|match|game|opponents?|opps?|pair|team|one|please|pls|now"
    r"|in (?:the )?pool|pool match|is|do|we|play|who|whos|then))*"
    r"|who (?:do|are) we (?:play|playing|got|face|facing)(?: (?:next|now|after(?: that)?))?"
    r"|(?:(?:ok|so|and) )*(?:whos?|who is|who do we play|who are we playing)(?: up)? first(?: up)?"
    r"|whos? (?:is )?(?:left|after that)(?: (?:in|of) (?:the )?pool)?"
)

_JOINS_NAMES = regex(r"[^\W\d]{2} ?[/&+] ?[^\W\d]{2}")

_WHO_LEADS = regex(
    r"(?:(?:ok|so|and) )*(?:whos?|who is|are we) (?:ahead|winning|leading|on top|top|first)"
    r"(?: (?:in|of) (?:the|our) (?:pool|group))?(?: (?:now|so far))?"
)
"""Asked between matches of a pool it means the table."""


def pool_asked(text: str, chat: ChatView) -> Understood | None:
    """ "Next", "pool" and our record while a pool is on; "pool" alone at any time."""
    said = in_full(words(text[:READ_AT_MOST])[:MOST_WORDS])
    line = " ".join(word.folded for word in said)
    record = record_asked(text, line, chat) if len(said) < MOST_WORDS else None
    if record is not None:
        return record
    if chat.pool_on and _HOW_FAR.search(line):
        return PoolAsked(text=text, verb=PoolVerb.STANDING)
    if chat.pool_on and not chat.match_on and _WHO_LEADS.fullmatch(line):
        return PoolAsked(text=text, verb=PoolVerb.STANDING)
    if _STANDING.fullmatch(line) and (chat.pool_on or "po" in line):
        return PoolAsked(text=text, verb=PoolVerb.STANDING)
    if chat.pool_on and (_NEXT.fullmatch(line) or _WHOM_NEXT.search(line)):
        return PoolAsked(text=text, verb=PoolVerb.NEXT)
    return None


def pool_said(text: str, chat: ChatView) -> Understood | None:
    """The pool, if the message tells one: two pairs or more, or one after a colon."""
    opened = _OPENS.match(text)
    if opened is None or text.rstrip().endswith("?"):
        return None
    starts = _end_of_format(text, opened.end())
    teams, unread = _read(text[starts:READ_AT_MOST], chat)
    headed = bool(set(opened["mark"]) & {":", "\n"}) or starts > opened.end()
    marked = (
        headed or _AT_A_TIME.match(text, opened.end()) is not None
    ) and not _ONE_OF_MANY.match(text)
    fewest = 1 if marked else 2
    if len(teams) < fewest and not (marked and _lists(text[opened.end() :])):
        return None
    if not teams and fewest > 1:
        return None
    cut = " ".join(text[READ_AT_MOST:].split())
    return PoolSaid(
        text=text,
        teams=teams,
        format=_format(text[opened.end() : READ_AT_MOST]),
        unread=(*unread, cut) if cut else unread,
    )


def _end_of_format(text: str, start: int) -> int:
    """Behind the rest of the heading where that says how the pool is played: "games to 15:"."""
    heading = _HEADING.match(text, start)
    is_format = heading is not None and format_parts(words(heading[1])) is not None
    return heading.end() if heading is not None and is_format else start


def _lists(body: str) -> bool:
    """Whether it is a list of something at least, so that it is better asked about than guessed."""
    return any(mark in body for mark in "/&,;\n")


def _format(body: str) -> SaidFormat | None:
    """How the pool is played: what its pieces say of it, the whole where they say nothing."""
    said: dict[str, Any] = {}
    for piece in re.split(r"[\n;,]|\.\s", body)[:MOST_FRAGMENTS]:
        parts = format_parts(words(piece))
        said |= {} if parts is None else parts.to_json()
    return SaidFormat(**said) if said else format_parts(words(body))


def _read(body: str, chat: ChatView) -> tuple[tuple[PoolTeam, ...], tuple[str, ...]]:
    """The pairs in order, and the pieces that are none."""
    teams: list[PoolTeam] = []
    unread: list[str] = []
    fragments = fragments_of(body)
    for fragment in fragments[:MOST_FRAGMENTS]:
        names = _pair_in(fragment, chat) if len(teams) < MOST_TEAMS else ()
        at, court = clock(fragment), court_of(fragment)
        if names and not _are_ours(names, chat):
            teams.append(PoolTeam(mentions=names, at=at, court=court))
        elif names:
            continue
        elif (at or court) and not drop_schedule(fragment) and teams:
            last = teams[-1]
            teams[-1] = PoolTeam(
                mentions=last.mentions, at=last.at or at, court=last.court or court
            )
        elif not is_chatter(drop_format(f" {fragment}")) and not _is_format(fragment):
            unread.append(" ".join(fragment.split()))
    return tuple(teams), (*unread, *(" ".join(one.split()) for one in fragments[MOST_FRAGMENTS:]))


def _pair_in(fragment: str, chat: ChatView) -> tuple[Mention, ...]:
    """The pair of a piece, also where the format is typed behind it without a comma."""
    return names_in(fragment, chat) or names_in(drop_format(fragment), chat)


def _is_format(fragment: str) -> bool:
    """Whether it says how games are played, and joins no names that would be lost with it."""
    is_of_format = format_parts(words(fragment)) is not None
    return is_of_format and _JOINS_NAMES.search(fragment) is None


def _are_ours(names: tuple[Mention, ...], chat: ChatView) -> bool:
    """Whether it is our own pair, as a posted list names it too."""
    return all(len(one.players) == 1 and one.players[0] in chat.ours for one in names)
