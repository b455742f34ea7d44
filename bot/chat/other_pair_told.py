"""A coach turns to another of their pairs: "womens now", "other pair", "danka petra: 5-6-2".

Asked only where a coach writes for two pairs or more. What is told under the name of a pair is of
that pair's match, whichever was spoken of before; without a mark or a score behind the name the
message has to be nothing but the turn, so that "mixed feelings" and "the other pair won" are not.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.coached import Pair
from bot.chat.draws import DRAW, draw_of
from bot.chat.message import read_message
from bot.chat.names import find_mentions
from bot.chat.results_said import result_said
from bot.chat.said import Certainty, CoachSaid, Mention
from bot.chat.scores import score_message
from bot.chat.view import ChatView
from bot.chat.words import words
from knowledge.regex import regex

PAIR = 2
LONGEST_TEXT = 200

_LEAD = (
    r"(?:(?:ok|okay|so|and|now|right|alright|next|back|over|on|switch(?:ing)?|going|to|for|its|it['’]?s"
    r"|this is|the|my|our|in|with)[ ,]+)*"
)
_A_PAIR = r"(?: (?:pair|team|two|duo|doubles|dubs|match|game|ones?))?"
_BY_DRAW = regex(
    rf"{_LEAD}(?:(?P<draw>{DRAW}){_A_PAIR}|(?P<other>others?(?: (?:pair|team|two|duo|ones))?"
    r"|(?:switch|swap|change) pairs?))"
    r"(?: (?:now|again|next|up|please|pls))*(?P<rest>\W.*)?",
    re.IGNORECASE | re.DOTALL,
)
_DRAW_ANYWHERE = regex(
    rf"(?:\b(?:in|for|of|is) )?(?:\bthe )?\b(?P<draw>{DRAW})(?!\w)"
    rf"(?! (?:up|it|feelings|bag)\b){_A_PAIR}"
    r"(?: (?:semis?|finals?|quarters?|bronze|gold|pool|draw|backdraw))?",
    re.IGNORECASE,
)
_TURN = regex(rf"{_LEAD}", re.IGNORECASE)
_TURNED = regex(r"^ (?:pair|team)\b|^(?: now| again)+$", re.IGNORECASE)
_NOTHING = regex(r"[\s.!]*")
_MARKED = regex(r"\s*[:.;,–—-]+\s+(?P<told>.*\w.*)|\s*[:;]\s*(?P<close>.*\w.*)", re.DOTALL)
_SCORED = regex(
    r" (?:now )?(?P<told>(?:score(?: is)? |its |at )?\d.*|(?:up|down|ahead|behind) .*\d.*"
    r"|(?:won|lost) .*\d.*)",
    re.IGNORECASE | re.DOTALL,
)
_ACTS = regex(
    r" (?P<now>(?:(?:are|is|were|r|re|have|has|had|just|now|both|also) )*)"
    r"(?:(?P<did>won|win|wins|lost|lose|took|take|beat|dropped|lead|trail|serve)"
    r"|(?P<is>up|down|ahead|behind|leading|trailing|serving))\b(?P<what>.*\d.*)",
    re.IGNORECASE | re.DOTALL,
)


def other_pair_told(text: str, chat: ChatView) -> CoachSaid | None:
    """The pair turned to, and what is told of it; None for whatever is of the pair that speaks."""
    line = " ".join(text.split())
    if len(chat.own_pairs) < PAIR or chat.forwarded or len(line) > LONGEST_TEXT:
        return None
    return _by_name(line, text, chat) or _by_draw(line, text, chat)


def score_of_other_pair(text: str, chat: ChatView, *, elsewhere: bool) -> CoachSaid | None:
    """The pair whose score or result it is, though the message is no turn to it; None for ours.

    "5-6-2 in womens", "its 5-6-2, danka serves": whoever is named plays there, or the draw tells.
    `elsewhere`: it was taken for a match of strangers, and then only one of ours tells otherwise.
    """
    if len(chat.own_pairs) < PAIR or chat.forwarded:
        return None
    named = [one for one in find_mentions(words(text), chat) if not one.pronoun]
    ours = {player for pair in chat.own_pairs for player in pair}
    own = [one for one in named if one.certainty is Certainty.SURE and one.players[0] in ours]
    pair = _pair_of(own, chat) if own else None
    if pair is not None and set(pair) != set(chat.ours):
        return CoachSaid(text=text, ours=_mentions(pair, chat), asks=text)
    return None if own or elsewhere else match_of_other_draw(text, chat)


def match_of_other_draw(text: str, chat: ChatView) -> CoachSaid | None:
    """The pair that plays the draw which the message names anywhere; None where that is ours."""
    if len(chat.own_pairs) < PAIR or chat.forwarded:
        return None
    found = _DRAW_ANYWHERE.search(text)
    if found is None:
        return None
    pair = _meant(found["draw"], chat)
    if pair is not None and set(pair) == set(chat.ours):
        return None
    asks = " ".join([text[: found.start()].strip(), text[found.end() :].strip()]).strip(" ,.;")
    draw = draw_of(found["draw"])
    return CoachSaid(text=text, ours=_mentions(pair, chat), asks=asks, draw=draw)


def _by_draw(line: str, text: str, chat: ChatView) -> CoachSaid | None:
    found = _BY_DRAW.fullmatch(line)
    if found is None:
        return None
    rest = found["rest"] or ""
    told = None if found["other"] and _SCORED.fullmatch(rest) else _told(rest)
    if told is None:
        return None  # "the other pair won 11-9": to a coach as readily the one across the net
    draw, pair = draw_of(found["draw"] or ""), _meant(found["draw"], chat)
    named = _by_name(told, text, chat, turns=False) if told and pair is None else None
    if named is not None:
        return CoachSaid(text=text, ours=named.ours, asks=named.asks, draw=draw)
    return CoachSaid(text=text, ours=_mentions(pair, chat), asks=told, draw=draw)


def _told(rest: str) -> str | None:
    """What is told behind the pair; empty where nothing is, None where the words go on."""
    if _NOTHING.fullmatch(rest):
        return ""
    marked = _MARKED.fullmatch(rest)
    if marked is not None:
        return marked["told"] or marked["close"]
    scored = _SCORED.fullmatch(rest)
    return None if scored is None else scored["told"]


def _meant(draw: str | None, chat: ChatView) -> Pair | None:
    """Whose draw it is, or the one other pair; None where that is not certain.

    Of two pairs the one whose draw is not known plays what the other doesn't.
    """
    known = dict(chat.draws)
    if draw is not None and draw_of(draw) in known:
        return known[draw_of(draw)]
    speaks = set(chat.ours)
    elsewhere = {frozenset(pair) for pair in known.values()}
    left = [pair for pair in chat.own_pairs if set(pair) != speaks]
    if draw is not None:
        left = [pair for pair in chat.own_pairs if frozenset(pair) not in elsewhere]
    return left[0] if len(left) == 1 else None


def _by_name(line: str, text: str, chat: ChatView, *, turns: bool = True) -> CoachSaid | None:
    """Both of a pair, or one of them: of one alone a score or a result has to be told.

    `turns`: it is another pair than the one that speaks, unless it is named and nothing else said.
    """
    turn = _TURN.match(line)
    start = 0 if turn is None else turn.end()
    named = [one for one in find_mentions(words(line), chat) if not one.pronoun]
    if not named or named[0].span[0] != start or not _are_known(named[:PAIR]):
        return None
    both = named[: PAIR if len(named) > 1 and _are_joined(line, named) else 1]
    pair = _pair_of(both, chat)
    rest = line[both[-1].span[1] :]
    is_named_alone = len(both) == PAIR and _NOTHING.fullmatch(rest) is not None
    if pair is None or (turns and set(pair) == set(chat.ours) and not is_named_alone):
        return None
    acts = _ACTS.fullmatch(rest)
    if acts is not None:
        told: str | None = f"we {acts['now'] or 'are '}{acts['is']}" if acts["is"] else "we "
        told = f"{told}{acts['now'] + acts['did'] if acts['did'] else ''}{acts['what']}"
    else:
        told = _told(_TURNED.sub("", rest))
    is_turn = len(both) == PAIR and acts is None
    if told is None or (not told and (not is_turn or "?" in line)):
        return None
    is_told = is_turn or _tells_of_match(told, chat)
    return CoachSaid(text=text, ours=_mentions(pair, chat), asks=told) if is_told else None


def _are_known(named: Sequence[Mention]) -> bool:
    return all(one.certainty is Certainty.SURE for one in named)


def _are_joined(line: str, named: Sequence[Mention]) -> bool:
    between = line[named[0].span[1] : named[1].span[0]].strip().lower()
    return between in {"", "and", "n", "&", "+", "/", ","}


def _pair_of(named: Sequence[Mention], chat: ChatView) -> Pair | None:
    """The coach's one pair with all of them."""
    players = {player for one in named for player in one.players}
    found = [pair for pair in chat.own_pairs if players <= set(pair)]
    return found[0] if len(found) == 1 else None


def _tells_of_match(told: str, chat: ChatView) -> bool:
    message = read_message(told, chat)
    of_score = message.told.of_score
    result = result_said(told, message.told.words, of_score=of_score, format=chat.format)
    return result is not None or score_message(told, of_score) is not None


def _mentions(pair: Pair | None, chat: ChatView) -> tuple[Mention, ...]:
    names = {row.player: row.name for row in chat.roster}
    return tuple(
        Mention(typed=names[player], span=(0, 0), certainty=Certainty.SURE, players=(player,))
        for player in pair or ()
    )
