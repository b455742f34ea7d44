"""How to practise a stroke: "how do i practise resets", "a drill for thirds"."""

from __future__ import annotations

import re

from bot.chat.said import ListAsked, ListedVerb
from bot.chat.words import words
from knowledge.regex import regex

LONGEST = 12
"""Words of such a question."""

_PRACTISE = r"(?:practi[cs]e|drill|train|rehearse)"
_LEADS = r"(?:(?:ok|so|and|hey|please|pls|any|a|an|some|good|got|give me|show me|whats) )*"
_ASKED = regex(
    rf"{_LEADS}(?:how|what) (?:do|can|should|to|would|shall)(?: (?:i|we|you|one|they))?"
    rf"(?: best)? {_PRACTISE}(?: for)?(?: (?:my|our|the|his|her|their))? (?P<how>.+)"
    rf"|{_LEADS}(?:drills?|exercises?)(?: (?:for|on|to practi[cs]e|to improve|to train))+"
    r"(?: (?:my|our|the|his|her|their))? (?P<drill>.+)"
    rf"|{_LEADS}(?P<short>(?:\w+ ){{1,3}})(?:drills?|exercises?)"
    rf"|{_LEADS}how (?:do|can|should|to)(?: (?:i|we))? (?:get better at|improve|work on)"
    r"(?: (?:my|our|the))? (?P<better>.+)"
    rf"|{_LEADS}(?:my|our) (?P<bad>(?:\w+ ){{1,3}}?)(?:is|are|was|were|s|sucks?|stinks?|keeps?)"
    rf"(?: \w+){{0,4}}? {_LEADS}(?:drills?|exercises?)(?: (?:for|to) (?:it|that|them|fix it))?"
)
_TAIL = re.compile(
    r"(?: (?:pls|please|today|tomorrow|alone|at home|with (?:my|a) partner|better|more|then|now"
    r"|this week|before the match|in warm ?up|drills?))+$"
)

_LEAKS = (
    (r"resets?|resetting|blocks?|blocking", "pops_resets"),
    (
        r"(?:third|3rd)(?: shot)? (?:drops?|balls?)|(?:third|3rd)s?|(?:third|3rd) shots?|drops?"
        r"|dropping|drop shots?",
        "misses_thirds",
    ),
    (r"serves?|serving", "misses_serves"),
    (r"returns?|returning|return of serve", "misses_returns"),
    (r"drives?|driving", "misses_drives"),
    (r"speed ?ups?|speeding up|attacks?|attacking", "misses_speed_ups"),
    (r"pop ?ups?|soft dinks?|popping up", "pops_dinks"),
    (r"(?:cross(?: ?court)? |backhand |forehand )?(?:dinks?|dinking)", "misses_dinks"),
    (
        r"hands|hands battles?|fast hands|counters?|countering|volleys?|volleying|firefights?"
        r"|hand speed",
        "winners_hands",
    ),
    (r"out balls?|leaving (?:out )?balls?|letting (?:it|balls) go", "winners_out_balls"),
    (r"(?:the )?middle|middle balls?|communication|calling(?: balls)?", "winners_middle"),
    (
        r"transition|transitions?|footwork|split ?steps?|moving (?:in|up)|getting (?:in|up|to the"
        r" (?:line|net|kitchen))|mid ?court",
        "back_early",
    ),
)  # fmt: skip


def drill_said(text: str) -> ListAsked | None:
    """What is to be practised; `about` is the leak whose drill does, empty where we have none."""
    said = [word.folded for word in words(text[:200])]
    if not 1 < len(said) <= LONGEST:
        return None
    found = _ASKED.fullmatch(" ".join(said))
    if found is None:
        return None
    thing = _TAIL.sub("", next(one for one in found.groups() if one).strip())
    about = next((leak for form, leak in _LEAKS if re.fullmatch(form, thing)), "")
    surely = found["how"] or found["drill"]
    if not about and (not surely or len(thing.split()) > 3):
        return None
    return ListAsked(text=text, verb=ListedVerb.DRILL, about=about)
