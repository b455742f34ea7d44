"""Reminders in words: set how long before, switch off, list; and matches that move."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.announcements import clock, court_of
from bot.chat.forms import word_set
from bot.chat.message import Message, opponents
from bot.chat.minutes_said import minutes_said
from bot.chat.moved_times import swaps_times, time_moved_to
from bot.chat.numbers import number_of
from bot.chat.opponents_told import opponents_told
from bot.chat.said import MatchMoved, Mention, Question, ReminderSaid, ReminderVerb
from bot.chat.schedule_words import schedule_line
from bot.chat.topic_question import CERTAIN
from bot.chat.view import ChatView
from bot.chat.words import words_in
from knowledge.regex import regex
from knowledge.vocabulary import Topic

LEAST_BARE_MINUTES = 5
""" "Pushed back 30" is minutes, "moved up 2" may be steps."""

_REMIND = r"(?:remind|reminds|reminding|ping|nudge|alert|notify|warn)"
_ASKS = regex(rf"\b(?:{_REMIND} (?:me|us)|reminders?|alarm|notifications?)\b")
_CUE = regex(
    rf"\b(?:{_REMIND} (?:me|us)\b.*|reminder )\bbefore (?:we |i |they |each |every |the |our |my "
    r"|next |hit |go and |start )*(?:serves?|serving|receive|return|rally|rallies|point)\b"
)
_LIST = regex(
    r"^(?:what|which|list|show|see|any|all)\b.*\breminders\b|^any reminder(?: set| on)?$"
    r"|^(?:my |our |the )?reminders$"
    rf"|\bwhen (?:do|will|are) you (?:going to )?{_REMIND}\b"
    r"|^(?:is|are) (?:there|my|the|our) .*\breminders? ?(?:set|on)?$|^do (?:i|we) have .*reminders?"
)
_OFF = regex(
    r"\b(?:cancel|cancelled|delete|remove|drop|stop|kill|skip|clear|scrap|forget|disable"
    r"|turn off|switch off|turn|switch|no(?: more)?|dont need|do not need|dont want)\b"
    r"(?: (?:all|the|my|our|that|any|a|those|off))* (?:match )?(?:reminders?|alarm|notifications?)"
    rf"|\b(?:dont|do not|stop|never|no need to) {_REMIND} (?:me|us)|\bstop reminding\b"
    r"|\breminders? off\b|^unremind"
)
_FOR_GOOD = regex(
    r"\b(?:never|always|stop|no more|off|disable|dont|do not|from now on|any ?more)\b|^no\b"
)
_EVERY = regex(r"\b(?:all|every|reminders|both)\b")
_ALWAYS = regex(
    r"\b(?:always|every|each|usually|by default|from now on|any match|all matches|reminders)\b"
)
_BEFORE = regex(
    r"\bbefore (?:the |our |my |every |each |all |any |next |this )*"
    r"(?:match|matches|game|games|it|start|we (?:play|start|go on)|play|its|semi\w*|final\w*)\b"
    r"|\b(?:before|beforehand|ahead|prior)$"
)
_SETS = regex(rf"\b{_REMIND} (?:me|us)\b|\breminders?\b|\balarm\b")
_ON_AGAIN = regex(r"\breminders? (?:back )?on\b|\b(?:turn|switch) on (?:the |my )?reminders?")
_TO_DO = regex(
    rf"\b{_REMIND} (?:me|us)(?: again)?(?: at \w+(?: \d+)?)? (?:to|that|what|who|where|how|which"
    r"|why|if|of (?!(?:the|our|my|this) (?:game )?plan\b|it\b|that\b)|about the score)\b"
)
"""A reminder of something else than the match."""

LONGEST_REMINDER = 14
LONGEST_OFF = 9
"""Words of what is said of a reminder; a longer message tells something else."""

_MOVES = regex(
    r"\b(?:moved|pushed|delayed|postponed|rescheduled|shifted|bumped|put back|brought forward"
    r"|changed to|late start|delay)\b"
)
_RUNS = regex(
    r"\b(?:running|runs|run|is|are|were|its|starts?|starting|begins?|going)\b"
    r"|^(?:a |about |now |at |actually )*(?:half |quarter |an |\d+ )"
)
_ASKING = regex(r"(?:what|who|when|where|why|how|is|are|should|do|does|did|can|could|will)\b")
_OFF_TIME = regex(r"\b(?:instead|now|earlier|later|late|early|behind|ahead)\b")
A_PAIR = 2
STRAY_WORDS_ALLOWED = 2
_OWN_WORDS = words_in(
    "moved pushed delayed postponed rescheduled shifted bumped put back brought forward changed"
    " to running runs run late behind delay delays earlier later early ahead instead of now by"
    " up about around another half an hour hours hr h quarter min mins minutes minute m is are"
    " its it were we our us they theyve the has been was got start starts starting begins time"
    " schedule everything all things match game semi semis final round next desk td director"
    " today again rain not on at from until til till still actually ok so hey sorry guys update"
    " news apparently a and few noon past thirty fifteen forty five oclock am pm same opps court"
    " ct over yo became becomes but rather than play"
)
_EARLIER = regex(r"\b(?:moved up|bumped up|pushed up|shifted up|forward|earlier|early|ahead)\b")
_BREAK = regex(r"\b(?:timeout|time out|medical|break|rest|warm ?up|injury)\b")
_COURT = regex(r"\b(?:court|ct) \w+")
_PLACE_CHANGED = regex(
    r"\b(?:moved|switched|shifted|changed|sent|bumped)(?: us| over)?(?: to)? (?:court|ct)\b"
    r"|\bnow on (?:court|ct)\b|\b(?:court|ct) \w+ (?:now|instead)$"
)


def schedule_said(message: Message, chat: ChatView) -> Question | ReminderSaid | MatchMoved | None:
    """What the message says of reminders or of a match that moves; None for any other."""
    if chat.forwarded:
        return None
    line = schedule_line(message.said)
    return _reminder(message, line) or _moved(message, line, chat)


def _reminder(message: Message, line: str) -> Question | ReminderSaid | None:
    if not _ASKS.search(line):
        return None
    text = message.text
    if _CUE.search(line):
        return Question(text=text, topic=Topic.CUE, confidence=CERTAIN)
    if _LIST.search(line):
        return ReminderSaid(text=text, verb=ReminderVerb.LIST)
    is_short = len(message.said) <= LONGEST_OFF
    if is_short and _OFF.search(line) and not _ON_AGAIN.search(line):
        return ReminderSaid(
            text=text,
            verb=ReminderVerb.OFF,
            always=_FOR_GOOD.search(line) is not None,
            every=_EVERY.search(line) is not None,
        )
    return _set(text, line) if len(message.said) <= LONGEST_REMINDER else None


def _set(text: str, line: str) -> ReminderSaid | None:
    minutes = minutes_said(line)
    at = clock(text) if minutes is None else None
    if at is None:
        minutes = minutes_said(line, bare=True)
    says_when = minutes is not None or at is not None or _BEFORE.search(line) is not None
    is_on = _ON_AGAIN.search(line) is not None
    if not (_SETS.search(line) and says_when) and not is_on:
        return None
    if _TO_DO.search(line):
        return None
    return ReminderSaid(
        text=text,
        verb=ReminderVerb.SET,
        minutes=minutes,
        at=at,
        always=_ALWAYS.search(line) is not None,
    )


def _moved(message: Message, line: str, chat: ChatView) -> MatchMoved | None:
    """A match that moves, by so much or to a time, or to another court."""
    named = tuple(
        one
        for one in message.mentions
        if not one.pronoun and (one.players or number_of(one.typed.lower()) is None)
    )
    is_of_play = _BREAK.search(line) is not None
    if is_of_play or len(named) >= A_PAIR or "?" in message.text or _ASKING.match(line):
        return None
    stray = _stray(message, named)
    if stray > STRAY_WORDS_ALLOWED:
        return None
    if len(opponents_told(message, opponents(message.mentions, chat))) >= A_PAIR:
        return None
    court = court_of(message.text)
    changes_place = court is not None and _PLACE_CHANGED.search(line) is not None
    is_told = _OFF_TIME.search(line) and _RUNS.search(line) and not stray
    is_announced = chat.match_on or chat.match_awaited
    swaps = is_announced and not stray and swaps_times(message.text)
    is_moved = _MOVES.search(line) is not None or swaps
    moves = is_moved or is_told
    at = time_moved_to(message.text, moves=is_moved) if moves or changes_place else None
    by = _minutes(line) if moves and at is None else None
    if at is None and not (is_announced and (by is not None or changes_place)):
        return None
    if message.note.claims:
        return None
    return MatchMoved(
        text=message.text,
        mentions=named,
        at=at,
        by_minutes=by,
        court=court if changes_place or at is not None else None,
    )


def _minutes(line: str) -> int | None:
    """By how much, less than none where it begins earlier."""
    rest = _COURT.sub("", line).strip()
    by = minutes_said(rest)
    if by is None and _MOVES.search(rest):
        bare = minutes_said(rest, bare=True)
        by = bare if bare is not None and bare >= LEAST_BARE_MINUTES else None
    return -by if by is not None and _EARLIER.search(line) else by


def _stray(message: Message, named: Sequence[Mention]) -> int:
    """Words that are of no name, no number and no schedule."""
    inside = {at for one in named for at in range(*one.span)}
    line = schedule_line([word for word in message.said if word.span[0] not in inside])
    known = word_set("of_a_schedule") | _OWN_WORDS
    return sum(word not in known and number_of(word) is None for word in line.split())
