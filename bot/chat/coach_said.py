"""Whom a coach speaks for: "I'm coaching Mira and Tom", "plan for Jo and Priya against ..."."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.chat.pool_teams import named
from bot.chat.said import Certainty, CoachSaid, Mention
from bot.chat.view import ChatView
from knowledge.regex import regex

PAIR = 2
LONGEST_TEXT = 200
"""Characters of such a message; what is longer says more than whom it is for."""

NAME = r"[^\W\d_][\w'’-]*(?: [^\W\d_][\w'’-]*)??"
_AND = r" ?(?: and | n |&|\+|/| with | plus ) ?"
_PAIR = rf"(?P<{{0}}1>{NAME}){_AND}(?P<{{0}}2>{NAME})"
_OURS, _THEIRS = _PAIR.format("o"), _PAIR.format("t")
_VS = (
    r"(?:against|agianst|agaisnt|agains|contra|vs\.?|versus|v|facing|who play|playing"
    r"|to (?:play|beat|face)(?: against)?)"
)
_LEAD = r"(?:(?:ok|okay|so|hi|hey|and|now|today|please|pls|well|alright|then|actually)[ ,]+)*"
COACHING = (
    r"(?:(?:i am|i['’]?m|im|we are|were|ive been|we['’]?re)?(?: now| also| here)* ?"
    r"co+a?ch?c?(?:h)?ing|i coach|(?:(?:i am|i['’]?m|im) )?(?:the |a |their )?coach(?: of| for)?"
    r"(?! (?:said|says|told|tells|thinks|wants|reckons|saw|has)\b)"
    r"|im here (?:for|with)|i['’]?m (?:here )?(?:with|for)|im with"
    r"|my (?:pair|team|students|players|kids)(?: today| now)?(?: is| are|:)?"
    r"|switch(?: over)?(?: to)?|change(?: over)? to|over to|use|working with|speaking for|helping)"
)
_SAYS_COACH = regex(r".*co+a?ch?|my |working|helping|speaking|i['’]?m here", re.IGNORECASE)
"""Of the ways to say whom one speaks for those of a coach; a player says the others as well."""

_SET = regex(
    rf"^{_LEAD}(?P<sure>{COACHING})[ :]+{_OURS}(?: now| today| next| here)*"
    rf"(?:,? (?:they (?:are |re )?)?(?:now )?{_VS} {_THEIRS})?[ .!]*$",
    re.IGNORECASE,
)
_NOW = regex(
    rf"^(?:ok |okay |so |and )*(?:now|next pair|next up|its|it['’]?s|and now|back to|this is for"
    rf"|now for|for)[ :,]+{_OURS}(?: now| again)*[ .!]*$"
    rf"|^(?P<p1>{NAME}){_AND}(?P<p2>{NAME})(?: (?:are|r))?(?: (?:now|again|up now|are up|up next"
    r"|on now))[ .!]*$",
    re.IGNORECASE,
)
_PLAN_FOR = regex(
    rf"^(?P<asks>.*?\b(?:plan|paln|pln|gameplan|cue|report|advice|call|tactics|strategy)) "
    rf"(?:for|4|fr) {_OURS} {_VS} (?P<rest>{_THEIRS}.*)$",
    re.IGNORECASE,
)
_MEETS = (
    r"(?:play|plays|playing|meet|meets|face|faces|facing|have|got|get|draw|drew"
    r"|are up against|up against|against|vs\.?|versus|v)"
)
_MEET_AND_PLAN = regex(
    rf"^{_LEAD}(?:i coach |im coaching |i am coaching |with )?{_OURS}(?: today| next| now| also)*"
    rf",? (?:they )?(?:now |next )?(?:will )?{_MEETS} {_THEIRS}"
    r"(?: next| now| later| today| at \S+)*[,.;:\- ]+"
    r"(?P<asks>.*\b(?:plan|paln|gameplan|tactics|strategy)\b.*)$",
    re.IGNORECASE,
)
_PLAN_THEY_MEET = regex(
    rf"^(?P<asks>.*?\b(?:plan|paln|gameplan|tactics|strategy)) (?:for|4|fr) {_OURS}[,.;:]? "
    rf"(?:they|who|that)(?: will| are| re)? ?{_MEETS} {_THEIRS}[ .!?]*$",
    re.IGNORECASE,
)
_FOR_FIRST = regex(rf"^{_LEAD}for {_OURS} ?[:,\-–] ?(?P<asks>.+)$", re.IGNORECASE)
_FOR_LAST = regex(rf"^(?P<asks>.+?),? for {_OURS}(?P<rest>,? {_VS} .+)?[ ?.!]*$", re.IGNORECASE)
_AGAINST_US = regex(
    rf"\b(?:{_VS}|next|next:|next up|pool:) {_THEIRS}[ ?.!,]*(?:to \d+|\d{{1,2}}:\d{{2}}.*)?$",
    re.IGNORECASE,
)


def coach_said(text: str, chat: ChatView) -> CoachSaid | None:
    """Whom the message is for, and what it asks for them; None where it says nothing of that."""
    line = " ".join(text.split())
    if not line or len(line) > LONGEST_TEXT or line.startswith("/"):
        return None
    return (
        _set(line, text, chat) or _asked(line, text, chat) or _against_themselves(line, text, chat)
    )


def _set(line: str, text: str, chat: ChatView) -> CoachSaid | None:
    if line.endswith("?"):
        return None
    found = _SET.match(line)
    if found is not None:
        ours = pair_named(found["o1"], found["o2"], chat)
        theirs = pair_named(found["t1"], found["t2"], chat) if found["t1"] else ()
        is_sure = "ch" in found["sure"].lower() or _are_people(ours)
        coaches = _SAYS_COACH.match(found["sure"]) is not None
        said = CoachSaid(text=text, ours=ours, theirs=theirs, coaches=coaches)
        return said if ours and is_sure else None
    found = _NOW.match(line)
    if found is None:
        return None
    ours = pair_named(found["o1"] or found["p1"], found["o2"] or found["p2"], chat)
    return CoachSaid(text=text, ours=ours) if ours and _are_of_ours(ours, chat) else None


def _asked(line: str, text: str, chat: ChatView) -> CoachSaid | None:
    """A question for one of our pairs by name; the pair's names are not part of it any more."""
    found = _PLAN_FOR.match(line)
    if found is not None:
        ours = pair_named(found["o1"], found["o2"], chat)
        theirs = pair_named(found["t1"], found["t2"], chat)
        if not ours or _is_ours_now(ours, theirs, chat) or _are_opponents(ours, chat):
            return None
        asks = f"{found['asks']} against {found['rest']}"
        return CoachSaid(text=text, ours=ours, theirs=theirs, asks=asks)
    meeting = _MEET_AND_PLAN.match(line) or _PLAN_THEY_MEET.match(line)
    if meeting is not None:
        ours = pair_named(meeting["o1"], meeting["o2"], chat)
        theirs = pair_named(meeting["t1"], meeting["t2"], chat)
        if ours and theirs and _are_known_ours(ours, chat) and not _is_ours_now(ours, theirs, chat):
            asks = f"plan against {meeting['t1']} and {meeting['t2']}"
            return CoachSaid(text=text, ours=ours, theirs=theirs, asks=asks)
    for form in (_FOR_FIRST, _FOR_LAST):
        found = form.match(line)
        ours = () if found is None else pair_named(found["o1"], found["o2"], chat)
        if found is None or not ours or _is_ours_now(ours, (), chat):
            continue
        if _are_known_ours(ours, chat):
            rest = found.groupdict().get("rest") or ""
            mark = "?" if line.endswith("?") else ""
            return CoachSaid(text=text, ours=ours, asks=f"{found['asks']}{rest}{mark}")
    return None


