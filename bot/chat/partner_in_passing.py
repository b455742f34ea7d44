"""A partner told with more beside it: "me and anders", "my husband is anders and he is lefty".

What is told behind the name is read next, as said of the partner.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.names import find_mentions
from bot.chat.occasions import DISCIPLINE
from bot.chat.own_pair_told import EVENT
from bot.chat.partner_against import with_a_match
from bot.chat.partner_named import GOES_ON, Named, name_at
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.unknown_names import has_predicate
from bot.chat.view import ChatView
from bot.chat.words import Word, words, words_in
from knowledge.regex import regex
from knowledge.vocabulary import Topic

PAIR = 2

_LEAD = r"(?:(?:hi|hey|hello|ok|okay|so|btw|and|also|yes|yep|oh|well|no|actually|um) )*"
_KIN = (
    r"(?:(?:new |regular |usual |mixed |doubles )*partner|husband|hubby|wife|spouse|boyfriend"
    r"|girlfriend|fiancee?|son|daughter|brother|sister|dad|father|mum|mom|mother|teammate)"
)
_ANY = rf"(?:{_KIN}|friend|buddy|mate|neighbou?r|cousin|uncle|aunt|student)"
_WHEN = r"(?:(?:for|on|this|now|today|tonight|tomorrow|tmrw|tmr|tmw|again|here|weekend) )*"
_PLAYS = rf"(?:(?:im|i am|ill be|i|we are|were) )?(?:play|playing|partnering) {EVENT}(?:with|w)"
_OPENINGS = (
    regex(rf"{_LEAD}(?:my|our) {_KIN}(?:s name)? {_WHEN}(?:is|called|named|will be) (?:called )?"),
    regex(rf"{_LEAD}{_PLAYS} (?:my {_ANY} )?"),
    regex(rf"{_LEAD}my (?:new |regular |usual |mixed |doubles )*partner "),
)
"""What stands before the partner's name, which more may follow."""

_ME_AND = regex(
    rf"{_LEAD}(?:(?:its|it is|just|were|we are) )*(?:me|myself) (?:and|n|with|w|plus)"
    rf" (?:my {_ANY} )?"
)
_AND_ME = regex(r" (?:and|n) (?:i|me|myself)\b ?| is my " + _KIN + r"\b ?")
_I_AM = r"(?:im|i am|this is|my name is|its me)"
_BOTH = regex(
    rf"{_LEAD}{_I_AM} (?P<me>\w+(?: \w+)??) (?:and )?"
    rf"(?:my {_KIN} {_WHEN}(?:is|called)|(?:with|w) my {_ANY}|{_PLAYS}(?: my {_ANY})?) "
)
_MYSELF = regex(rf"{_LEAD}{_I_AM} ")


_JOINS = words_in("and but who so also")
_SUBJECTS = words_in("he she hes shes i im we his her my our")
_THE_PARTNER = {"he": "", "she": "", "hes": " is", "shes": " is", "his": "'s", "her": "'s"}
"""Who is meant right behind the partner's name, whomever "he" meant before."""

_IN_AN_EVENT = regex(
    rf"in (?:the )?{DISCIPLINE}(?: doubles)? (?:never (?:met|played with|seen) (?:her|him|them) )?"
)
"""`in mixed never met her` behind the name, which tells nothing of how anybody plays."""

_BESIDE = words_in(
    "today tonight tomorrow tmrw again here now this time weekend are is we play playing together"
    " up in the on for tournament event team pair and partner doubles"
)
_TIMES = words_in("today tonight tomorrow tmrw tmr again here now")
_MARKS = frozenset(",;.:!\n-–—(")


def partner_in_passing(text: str, chat: ChatView) -> BookSaid | None:
    """The partner, or both of us, that a message names, with what it tells behind the name."""
    said = words(text)
    if chat.forwarded or len(said) < PAIR:
        return None
    line = " ".join(word.folded for word in said)
    if not (_may_tell(line) or _is_awaited(chat)):
        return None  # names are looked up in few messages: it is most of what reading costs
    mentions = find_mentions(said, chat)
    return (
        _both(text, said, line, mentions)
        or _myself(text, said, line, mentions, chat)
        or _told(text, said, line, mentions, chat)
        or _answered(text, said, mentions, chat)
    )


def _may_tell(line: str) -> bool:
    opens = any(form.match(line) for form in (*_OPENINGS, _ME_AND, _BOTH, _MYSELF))
    return opens or _AND_ME.search(f" {line} ") is not None


def _is_awaited(chat: ChatView) -> bool:
    """Whether a name alone answers what a new pair agrees on."""
    return chat.last_topic is Topic.PAIR_UP and not chat.ours


def _both(
    text: str, said: Sequence[Word], line: str, mentions: Sequence[Mention]
) -> BookSaid | None:
    """ "I am marisela and my husband is anders": who writes first."""
    found = _BOTH.match(line)
    if found is None:
        return None
    begins = len(line[: found.start("me")].split())
    me = name_at(text, said, begins, mentions, longest=len(found["me"].split()))
    partner = name_at(text, said, len(found[0].split()), mentions)
    if me is None or partner is None:
        return None
    told = _said(text, said, (me, partner), tells_writer=True)
    more = [
        word
        for word in said[me.stop : begins + len(found["me"].split())]
        if word.folded not in _TIMES
    ]
    if told is None or not more:
        return told
    of_me = text[more[0].span[0] : more[-1].span[1]]
    return replace(told, then=f"im {of_me}. {told.then}".strip())


