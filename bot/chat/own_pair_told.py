"""Who we are, told with more beside it: "we are mira and tom, i play left", "im mira w/ tom"."""

from __future__ import annotations

import re
from typing import TypeGuard

from bot.chat.common_words import is_common
from bot.chat.moods import tells_a_state
from bot.chat.trait_lexicon import trait_phrases
from bot.chat.words import words
from knowledge.regex import regex

_NAME = r"[^\W\d_]+(?:['’-][^\W\d_]+)*"
_PAIR = (
    rf"(?P<pair>(?P<one>{_NAME})(?: {_NAME})?(?: and | n | ?[&/+] ?)(?P<two>{_NAME})(?: {_NAME})?)"
)
_ALONE = regex(rf"{_PAIR}[ .!]*", re.IGNORECASE)
_WITH_MORE = regex(
    rf"{_PAIR}(?:\s*[,.;:!\n–—]+\s*|\s+and (?=(?:i|im|i'm|we|he|she)\b))(?P<rest>.*\w.*)",
    re.IGNORECASE | re.DOTALL,
)

_NO_SURNAME = (
    r"(?!(?:my|our|the|partner|with|w|and|n|play|playing|here|is|has|was|plays|likes|im|i|he|she|hes"
    r"|shes|but|today|this|now|again|on|at|first|mixed"
    r"|left(?:y|ie|[ -]?hand\w*)|right(?:y|ie|[ -]?hand\w*))\b)"
)
_MORE_OF_NAME = rf" {_NO_SURNAME}{_NAME}"
_MYSELF = (
    rf"(?:(?:i['’]?m|i am|this is|my name is|it['’]?s) (?P<one>{_NAME})"
    rf"(?P<one_more>{_MORE_OF_NAME})?|(?P<here>(?!first\b){_NAME})"
    rf"(?P<here_more>{_MORE_OF_NAME})? here)"
)
_HAND = r"(?:left|right)(?:y|ie|[ -]?hand(?:ed|er)?)"
_MY_HAND = rf"(?:(?:\s*[,(;]\s*|\s+)(?:and )?(?:i['’]?m |i am )?(?:a )?(?P<hand>{_HAND})\b\)?)?"
"""Told of oneself between one's own name and the partner's: "im mira, lefty, with tom"."""

_NEW_HERE = (
    r"(?:(?:\s*[,;–—]\s*|\s+)(?:(?:its|it is|this is|for|in|at|my|our|the|very) )*"
    r"first (?:ever )?(?:time|tournament|tourney|comp\w*|event|one)(?: ever| here| together)*)?"
)
"""How new it is to us, told in passing: nothing to keep, and no part of a name."""

_MY_PARTNER = (
    r"(?:(?:my|the|our) )?(?:(?:mixed|doubles|wom[ae]n['’]?s?|men['’]?s?|new|usual|regular) )*"
    r"partner(?: today)?"
)
_PARTNER = rf"(?P<two>{_NAME})(?P<two_more>{_MORE_OF_NAME})?"
EVENT = (
    r"(?:(?:in|the|a|some|mixed|doubles|dubs|women['’]?s|men['’]?s|open|senior\w*|today|tonight"
    r"|to?mm?or+ow|tmrw|tmr|(?:on |this )?(?:\w{3,6}day|weekend|morning|afternoon|evening))[ ,]+)*"
)
"""What is played, and when: "playing mixed tomorrow with emeka"."""