def _is_ours_now(ours: tuple[Mention, ...], theirs: tuple[Mention, ...], chat: ChatView) -> bool:
    """Whether it is for the pair that speaks already, against somebody else: a plain question."""
    named = {player for one in ours if _is_sure(one) for player in one.players}
    against = {player for one in theirs for player in one.players}
    return named == set(chat.ours) and not against & named


def _against_themselves(line: str, text: str, chat: ChatView) -> CoachSaid | None:
    """A plan or a match against one's own pair."""
    found = _AGAINST_US.search(line)
    theirs = () if found is None else pair_named(found["t1"], found["t2"], chat)
    mine = [one for one in theirs if set(one.players) & set(chat.ours) and _is_sure(one)]
    if len(mine) < PAIR:
        return None
    return CoachSaid(text=text, ours=theirs, theirs=theirs, asks=line)


def pair_named(first: str, second: str, chat: ChatView) -> tuple[Mention, ...]:
    """The two, of the book or new; none where one of the words can be no name."""
    found = named(first, chat), named(second, chat)
    pair = tuple(_one_of_ours(one, chat) for one in found if one is not None)
    return pair if len(pair) == PAIR else ()


def _one_of_ours(one: Mention, chat: ChatView) -> Mention:
    """Of several who bear the name the one who plays for us: a coach's own are meant."""
    ours = [row.player for row in chat.roster if row.ours and row.player in one.players]
    if one.certainty is not Certainty.AMBIGUOUS or len(ours) != 1:
        return one
    return replace(one, certainty=Certainty.SURE, players=(ours[0],))


def _is_sure(one: Mention) -> bool:
    return one.certainty is Certainty.SURE


def _are_opponents(pair: tuple[Mention, ...], chat: ChatView) -> bool:
    """Whether both are in the book and neither plays for us: nobody's coach but theirs asks so."""
    ours = {row.player for row in chat.roster if row.ours}
    return all(_is_sure(one) and one.players[0] not in ours for one in pair)


def _are_known_ours(pair: tuple[Mention, ...], chat: ChatView) -> bool:
    ours = {row.player for row in chat.roster if row.ours}
    return all(_is_sure(one) and one.players[0] in ours for one in pair)


def _are_of_ours(pair: tuple[Mention, ...], chat: ChatView) -> bool:
    """Whether none of them is an opponent; names that the book does not know may be ours."""
    ours = {row.player for row in chat.roster if row.ours}
    known = [one for one in pair if one.certainty is not Certainty.NOBODY]
    return all(set(one.players) & ours for one in known) and _are_people(pair)


def _are_people(pair: tuple[Mention, ...]) -> bool:
    """Whether those that the book does not know are written as names: "dinks and drops" is not."""
    strangers = [one for one in pair if one.certainty is Certainty.NOBODY]
    return all(one.typed[:1].isupper() for one in strangers)