def _myself(
    text: str, said: Sequence[Word], line: str, mentions: Sequence[Mention], chat: ChatView
) -> BookSaid | None:
    """ "I'm marisela", where the partner was told before."""
    found = _MYSELF.match(line)
    if found is None or len(chat.ours) != 1 or chat.asker is not None:
        return None
    me = name_at(text, said, len(found[0].split()), mentions)
    partner = next(row.name for row in chat.roster if row.player == chat.ours[0])
    if me is None or me.stop < len(said):
        return None
    ours = Mention(typed=partner, span=(0, 0), certainty=Certainty.SURE, players=chat.ours)
    return _said(
        text, said, (me, Named(typed=partner, known=ours, stop=len(said))), tells_writer=True
    )


def _told(
    text: str, said: Sequence[Word], line: str, mentions: Sequence[Mention], chat: ChatView
) -> BookSaid | None:
    for opening in _OPENINGS:
        found = opening.match(line)
        begins = 0 if found is None else len(found[0].split())
        partner = None if found is None else name_at(text, said, begins, mentions)
        against = partner and with_a_match(text, said, partner, mentions, chat, is_told=True)
        if against:
            return against
        if partner is not None and _may_play_with_us(partner, chat):
            return _said(text, said, (partner,))
    found = _ME_AND.match(line)
    begins = 0 if found is None else len(found[0].split())
    partner = name_at(text, said, begins, mentions)
    is_told = found is not None
    against = partner and with_a_match(text, said, partner, mentions, chat, is_told=is_told)
    if against:
        return against
    if partner is None or not _may_play_with_us(partner, chat):
        return None
    rest = line.split()[partner.stop :]
    if found is None:
        after = _AND_ME.match(" " + " ".join(rest) + " ")
        if after is None or not {*rest[len(after[0].split()) :]} <= _BESIDE:
            return None
    elif not {*rest} <= _BESIDE:
        return _with_us_told(text, said, partner)
    return _said(text, said, (partner,), tells_more=False)


def _with_us_told(text: str, said: Sequence[Word], partner: Named) -> BookSaid | None:
    """ "Me and oriane, im lefty": the pair, and what is told of either of us behind a mark."""
    at = partner.stop
    tells = "?" not in text and said[at].folded in _SUBJECTS and bool(set(said[at].gap) & _MARKS)
    return _said(text, said, (partner,)) if tells else None


def _answered(
    text: str, said: Sequence[Word], mentions: Sequence[Mention], chat: ChatView
) -> BookSaid | None:
    """A name alone, right after what a new pair agrees on, where nobody of us is known."""
    if not _is_awaited(chat):
        return None
    partner = name_at(text, said, 0, mentions)
    is_all = partner is not None and partner.stop == len(said) and partner.known is None
    return _said(text, said, (partner,)) if partner is not None and is_all else None


def _may_play_with_us(partner: Named, chat: ChatView) -> bool:
    """Whether it may be news: neither one of a pair that is ours already, nor an opponent."""
    if partner.known is None:
        return True
    if partner.known.certainty is not Certainty.SURE:
        return False
    player = partner.known.players[0]
    is_settled = len(chat.ours) == PAIR and player in chat.ours
    return not is_settled and player not in chat.theirs


def _goes_on(said: Sequence[Word], stop: int) -> bool:
    """Whether what stands behind the name is told apart from it."""
    if stop >= len(said):
        return True
    is_apart = bool(set(said[stop].gap) & _MARKS)
    return is_apart or said[stop].folded in GOES_ON or has_predicate(said, stop)


def _said(
    text: str,
    said: Sequence[Word],
    named: Sequence[Named],
    *,
    tells_writer: bool = False,
    tells_more: bool = True,
) -> BookSaid | None:
    stop = named[-1].stop
    while stop < len(said) and said[stop].folded in _TIMES:
        stop += 1
    event = _IN_AN_EVENT.match(" ".join(word.folded for word in said[stop:]) + " ")
    stop += 0 if event is None else len(event[0].split())
    if tells_more and not _goes_on(said, stop):
        return None
    return BookSaid(
        text=text,
        verb=BookVerb.OUR_PAIR,
        words=" and ".join(one.typed for one in named),
        mentions=tuple(one.known for one in named if one.known is not None),
        then=_rest(text, said, stop, named[-1].typed) if tells_more else "",
        tells_writer=tells_writer,
    )


def _rest(text: str, said: Sequence[Word], stop: int, name: str) -> str:
    """What is told behind the name, of the partner by name where it has no subject of its own."""
    while stop < len(said) and said[stop].folded in _JOINS:
        stop += 1
    if stop >= len(said):
        return ""
    rest = text[said[stop].span[0] :]
    if "?" in rest:
        return rest
    if said[stop].folded in _THE_PARTNER:
        return f"{name}{_THE_PARTNER[said[stop].folded]}{text[said[stop].span[1] :]}"
    return rest if said[stop].folded in _SUBJECTS else f"{name} {rest}"
