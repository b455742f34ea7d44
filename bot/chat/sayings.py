"""What is said to the bot rather than asked of it: commands, undo, corrections, agreements."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from bot.chat.common_words import is_common
from bot.chat.forms import word_set
from bot.chat.newcomer_words import newcomers_in
from bot.chat.question import (
    AgreementSaid,
    BookSaid,
    BookVerb,
    CorrectionSaid,
    Mention,
    UndoSaid,
)
from bot.chat.sharing_words import MAY_ASK, SHARING_COMMANDS, SHARING_WORDS
from bot.chat.slip_words import EVERYTHING
from bot.chat.words import Word
from knowledge.regex import regex
from knowledge.vocabulary import AgreementKey, Topic

LONGEST_CORRECTION = 8
"""Words of a correction; a longer message says something of its own."""

_COMMAND = regex(r"^/(\w+)(?:@\w+)?(?:\s+|$)(.*)", re.DOTALL)

BOOK_COMMANDS = {
    "start": BookVerb.START,
    "help": BookVerb.HELP,
    "players": BookVerb.WHO,
    "notes": BookVerb.SHOW_NOTES,
    "pair": BookVerb.OUR_PAIR,
    "mode": BookVerb.MODE,
    "log": BookVerb.LOG_ONLY,
    "add": BookVerb.ADD_PLAYER,
    "rename": BookVerb.RENAME_PLAYER,
    "nickname": BookVerb.ADD_NICKNAME,
    "export": BookVerb.EXPORT,
    "share": BookVerb.SHARE,
    "forget": BookVerb.FORGET,
    "scout": BookVerb.SCOUT,
    "review": BookVerb.REVIEW,
    **SHARING_COMMANDS,
}

TOPIC_COMMANDS = {
    "plan": Topic.GAME_PLAN,
    "cue": Topic.CUE,
    "adjust": Topic.ADJUST,
    "report": Topic.OPPONENT_REPORT,
    "probe": Topic.PROBE,
    "timeout": Topic.TIMEOUT_NOW,
    "stand": Topic.WHERE_TO_STAND,
}

COMMAND_WORDS = frozenset({"note", "n", "undo", *BOOK_COMMANDS, *TOPIC_COMMANDS})
"""Every command's word."""

_UNDO = regex(
    r"^(?:please |ok |oops |whoops |no |wait |wrong )*(?:undo|take (?:that|it) back"
    r"|scratch (?:that|it)|delete (?:that|it|the last(?: one| note)?)"
    r"|remove (?:that|it|the last(?: one)?)|cancel that"
    r"|forget (?:that|i said that|it)|never ?mind that|strike that)"
    r"(?: (?:that|it|please|last|one|the last one|last note|note|everything|all))*$"
)

_CORRECTION = regex(
    r"^(?:no|nope|sorry|oops|wait|actually|correction|not that|wrong|scratch that|i mean|i meant"
    r"|make that|that was|that should)\b"
)
_CORRECTION_BODY = regex(
    r"\b(?:the other (?:one|guy|player|ana|anna)|i mean|i meant|i said|meant|wrong (?:one"
    r"|player|guy)"
    r"|not (?:him|her|that one|them)|should be|instead|correction|make that|that was)\b"
)

