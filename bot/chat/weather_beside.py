"""Weather told beside a greeting, or behind the shot it spoils: answered as the weather it is."""

from __future__ import annotations

from bot.chat.said import Question
from knowledge.regex import regex
from knowledge.tactics.weather_entries import entry_by_words
from knowledge.vocabulary import Topic

_TOLD = frozenset({"wind", "sun", "wet", "heat", "lightning"})
"""Weather whose words tell of nothing else beside a greeting."""

_DAZZLED = regex(
    r"\b(?:sun|glare)\b.*\b(?:look(?:s|ing)?|see|eyes?|face|blind\w*|squint\w*|dazzl\w*)\b"
    r"|\b(?:look(?:s|ing)?|blind\w*|squint\w*)\b.*\b(?:sun|glare)\b"
)
_US = regex(r"\b(?:i|im|me|my|we|us|our|partner)\b")
_THEIRS = regex(
    r"\b(?:their|his|her|theyre|they (?:look|see|face)) (?:\w+ ){0,2}(?:eyes?|faces?|sun)\b"
    r"|\bbehind (?:us|me)\b|\b(?:should|do|can|could) (?:i|we) lob\b"
)
_BLOWS_ON = regex(
    r"(?:(?:ok|okay|so|and|ugh|man|oh|now|but|wow) )*(?:its?|it is|(?:the )?wind(?: is|s)?"
    r"|theres (?:a |some )?wind) (?:(?:really|just|now|still|so|proper|all) )*"
    r"(?:gust\w*|blow\w*|swirl\w*|howl\w*|windy|coming|going)?(?: \w+){0,3}?"
    r" (?:in|into|at|on|towards?|behind|against|across|from) (?:our|their|my|the|this|us|them)"
    r"(?: (?:end|side|face|faces|back|backs|court))?(?: (?:now|again|today|here|still))*"
)
"""`its gusting into our end now`: how it blows, where no end is to be chosen."""

_HIGH_BALLS = frozenset({Topic.LOB, Topic.AIM_OVERHEAD})


_LIGHTNING = regex(r"\b(?:thunder\w*|lightning)\b(?! (?:fast|quick|speed|hands?|reflex\w*|feet))")


def tells_lightning(text: str) -> bool:
    """Whether it tells of lightning: the one weather that kills is never left to a menu."""
    return _LIGHTNING.search(text.lower()) is not None


def tells_wind(text: str) -> bool:
    """Whether it tells of nothing but wind: "its swirling no idea where its going"."""
    said = text.lower().replace("'", "").replace("’", "")
    entry = entry_by_words(said)
    return entry is not None and entry.id == "wind" and _SWIRLS.search(said) is not None


_BLEW = regex(
    r"(?:(?:ok|okay|so|and|ugh|now|but|oh|suddenly) )*(?:it|its|the wind|wind)"
    r" (?:(?:has|have|is|just|now|really|all|s) )*"
    r"(?:(?:began|begun|begins|starts?|started|starting) (?:to (?:blow|gust|swirl)|blowing|gusting)"
    r"|blows|blowing|gusts|gusting)"
    r"(?: (?!and\b|but\b|what\b|who\b|should\b|out\b|up\b)\w+){0,9}"
)
"""`it began to blow, from left to right, strong`: all told of the wind."""


def tells_of_blowing(words: str) -> bool:
    """Whether nothing but that it blows, and how, is told; a ball that it blows out is a rally."""
    return _BLEW.fullmatch(words) is not None


_SWIRLS = regex(
    r"\b(?:its?|it is|the wind(?: is|s)?|wind) (?:\w+ ){0,2}(?:swirl\w*|gust\w*|blow\w*)\b"
)


def tells_weather(question: Question) -> bool:
    """Whether it is of the weather, though it was taken for talk or for the ball in the sun."""
    text = question.text.lower().replace("'", "").replace("’", "")
    if question.topic is Topic.CHOOSE_END_OR_SERVE:
        return _BLOWS_ON.fullmatch(text.rstrip(" .!")) is not None
    if question.topic is Topic.SMALLTALK_OR_UNKNOWN:
        entry = entry_by_words(text)
        return entry is not None and entry.id in _TOLD
    if question.topic not in _HIGH_BALLS or _THEIRS.search(text):
        return False
    return _DAZZLED.search(text) is not None and _US.search(text) is not None
