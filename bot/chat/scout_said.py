"""A scout card asked for: "scout okafor", "watching okafor and lindqvist warm up"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from bot.chat.common_words import is_common
from bot.chat.message import Message
from bot.chat.near_words import mended
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import Word, words_in
from knowledge.regex import regex

WARM_UP = "warmup"
"""What such a message says beside the names, where the warm-up is watched and not a match."""

NAME = "N"
"""What stands for a name, or for "them", in the line that is matched."""

_SPELT = words_in("scout scouting watching watch card warming warmup observing playing")

_POLITE = words_in(
    "ok hey hi please pls now so lets let us can could i want to wanna gonna going about time "
    "start open give me get need make new show do we were are im am just quick quickly a an the "
    "my our and off will ill gimme lemme you sitting standing at court here"
)
_LINK = "(?:(?:on|for|of|about|at|with|to|in) )?"
_ONE = "(?:(?:the|our|those|both|of|next) )*N"
_WHOM = f"{_ONE}(?: (?:(?:and|n|vs|versus|against|with|or|plus|then) )?{_ONE})*"
_REST = words_in(
    "play playing match game games now live right today here next first before ours our us court "
    "on the in a their while they are is it rn please pls for me bit minute"
)
_WARM = "(?:warm up|warmup|warming up|warming|warm|warms up|warm ups|warmups)"
_CARD = "(?:(?:scout|scouting|tap) (?:card|cards|taps)|scout(?:ing)?|scouts|taps)"
_WATCH = "(?:watch|watching|observe|observing)"

_IN_WARM_UP = regex(rf"\b{_WARM}\b")

_ASKS = (
    regex(
        rf"{_CARD}(?: {_LINK}{_WHOM})?(?P<warm> {_LINK}(?:the |their )?{_WARM})?"
        r"(?: (?:while|as|when) N)?"
    ),
    regex(rf"{_WHOM} {_CARD}"),
    regex(rf"{_WATCH} {_LINK}{_WHOM}(?P<warm> {_LINK}(?:the |their )?{_WARM})?"),
    regex(rf"{_WATCH} {_LINK}(?:the |their )(?P<warm>{_WARM})"),
    regex(rf"{_WHOM} (?:are |is |r )?(?:now |just )?(?P<warm>warming up)"),
)
"""The whole of the message but courtesies: whatever says more is a note or a question."""

DONE = "done"
SKIP = "skip"

_CARD_ASKED = regex(
    r"\b(?:scout(?:ing)?|tap) cards?\b|\bcards? (?:for|of) (?:scouting|tapping|taps)\b"
    r"|\b(?:watch\w*|observ\w*|look\w*|seeing|sat|sitting)\b.*\bcards?\b"
    r"|\b(?:a|the|new|open|start|my) cards? (?:for|on|about|to tap for) (?:the )?N\b"
    r"|^cards? (?:to tap )?(?:for|on|about) N\b"
)
"""A card named anywhere in a message that says no more than whom one watches."""

_OTHER_CARD = regex(r"\b(?:yellow|red|business|credit|score|wild|birthday) cards?\b")
LONGEST_ASKED = 22


_CARD_THERE = (
    "(?:(?: with)? (?:it|this|that|(?:the |this |my )?(?:(?:scout(?:ing)? )?card|scouting)))?"
)
_AFTERWARDS = "(?: (?:now|here|for now|thanks|thank you|thx|please|mate))*"
_WAYS = {
    DONE: regex(
        r"(?:(?:ok|okay|right|alright|and|well|so|yep|yes|no) )*"
        r"(?:(?:im|i am|were|we are|all|its|thats|that is)? ?(?:done|finished)|i have finished"
        r"|that(?:s| is)? (?:it|all|enough)|that(?:s| is)? all i (?:saw|have|got)|enough"
        rf"|(?:end|close|stop|finish)){_CARD_THERE}{_AFTERWARDS}"
    ),
    SKIP: regex(
        r"(?:(?:ok|hm|no idea|dont know|not sure|no) )*(?:skip|pass|next question|dunno|no idea"
        r"|(?:i )?(?:dont|do not|didnt|couldnt|cant) (?:know|see|say|tell)|not seen|not sure"
        r"|no clue|idk)(?: (?:that|it|this|this one|that one|that yet|it yet))?" + _AFTERWARDS
    ),
}
"""While a card is open: its own two taps, as people type them."""

_THEM = frozenset({"them", "him", "her", "they", "these", "guys", "opponents", "pair"})

_SHORTEST_NAME = 3


def scout_said(message: Message, chat: ChatView) -> BookSaid | None:
    """Whom to watch, or what the open card's own taps say; None unless it is all that is said."""
    way = _way_said(message) if chat.card_open else None
    if way is not None:
        return BookSaid(text=message.text, verb=BookVerb.SCOUT, words=way)
    mentions = _with_strangers(message)
    line = _bare([*_line(message.said, mentions)])
    found = next((one for rule in _ASKS if (one := rule.fullmatch(line))), None)
    if found is None and not _asks_for_card(message, line):
        return None
    if found is not None and "?" in message.text and "scout" not in line:
        return None
    warm = found.groupdict().get("warm") if found else _IN_WARM_UP.search(line)
    return BookSaid(
        text=message.text,
        verb=BookVerb.SCOUT,
        words=WARM_UP if warm else "",
        mentions=tuple(one for one in mentions if not one.pronoun),
    )