_AGREED = regex(
    r"^(?:so |ok |okay |btw |fyi |note )*(?:we(?:ve| have)? (?:just )?(?:agreed?|decided?"
    r"|settled|said|do it)"
    r"|agreed|agreement|our (?:rule|agreement|deal|plan) is|deal|settled|decided"
    r"|from now on)\b[:,]?"
    r"(?: that| on)?\s*(.*)$"
)
_AGREEMENT_WORDS = (
    (
        r"\bfirst serv\w*|\b(?:starts?|starting|begins?) (?:the )?serv\w*|\bserves? first",
        AgreementKey.FIRST_SERVER,
    ),
    (r"\b(?:time ?outs?|calls? time|to call time)\b", AgreementKey.TIMEOUT_CALLER),
    (r"\b(?:poach\w*|signals?|fist|open hand|fingers behind)\b", AgreementKey.POACH_SIGNAL),
    (r"\b(?:stack\w*)\b", AgreementKey.STACK),
    (r"\b(?:lobs?|lobbed|overhead|overheads)\b", AgreementKey.LOBS),
    (r"\b(?:middle|center|centre|seam|between us|down the gut)\b", AgreementKey.MIDDLE),
    (
        r"\b(?:left side|right side|plays? left|plays? right|on the left|on the right|sides?"
        r"|left (?:and )?\w+ right|right (?:and )?\w+ left)\b",
        AgreementKey.SIDES,
    ),
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
    (r"^(?:nickname|call) (.+)$", BookVerb.ADD_NICKNAME),
    (
        r"^((?:\w+ ){1,3}(?:is also (?:called|known as)|aka|goes by) (?!the\b"
        r"|like\b)\w+(?: \w+)?)$",
        BookVerb.ADD_NICKNAME,
    ),
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
        r"^(?:our pair is|our pair|we are|(?:im|i am) (?=\w+ (?:and )?(?:my )?partner)"
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
    (
        r"^(?:help|what can you do|how does this work|how do i use (?:this|you)|commands)()$",
        BookVerb.HELP,
    ),
)
_ABOUT_A_PLAYER = frozenset({BookVerb.RENAME_PLAYER, BookVerb.ADD_NICKNAME})
_BOOK_RULES = tuple((regex(pattern), verb) for pattern, verb in _BOOK_WORDS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Command:
    """A typed command: its word without the slash, and the rest of the message."""

    word: str
    rest: str


def command(text: str) -> Command | None:
    found = _COMMAND.match(text.strip())
    return None if found is None else Command(word=found[1].lower(), rest=found[2].strip())


def undo_said(text: str, said: Sequence[Word]) -> UndoSaid | None:
    line = _line(said)
    if not _UNDO.match(line):
        return None
    return UndoSaid(text=text, everything=EVERYTHING.fullmatch(line) is not None)


def correction_said(
    text: str, said: Sequence[Word], mentions: Sequence[Mention], *, replying: bool
) -> CorrectionSaid | None:
    """A correction of what was last understood; `replying` to a note needs less of a hint."""
    line = _line(said)
    if "?" in text or len(said) > LONGEST_CORRECTION:
        return None
    denied = _denied(said, mentions)
    if denied:
        meant = tuple(one for one in mentions if one not in denied)
        return CorrectionSaid(text=text, mentions=meant, denied=denied)
    if _NOT_THIS_ONE.fullmatch(line):
        return CorrectionSaid(text=text)
    begins = _CORRECTION.match(line) is not None
    names_other = not begins or mentions or not _NAMES_A_THING.search(line)
    if begins and names_other and (_CORRECTION_BODY.search(line) or mentions):
        return CorrectionSaid(text=text, mentions=tuple(mentions))
    bare_name = replying and mentions and len(said) <= 3
    return CorrectionSaid(text=text, mentions=tuple(mentions)) if bare_name else None


_NOT_THIS_ONE = regex(
    r"(?:(?:no|nope|sorry) )*not (?:him|her|them|that one|this one)"
    r"(?: (?:but )?(?:him|her|them|the other(?: one| guy| player)?))?"
)
_NAMES_A_THING = regex(
    r"\b(?:i mean|i meant|i said|make that) (?:(?:the|my|their|a|about|where|what|who|how) )*"
    r"(?!other\b|wrong\b|him\b|her\b|them\b|that\b|it\b|instead\b|one\b)\w+"
)
"""What was meant is said, and is nobody: "I meant the third shot"."""

_OF_NAMES_ONLY = frozenset(
    [
        "no",
        "nope",
        "not",
        "but",
        "and",
        "sorry",
        "oops",
        "wait",
        "actually",
        "i",
        "mean",
        "meant",
        "said",
        "it",
        "was",
        "its",
        "is",
        "about",
        "thats",
        "that",
        "the",
        "this",
        "one",
        "rather",
        "instead",
        "for",
        "asked",
        "asking",
    ]
)


def _denied(said: Sequence[Word], mentions: Sequence[Mention]) -> tuple[Mention, ...]:
    """Tom of "not Tom, Mira" and of "Mira, not Tom"; nobody where anything else is said."""
    named = [one for one in mentions if not one.pronoun]
    if not named:
        return ()
    rest = [
        (at, word)
        for at, word in enumerate(said)
        if not any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    ]
    if not all(word.folded in _OF_NAMES_ONLY for _, word in rest):
        return ()
    after_not = {said[at + 1].span[0] for at, _ in rest if _denies(said, at)}
    return tuple(one for one in named if one.span[0] in after_not)


def _denies(said: Sequence[Word], at: int) -> bool:
    return said[at].folded == "not" and at + 1 < len(said)


def agreement_said(text: str, said: Sequence[Word]) -> AgreementSaid | None:
    """What our pair settles; `value` keeps the words after "we agreed"."""
    found = _AGREED.match(_line(said))
    if found is None or "?" in text:
        return None
    for words, key in _AGREEMENT_WORDS:
        if re.search(words, found[1]):
            return AgreementSaid(text=text, key=key, value=found[1])
    return None


def book_said(text: str, said: Sequence[Word], mentions: Sequence[Mention]) -> BookSaid | None:
    """Management of the book asked for in words."""
    line = _line(said)
    for rule, verb in _BOOK_RULES:
        found = rule.match(line)
        if verb in _ABOUT_A_PLAYER and not mentions:
            continue
        if found is not None and ("?" not in text or verb in MAY_ASK):
            if verb is BookVerb.FORGET and not _is_only_named(found[1] or "", mentions):
                continue
            words = _as_typed(text, said, found[1] or "")
            if verb is BookVerb.OUR_PAIR and not _names_a_pair(words):
                continue
            if verb is BookVerb.ADD_PLAYER and not _names_somebody_new(line, words):
                continue
            return BookSaid(text=text, verb=verb, words=words, mentions=tuple(mentions))
    return None


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
    {"a", "the", "i", "it", "he", "she", "they", "we", "is", "are", "as", "at", "so", "too", "not"}
)
"""Words that make a sentence or a question of what would be names."""

_GIVEN_NAMES = "given_names_that_are_words"


def _names_somebody_new(line: str, typed: str) -> bool:
    """Whether "new team ..." goes on with a name; "add ..." is told to add whatever follows."""
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
    words = re.findall(r"[^\W\d_]+", typed.lower())
    if len(words) > LONGEST_PAIR_WORDS or re.search(r"\d", typed) or set(words) & _IN_NO_NAME:
        return False
    return any(not is_common(word) for word in words)


def _as_typed(text: str, said: Sequence[Word], folded: str) -> str:
    """The part of the message as typed whose folded words were found, at its end or start."""
    count = len(folded.split())
    if not count:
        return ""
    at_end = [word.folded for word in said[-count:]] == folded.split()
    part = said[-count:] if at_end else said[:count]
    return text[part[0].span[0] : part[-1].span[1]]


def _line(said: Sequence[Word]) -> str:
    return " ".join(word.folded for word in said)
