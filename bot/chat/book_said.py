"""Management of the book asked for in words: players, our pair, modes, sharing, forgetting."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.moods import tells_a_state
from bot.chat.newcomer_words import newcomers_in
from bot.chat.occasions import without_occasion
from bot.chat.own_pair_told import is_surely_pair, one_with_partner, pair_and_rest
from bot.chat.said import BookSaid, BookVerb, Mention
from bot.chat.sharing_words import MAY_ASK, SHARING_WORDS
from bot.chat.words import Word, folded_line, words_in
from bot.chat.words import words as split
from knowledge.regex import regex

_HELP = (
    r"(?:help|how does this work|how do i use (?:this|you)|commands|what are you for"
    r"|what (?:can|could) you (?:do|help with|offer)|how can you help"
    r"|what (?:can|do|should) i (?:ask|tell|send) you)"
)
_FOR_WHOM = (
    r"(?:me|us|here|today|then|pls|please|about|(?:for|as|with|being) (?:a |the |my |our )?"
    r"(?:bench )?(?:coach|coaches|coaching|me|us|pair|players?|team))"
)
_WANTS_TO_ENTER = (
    r"(?:(?:hi|hey|ok|so|and|well|btw|i|we|ive|weve|have|has|got|there is|here|is|can|could|how"
    r"|do|to|just|enter|add|import|upload|send|paste|give|type|put|in|you|a|an|my|our|some|the"
    r"|whole|big) )*"
)
_PILE = (
    r"(?:table|list|spreadsheet|sheet|file|csv|excel|notebook|page|bunch|pile|stack|lot)s?"
    r"(?: full)?(?: of| with)?(?: (?:my|our|old|the|scouting))*"
)
_OLD = r"(?:old|earlier|last years|last months)(?: scouting)?"
_WHERE_FROM = (
    r"(?:from|of|to|on|in|for|about|last|this|a|the|year|month|season|week|weekend|enter|add"
    r"|import|upload|send|paste|type|put|you|it|them|here|tournament|opponents|players|all)"
)
_BOOK_WORDS = (
    *SHARING_WORDS,
    (
        r"^(?:(?:ok|so|hey|and) )*(?:add|create|new (?:player|opponent|opp|guy|girl|lady|man|woman"
        r"|pair|team)s?)(?: a| the)?(?: new)?(?: player| opponent)?s?(?: is| are)? "
        r"(?!(?:a )?note)(.+)$",
        BookVerb.ADD_PLAYER,
    ),
    (r"^rename (.+)$", BookVerb.RENAME_PLAYER),
    (r"^nickname (.+)$", BookVerb.ADD_NICKNAME),
    (
        r"^(?:show|list|read|see|give me|all)(?: me)?(?: all)?(?: the| my"
        r"| our)? notes(?: (?:on|about|for|of) (.*))?$",
        BookVerb.SHOW_NOTES,
    ),
    (
        r"^(?:who is in (?:the|our|my) book|(?:list|show)(?: me)?(?: all)?(?: the| our| my)? "
        r"(?:players|opponents|roster|book)|whos in (?:the|our|my) book|roster)(.*)$",
        BookVerb.WHO,
    ),
    (
        r"^(?:(?:hi|hey|hello|ok|so) )*(?:our pair is|our pair|we are|were"
        r"|(?:im|i am) (?=\w+ (?:and )?(?:my )?partner)"
        r"|my partner is|i play with"
        r"|im playing with|i am playing with) (.+)$",
        BookVerb.OUR_PAIR,
    ),
    (r"^(match|break|open) mode$", BookVerb.MODE),
    (r"^mode (match|break|open)$", BookVerb.MODE),
    (r"^(?:log only|just log|only log|score only|just the score)(.*)$", BookVerb.LOG_ONLY),
    (
        r"^(?:please |ok )*(?:tag|tagging) (?:each |every |all |the )*rall(?:y|ies)()$",
        BookVerb.TAG_RALLIES,
    ),
    (
        r"^(?:please |ok )*(?:stop tagging|dont tag|no more tags|stop the tags)(?: rallies)?()$",
        BookVerb.STOP_TAGGING,
    ),
    (r"^(?:export|download|back ?up)\b(.*)$", BookVerb.EXPORT),
    (r"^(?:share|invite)\b(.*)$", BookVerb.SHARE),
    (
        r"^(?:please |ok )*(?:forget|drop|delete|clear|ignore|scrap|reset|remove) (?:about )?"
        r"((?:our|my|the|those) (?:usual |normal |base |own )?(?:numbers|rates|percentages"
        r"|win rates))$",
        BookVerb.OWN_RATES,
    ),
    (
        r"^(?:please |ok )*(?:use|go by|go with|back to|trust|take) (?:the |our )?(?:log"
        r"|logged rallies|rallies logged|logged numbers|what (?:you|we) (?:have )?(?:logged|log))"
        r"(?: instead| again| please)*()$",
        BookVerb.OWN_RATES,
    ),
    (r"^(?:forget|erase|delete) (?:everything|all)(?: (?:about|on|of) (.*))?$", BookVerb.FORGET),
    (r"^forget (?:about )?(?!it\b|that\b)(.+)$", BookVerb.FORGET),
    (rf"^(?:(?:hi|hey|ok|so|and) )*{_HELP}(?: {_FOR_WHOM})*()$", BookVerb.HELP),
    (rf"^{_WANTS_TO_ENTER}((?:{_PILE}|{_OLD}) ?notes)(?: {_WHERE_FROM})*$", BookVerb.MANY_NOTES),
)
_MAY_ASK = MAY_ASK | {BookVerb.HELP, BookVerb.MANY_NOTES}
_ABOUT_A_PLAYER = frozenset({BookVerb.RENAME_PLAYER, BookVerb.ADD_NICKNAME})
_BOOK_RULES = tuple((regex(pattern), verb) for pattern, verb in _BOOK_WORDS)


def book_said(text: str, said: Sequence[Word], mentions: Sequence[Mention]) -> BookSaid | None:
    """Management of the book asked for in words."""
    line = folded_line(said)
    for rule, verb in _BOOK_RULES:
        found = rule.match(line)
        if verb in _ABOUT_A_PLAYER and not mentions:
            continue
        if found is not None and ("?" not in text or verb in _MAY_ASK):
            if verb is BookVerb.FORGET and not _is_only_named(found[1] or "", mentions):
                continue
            words = _as_typed(text, said, found[1] or "")
            more = pair_and_rest(words) if verb is BookVerb.OUR_PAIR else None
            if more is not None:
                return _told_with_more(text, more, mentions)
            if verb is BookVerb.OUR_PAIR and is_surely_pair(without_occasion(words)):
                words = without_occasion(words)
            names = is_surely_pair if "were" in line.split()[:4] else _names_a_pair
            if verb is BookVerb.OUR_PAIR and not names(words):
                continue
            if verb is BookVerb.ADD_PLAYER and not _names_somebody_new(line, words):
                continue
            return BookSaid(text=text, verb=verb, words=words, mentions=tuple(mentions))
    return None


def own_pair_said(text: str, mentions: Sequence[Mention]) -> BookSaid | None:
    """Our pair as one of us tells it: "im mira w/ tom, were in denver"."""
    told = one_with_partner(text)
    if told is None:
        return None
    return replace(_told_with_more(text, told, mentions), tells_writer=True)


def _told_with_more(text: str, told: tuple[str, str], mentions: Sequence[Mention]) -> BookSaid:
    pair, rest = told
    named = tuple(one for one in mentions if one.typed in pair)
    return BookSaid(text=text, verb=BookVerb.OUR_PAIR, words=pair, mentions=named, then=rest)


_ABOUT_WHOM = regex(
    r"^(?:(?:everything|all|the|my|our|notes?|player|opponent|about|on|of|please) )*"
)


def _is_only_named(words: str, mentions: Sequence[Mention]) -> bool:
    """Whether a player is named and nothing else: "forget the lob against okafor" is advice."""
    whom = _ABOUT_WHOM.sub("", f"{words} ").strip()
    named = [one for one in mentions if not one.pronoun]
    return not named or len(whom.split()) <= max(len(one.typed.split()) for one in named)


LONGEST_PAIR_WORDS = 7
"""Two names of three words each, and the word between them."""

_ASKING = frozenset(
    ["what", "who", "where", "how", "why", "when", "which", "should", "do", "does", "can", "any"]
)
_IN_NO_NAME = _ASKING | frozenset(
    {
        "a",
        "the",
        "i",
        "it",
        "he",
        "she",
        "they",
        "we",
        "is",
        "are",
        "as",
        "at",
        "so",
        "too",
        "not",
        "hes",
        "shes",
        "theyre",
    }
)
"""Words that make a sentence or a question of what would be names."""

_NOBODY = word_set("no_name")
_GIVEN_NAMES = "given_names_that_are_words"


_ALL_OF_THEM = words_in(
    "both all everyone everybody the two them of him her these those please pls"
)
"""Whoever was spoken of: no player is called so, where "add both" finds nobody to add."""


def _names_somebody_new(line: str, typed: str) -> bool:
    """Whether "new team ..." goes on with a name; "add ..." is told to add whatever follows."""
    if {word.folded for word in split(typed)} <= _ALL_OF_THEM:
        return False
    if not line.startswith("new "):
        return True
    names = newcomers_in(typed).names
    first = re.findall(r"[^\W\d_]+", names[0].lower()) if names else []
    opens = bool(first) and (not is_common(first[0]) or first[0] in word_set(_GIVEN_NAMES))
    return opens and not set(first) & _IN_NO_NAME


_TWO_NAMES = regex(r"[A-Z]\w*(?: \w+)? (?:and|with|n|&) [A-Z]\w*(?: \w+)?")


def _names_a_pair(typed: str) -> bool:
    """Whether it may be names: of "the ones serving" and "mad at me" every word is everyday.

    "My partner is tight as a drum", "we are 6 to 3 and ..." tell something else, "stuck back,
    what do we change" asks.
    """
    if _TWO_NAMES.fullmatch(typed):
        return True
    told = [word for word in split(typed) if word.folded.isalpha()]
    said = {word.folded for word in told}
    if len(told) > LONGEST_PAIR_WORDS or re.search(r"\d", typed) or said & _IN_NO_NAME:
        return False
    if any(tells_a_state(word) for word in told):
        return False
    return any(not is_common(word) for word in said - _NOBODY)


def _as_typed(text: str, said: Sequence[Word], folded: str) -> str:
    """The part of the message as typed whose folded words were found, at its end or start."""
    count = len(folded.split())
    if not count:
        return ""
    at_end = [word.folded for word in said[-count:]] == folded.split()
    part = said[-count:] if at_end else said[:count]
    return text[part[0].span[0] : part[-1].span[1]]
