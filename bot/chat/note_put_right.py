"""What is said right behind a note instead of it: "no, she is right-handed", "i meant slow"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.corrections_said import correction_said
from bot.chat.handed_over import handed_over
from bot.chat.message import Message, names_somebody, read_message, weighed_note
from bot.chat.note_dealt_with import dealt_with_it
from bot.chat.note_done_since import done_since
from bot.chat.note_rivals import set_off
from bot.chat.pointed_out import opens_away
from bot.chat.pronouns import CALLS, PLURAL
from bot.chat.said import CorrectionSaid, NoteSaid
from bot.chat.view import ChatView
from bot.chat.whose_it_was import tells_of_exchange, whose_it_was
from bot.chat.words import Word, folded_line, words, words_in
from knowledge.regex import regex
from knowledge.vocabulary import Value, Wing

_OPENS = regex(
    r"(?:(?:ok|ah|oh|um|uh|and|but|so) )*"
    r"(?:(?:no(?! (?:good|way|chance|idea|problem|doubt|need|more|one|point|luck|thanks)\b)|nope"
    r"|nah"
    r"|sorry|oops|whoops|wait|actually|wrong|correction|rather|i mean|i meant|hang on|hold on"
    r"|make that|not true|my (?:bad|mistake)|(?:that|it|thats|its) (?:was |is |not |isnt )*"
    r"(?:wrong|right|true)) )+"
)
_CONTRAST = regex(r"not (?:\w+ ){1,3}?(?=(?:but )?(?:he|she|hes|shes|they|theyre|its|it|\w+ $))")
"""`not fast he is slow`: what stands before was said of the last note, and is wrong."""

_UNTRUE = regex(
    r"(?:(?:he|she|they|it|that|this|thats|its|hes|shes|theyre) )?"
    r"(?:is not|are not|isnt|arent|does not|doesnt|dont|do not|wont|cant|not|not true|never"
    r"|did not|didnt|has not|hasnt|have not|havent|wrong)"
    r"(?: (?:so|true|right|at all|that|one|like that|do that|it))*"
)
_IS_SO = regex(
    r"(?:(?:no|nope|nah|wrong|actually|wait|oh|well|sorry|hm) )+(?:yes )?(?:he|she|they|it)"
    r" (?:just )?(?:is|are|does|do|did|can|has|have|will|was)"
    r"(?: (?:so|actually|too|though|now|just now|once|twice|again))*"
)
"""`no she is`: behind a note that denies something."""
_NOT_SO = regex(
    r"(?:no )?(?:(?:that|thats|that is|its|it is|this is) )?not (?:true|right|so|correct)"
)
_WING = regex(
    r"(?:(?:it|its|is|was|thats|that|the|on|i|meant|mean|her|his|their|side|wing|not) )*"
    r"(?P<wing>forehand|fh|backhand|bh)(?: (?:side|wing|not (?:the )?(?:forehand|fh|backhand|bh)))*"
)
_WING_TAKEN_BACK = regex(
    r"(?:(?:please|ok|no|sorry|wait|oops|actually) )*(?:forget|scratch|ignore|scrap|drop)"
    r" (?:what i (?:just )?said about|the (?:bit|part|thing) about)"
    r" (?:his|her|their|the) (?:forehand|fh|backhand|bh)(?: (?:side|wing))?"
    r" (?:(?:no|sorry|its|it|thats|that|is|was|i|meant|mean|on) )*"
    r"(?:his|her|their|the) (?P<wing>forehand|fh|backhand|bh)\b(?! (?:and|but) ).*"
)
"""`forget what i said about her forehand, it was her backhand that breaks down`."""
_SMALL = words_in(
    "the a an is are was were has have had does do did it its that thats this one i me my mean"
    " meant said not but no and so just very really actually too also again of for to partner other"
    " both"
)
_TAKE_BACK = words_in("nope nah sorry oops wait actually wrong rather ok ah oh um uh")

_JUDGED_AT_MOST = 6
"""Words of a correction that names no trait: "no wait she is good at it"."""

_SAYS_MORE = 3
"""Words beside names and small words from which on a message says something of its own."""


def note_put_right(message: Message, chat: ChatView) -> NoteSaid | CorrectionSaid | None:
    """What is said instead of the note just kept; None where the message is no such thing."""
    if not chat.noted or chat.forwarded or "?" in message.text:
        return None
    handed = handed_over(message.text, message.said, message.mentions)
    if handed is not None and (handed.says_no_more or not message.asks):
        return replace(weighed_note(message, chat), corrects=True)
    line = folded_line(message.said)
    if _WING_TAKEN_BACK.fullmatch(line):
        return replace(weighed_note(message, chat), text=message.text, claims=(), corrects=True)
    if message.asks:
        return None
    if _NOT_SO.fullmatch(line) or _IS_SO.fullmatch(line):
        return CorrectionSaid(text=message.text, untrue=True)
    if whose_it_was(message.text, message.said, message.mentions) is not None or tells_of_exchange(
        message.said, message.mentions
    ):
        return replace(weighed_note(message, chat), text=message.text, corrects=True)
    if dealt_with_it(message.said) and message.mentions:
        return replace(weighed_note(message, chat), claims=(), corrects=True)
    if message.note.claims and set_off(message.said, message.mentions) is not None:
        return replace(weighed_note(message, chat), corrects=True)
    body = told_instead(message.text)
    if body is None and message.note.claims and opens_away(message.said, message.mentions):
        body = message.text
    if body is None:
        return None
    said = words(body)
    if _UNTRUE.fullmatch(folded_line(said)):
        return CorrectionSaid(text=message.text, untrue=True)
    part = read_message(body, chat)
    note = weighed_note(part, replace(chat, replying_to_note=True))
    is_told = bool(note.claims) or _own_words(said, part) >= _SAYS_MORE
    if names_somebody(part) and not is_told:
        return correction_said(message.text, message.said, message.mentions, replying=False)
    if _WING.fullmatch(folded_line(said)):
        return replace(note, text=message.text, claims=(), corrects=True)
    if _done_since(said, chat):
        return replace(note, text=message.text, claims=(), corrects=True)
    is_brief = len(said) <= _JUDGED_AT_MOST and bool(note.offered or _judges(body, chat))
    if note.claims or is_brief or (is_told and part.mentions and not _is_of_several(part)):
        return replace(note, text=message.text, corrects=True)
    return None


def told_instead(text: str) -> str | None:
    """The text behind the words that take something back; None where it opens with none."""
    said = words(text)
    line = f"{folded_line(said)} "
    found = _OPENS.match(line)
    contrast = _CONTRAST.match(line, found.end() if found else 0)
    stop = contrast.end() if contrast else found.end() if found else 0
    skipped = len(line[:stop].split())
    return text[said[skipped].span[0] :] if 0 < skipped < len(said) else None


def wing_instead(text: str) -> Wing | None:
    """The wing, where the words behind what takes back name nothing else: "no its her forehand"."""
    body = told_instead(text)
    found = _WING_TAKEN_BACK.fullmatch(folded_line(words(text)))
    found = found or (None if body is None else _WING.fullmatch(folded_line(words(body))))
    if found is None:
        return None
    return Wing.FOREHAND if found["wing"].startswith("f") else Wing.BACKHAND


def says_it_is_so(text: str) -> bool:
    """Whether nothing but "no, she is" or "actually she did" is said."""
    return _IS_SO.fullmatch(folded_line(words(text))) is not None


def is_untrue(text: str) -> bool:
    """Whether nothing but "no, she doesn't" is said."""
    return _UNTRUE.fullmatch(folded_line(words(told_instead(text) or text))) is not None


def _done_since(said: Sequence[Word], chat: ChatView) -> bool:
    """Whether something was done that would be a habit, if it were told of all times."""
    line = done_since(folded_line(said))
    if line is None:
        return False
    view = replace(chat, replying_to_note=True)
    claims = weighed_note(read_message(line, view), view).claims
    return any(one.value is Value.OFTEN for one in claims)


def _judges(body: str, chat: ChatView) -> bool:
    """Whether the words would say how good a stroke is, if one stood before them."""
    view = replace(chat, replying_to_note=True)
    return bool(weighed_note(read_message(f"backhand dink {body}", view), view).claims)


def _own_words(said: Sequence[Word], part: Message) -> int:
    named = [one.span for one in part.mentions]
    return sum(
        word.folded not in _SMALL
        and word.folded not in CALLS
        and not any(start <= word.span[0] < stop for start, stop in named)
        for word in said
    )


def _is_of_several(part: Message) -> bool:
    return any(one.typed.lower() in PLURAL for one in part.mentions)


def says_nothing_more(text: str) -> bool:
    """Whether nothing stands beside small words and pronouns: "no, him", "no she does"."""
    said = words(text)
    small = _SMALL | CALLS.keys() | PLURAL | _TAKE_BACK
    return all(word.folded in small for word in said)
