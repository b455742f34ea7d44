"""What a question settles beside its topic: ball, wing, side, hand, score, format, weather."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from typing import TypeVar

from bot.chat.forms import readings, yes_or_no
from bot.chat.plays_left_said import our_place_said
from bot.chat.said import Certainty, Mention, SaidNeeds, SaidScore, Slots
from bot.chat.scores import score_asked_about
from bot.chat.serving_asked import said_serving
from bot.chat.told import Told, tell
from bot.chat.toss_said import find_toss
from bot.chat.who_asks import without_who_asks
from bot.chat.wide_said import who_is_wide
from bot.chat.words import Word
from knowledge.game import GameFormat
from knowledge.regex import regex
from knowledge.situation import TossChoice, Wind
from knowledge.vocabulary import BallKind, BallQuality, Hand, PlayerId, Side, Wing

Value = TypeVar("Value", bound=StrEnum)

_MARKS = frozenset(",;.!?\n")
_SERVES_AFTER = {TossChoice.SERVE: False, TossChoice.RECEIVE: True}
"""Whether we serve first, by what they took."""

SUBJECT_NEAR = 4
"""Words before a condition among which the one it is said of stands."""

_I_AM = regex(r"(?:(?:hi|hey|ok|so|its me) )?(?:im|i am|this is|its|it is)\b")
LONGEST_OPENING = 4
"""Words among which somebody says who writes."""

_THEY = frozenset(
    ["they", "theyre", "their", "opponents", "server", "he", "she", "hes", "shes", "his", "her"]
)
_EARLIER = regex(
    r"\b(?:beat|beaten|lost to|last (?:time|year|month|week|weekend)|in (?:spring|summer|autumn"
    r"|fall|winter)|yesterday|met (?:them|they)|before)\b"
)
_NO_WIND = regex(
    r"\b(?:no (?:sun (?:or |and |no )?)?(?:wind|breeze)|not (?:\w+ )?windy|windless|dead calm"
    r"|(?:no sun|sun) no wind|without (?:any |the )?wind|isnt (?:\w+ )?windy|indoors?)\b"
)


_THEY_ARE_WIDE = regex(
    r"\bthey (?:(?:is|are|was|were|gets?|got|being|been|just) )*"
    r"(?:pulled|dragged|stretched|drawn|off balance|out of position|scrambling|on the run)"
    r"(?: (?:out |off )?wide)?\b"
)
"""One of them in trouble is no stretched ball of ours: "Okafor is pulled wide, where do I hit"."""


def find_slots(
    said: Sequence[Word], mentions: Sequence[Mention], told: Told | None = None
) -> Slots:
    """Every slot of a message; what is not said stays None.

    `told` has names as "we" and "they", for the score and whatever is said of one side.
    """
    mentions = mentions if told is None else without_who_asks(said, mentions, told.ours)
    told = told or tell("", said, (), ())
    line, sides = " ".join(word.folded for word in said), told.line.text
    games = told.games.games if told.games else None
    score = score_asked_about(told.of_score)
    if _is_finished(score) and (told.games is not None or _EARLIER.search(sides)):
        score = None  # a game won or lost before this one
    toss_won, they_chose = find_toss(sides)
    return Slots(
        mentions=tuple(mentions),
        asker=_asker(said, mentions),
        score=score,
        serving=_serving(told, score, they_chose),
        hand=_first(Hand, "hand", line),
        wing=_only(Wing, "wing", line) or _only(Wing, "wing", _last_clause(said)),
        ball=_first(BallQuality, "ball", _THEY_ARE_WIDE.sub(" ", sides)),
        ball_kind=_first(BallKind, "kind", line),
        side=_only(Side, "side", line),
        format_said=told.format,
        wind=_wind(sides),
        sun=yes_or_no("sun", line),
        background=yes_or_no("background", line),
        rates=told.rates.rates if told.rates else None,
        games=games,
        needs=_needs(told),
        lost_in_a_row=told.breaks.lost_in_a_row,
        timeouts_left=told.breaks.timeouts_left,
        tired=_of_us("tired", sides),
        hot=yes_or_no("hot", line),
        has_change=_of_us("has_change", sides),
        toss_won=toss_won,
        they_chose=they_chose,
        pulled_wide=who_is_wide(said, told.ours),
        our_place=our_place_said(said, told.ours),
        facts=told.ball.facts,
    )


def _needs(told: Told) -> SaidNeeds | None:
    found = told.needs
    if found is None:
        return None
    return SaidNeeds(ours=found.ours, theirs=found.theirs, server=found.server)


def _asker(said: Sequence[Word], mentions: Sequence[Mention]) -> PlayerId | None:
    """Who says of themselves to be writing: "I'm Tom, where do I stand"."""
    opening = " ".join(word.folded for word in said[:LONGEST_OPENING])
    found = _I_AM.match(opening)
    if found is None or not mentions or mentions[0].certainty is not Certainty.SURE:
        return None
    place = len(found[0].split())
    names_me = place < len(said) and mentions[0].span[0] == said[place].span[0]
    goes_on = said[-1].span[0] > mentions[0].span[1]
    return mentions[0].players[0] if names_me and goes_on else None


def _is_finished(score: SaidScore | None) -> bool:
    """Whether a score says that its game is over, in the common formats."""
    if score is None:
        return False
    call, known = score.call, (score.ours, score.theirs)
    first, second = (call.serving, call.receiving) if call else known
    return (
        first is not None
        and second is not None
        and (GameFormat().is_won(max(first, second), min(first, second)))
    )


def _serving(told: Told, score: SaidScore | None, they_chose: TossChoice | None) -> bool | None:
    if score is not None and score.we_serve is not None:
        return score.we_serve
    said = said_serving(told.line.text)
    return _SERVES_AFTER.get(they_chose) if said is None and they_chose is not None else said


def _last_clause(said: Sequence[Word]) -> str:
    """What is asked last: in "camps on the forehand, serve the backhand" the wing is this one."""
    cuts = [at for at, word in enumerate(said) if at and set(word.gap) & _MARKS]
    return " ".join(word.folded for word in said[cuts[-1] if cuts else 0 :])


def _wind(line: str) -> Wind | None:
    """Where it comes from; only that there is some where two directions are weighed."""
    if _NO_WIND.search(line):
        return Wind.NONE
    found = [Wind(name) for name, form in readings("wind") if form.search(line)]
    if not found:
        return None
    directions = [one for one in found if one is not Wind.SOME]
    return directions[0] if len(directions) == 1 else Wind.SOME


def _of_us(key: str, line: str) -> bool | None:
    """The same of our side; what is said of "they" settles nothing about us."""
    said = [
        name
        for name, form in readings(key)
        if any(not _of_them(line[: found.start()]) for found in form.finditer(line))
    ]
    return None if not said else "false" not in said


def _of_them(before: str) -> bool:
    return bool(_THEY.intersection(before.split()[-SUBJECT_NEAR:]))


def _first(kind: type[Value], key: str, line: str) -> Value | None:
    """The first value said, in the order of the file."""
    found = next((name for name, form in readings(key) if form.search(line)), None)
    return None if found is None else kind(found)


def _only(kind: type[Value], key: str, line: str) -> Value | None:
    """The one value said; None where two are ("forehand or backhand")."""
    found = [name for name, form in readings(key) if form.search(line)]
    return kind(found[0]) if len(found) == 1 else None