_WITH_WHOM = (
    rf"(?:and )?(?:(?:i['’]?m|i am) )?(?:play(?:ing)? {EVENT})?(?:w/ ?|with |w )(?:my partner )?"
    rf"|(?:and )?{_MY_PARTNER}(?: is |'s |s | will be |\s*[:=]\s*| )"
)
_ONE_WITH = regex(
    r"(?:(?P<before>.*\w.*?)(?:\s*[,.;!\n–—]+\s*| and ))?"
    rf"(?:(?:hi|hey|hello|ok|so|btw)[ ,]+)*{_MYSELF}{_MY_HAND}{_NEW_HERE}(?: |\s*[,.;]\s*)"
    rf"(?:(?:{_WITH_WHOM}){_PARTNER}"
    rf"|(?:and )?(?P<his>{_NAME})(?P<his_more>{_MORE_OF_NAME})? is {_MY_PARTNER})"
    rf"(?: today| this time)?{_NEW_HERE}[ .!]*"
    r"(?:(?:[,.;!(\n–—]+\s*)(?P<after>.*\w.*)|(?P<tells>(?:is|has|plays|likes) .+))?",
    re.IGNORECASE | re.DOTALL,
)
_HAND_ALONE = regex(
    rf"(?:a |is )?{_HAND}\b.*",
    re.IGNORECASE | re.DOTALL,
)
"""`partner joss, lefty`: told of the partner, who was named right before."""

_THE_PARTNER = regex(r"(?:and )?(?:(?:he|she)(?P<short>['’]?s)?|(?P<own>his|her)) ", re.IGNORECASE)
_GREETS = regex(
    r"(?:(?:hi|hey|hello|hallo|good|morning|afternoon|evening|day|all|there|everyone|bot|gm)\b"
    r"[ ,.!]*)*",
    re.IGNORECASE,
)

_NAMES_PARTNER = regex(r"partner|\bwith |\bw[/ ]", re.IGNORECASE)
"""One of these stands in every introduction: the long pattern is not tried on other messages."""

_LONGEST = 500
"""Characters of a message that may introduce its writer; the pattern's work grows with the square
of them."""


def one_with_partner(typed: str) -> tuple[str, str] | None:
    """The pair of "were in denver, im mira w/ tom", and what is told beside it."""
    may_be = len(typed) <= _LONGEST and _NAMES_PARTNER.search(typed)
    found = _ONE_WITH.fullmatch(typed.strip()) if may_be else None
    if found is None or "?" in (found["before"] or ""):
        return None
    one = (found["one"] or found["here"], found["one_more"] or found["here_more"] or "")
    two = (found["two"] or found["his"], found["two_more"] or found["his_more"] or "")
    if not _are_all_names(one[0], two[0]):
        return None
    after = (found["after"] or "").strip().removesuffix(")")
    after = f"{two[0]} is {after}" if _HAND_ALONE.fullmatch(after) else _of_partner(two[0], after)
    told = f"{two[0]} {found['tells']}" if found["tells"] else after
    mine = f"im {found['hand']}" if found["hand"] else ""
    before = "" if _GREETS.fullmatch(found["before"] or "") else found["before"]
    rest = ", ".join(part.strip() for part in (before, mine, told) if part)
    return f"{''.join(one)} and {''.join(two)}", rest


def _of_partner(name: str, after: str) -> str:
    """ "He's lefty" behind the partner's name tells of the partner, whomever "he" meant before."""
    found = _THE_PARTNER.match(after)
    if found is None or "?" in after:
        return after
    verb = "'s" if found["own"] else " is" if found["short"] else ""
    return f"{name}{verb} {after[found.end() :]}"


def pair_and_rest(typed: str) -> tuple[str, str] | None:
    """The two names and what is told behind them; None where they are not surely names.

    No everyday word passes for a name here: "we are gassed and cooked, what now" names nobody.
    """
    found = _WITH_MORE.fullmatch(typed.strip())
    return (found["pair"], found["rest"].strip()) if _are_names(found) else None


def is_surely_pair(typed: str) -> bool:
    """Whether it is two names and nothing else, none of them an everyday word."""
    return _are_names(_ALONE.fullmatch(typed.strip()))


def _are_names(found: re.Match[str] | None) -> TypeGuard[re.Match[str]]:
    return found is not None and _are_all_names(found["one"], found["two"])


def _are_all_names(*typed: str) -> bool:
    """Whether none is an everyday word, one of the game's or one for how somebody feels."""
    named = [word for each in typed for word in words(each)]
    of_game = trait_phrases().words
    return not any(
        is_common(word.folded) or tells_a_state(word) or word.folded in of_game for word in named
    )