def _asks_for_card(message: Message, line: str) -> bool:
    if len(message.said) > LONGEST_ASKED or not _CARD_ASKED.search(line):
        return False
    return not _OTHER_CARD.search(line) and not message.note.claims


def _way_said(message: Message) -> str | None:
    """ "done" and "skip" of a card, typed."""
    if "?" in message.text or any(not one.pronoun for one in message.mentions):
        return None
    line = " ".join(word.folded for word in message.said)
    return next((way for way, rule in _WAYS.items() if rule.fullmatch(line)), None)


def _line(said: Sequence[Word], mentions: Sequence[Mention]) -> Iterator[str]:
    """The words, mended, with one N for each name and for "them"."""
    begun: set[tuple[int, int]] = set()
    for word in said:
        span = next((one.span for one in mentions if _stands_in(word, one)), None)
        if span is None:
            yield from [NAME] if word.folded in _THEM else _mended(word.folded).split()
        elif span not in begun:
            begun.add(span)
            yield NAME


def _stands_in(word: Word, mention: Mention) -> bool:
    return mention.span[0] <= word.span[0] < mention.span[1]


def _bare(line: list[str]) -> str:
    """Without the courtesies before it and the "now" and "before our match" after it."""
    start, end = 0, len(line)
    while start < end and (line[start] in _POLITE or line[start].isdigit()):
        start += 1
    while end > start and (line[end - 1] in _REST or line[end - 1].isdigit()):
        end -= 1
    return " ".join(line[start:end])


def _with_strangers(message: Message) -> tuple[Mention, ...]:
    """The names, and beside them words that can only be names: they are asked about."""
    found = list(message.mentions)
    if not any(_mended(word.folded).split()[0] in _SPELT for word in message.said):
        return tuple(found)
    for word in message.said:
        if any(_stands_in(word, one) for one in found) or not _is_a_name(word):
            continue
        found.append(Mention(typed=word.typed, span=word.span, certainty=Certainty.NOBODY))
    return tuple(sorted(found, key=lambda one: one.span))


def _is_a_name(word: Word) -> bool:
    known = word.folded in _POLITE | _REST | _THEM or is_common(word.folded)
    is_ours = _mended(word.folded).split()[0] in _SPELT
    return len(word.folded) >= _SHORTEST_NAME and word.folded.isalpha() and not (known or is_ours)


def _mended(word: str) -> str:
    return "scout card" if word in ("scoutcard", "scoutcards") else mended(word, _SPELT)
