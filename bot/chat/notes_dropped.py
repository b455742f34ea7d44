"""A note taken back by what it was about: "forget what I said about Okafor", "... that he jams"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from bot.chat.message import Message
from bot.chat.numbers import groups
from bot.chat.said import BookSaid, BookVerb, Claim, Mention
from bot.chat.trait_holders_said import claims_of
from bot.chat.view import ChatView
from bot.chat.words import Word, words, words_in
from knowledge.dataclass import dataclass
from knowledge.regex import regex
from knowledge.vocabulary import Trait, Value
from scouting_db.values import NewObservation

_POLITE = r"(?:(?:please|pls|ok|so|oops|no|wait|actually|sorry|can you|could you|hey) )*"
_DROP = (
    r"(?:forget|delete|remove|scratch|drop|erase|ignore|scrap|take back|undo|cancel|strike"
    r"|disregard|take out|scrub|bin|cross out|strike out|get rid of)"
)
_NOTE = (
    r"(?:(?:my|a|any|the|that|this|our|last|those|all|one|first|other) )*"
    r"(?:notes?|thing|stuff|line|bit|part)"
)
_TOLD = (
    r"(?:what|everything|anything|all|the thing) (?:that )?(?:i|we|you|he|she|they|[a-z]+)"
    r" (?:just )?(?:said|wrote|noted|told you|put|have|had)"
)
_ABOUT = r"(?: (?:down|before|earlier))?(?: (?:about|on|of|for|regarding|that|saying))?"
_TAKEN_BACK = regex(rf"^{_POLITE}{_DROP} (?:{_NOTE}|{_TOLD}){_ABOUT}\b")
_ONE_ABOUT = regex(
    rf"^{_POLITE}{_DROP} (?:(?:the|that|my|our) )(?:\w+ ){{0,3}}"
    r"(?:notes?|thing|stuff|line|bit|one|part) (?:about|regarding)\b"
)
"""`delete the backhand one about frank`."""
_PART = regex(
    rf"^{_POLITE}{_DROP} (?:the|that|my) (?P<what>\w+(?: \w+){{0,2}}) (?:bit|part|word|thing)\b"
    r"(?: (?:(?:that|it|this|she|he) (?:was|is|isnt|wasnt)|i|please|pls|sorry)\b.*)?$"
)
"""`scratch the lazy bit that was mean`: what goes is told by a word of the note."""
_OF_SOMEBODY = regex(
    rf"^{_POLITE}{_DROP} (?:(?:(?!note)\w+ ){{1,5}}(?:notes?|entry|line)"
    r"|(?:the|that|this|my) (?:(?!note)\w+ ){1,5}(?:thing|one|bit|stuff|part))$"
)
"""`delete toomey knee note`, `scrub that okafor thing`."""
_PLAINLY = regex(
    rf"^{_POLITE}(?:take back|scrub|scratch|undo|delete|remove|erase|strike(?: out)?|cross out)"
    r" (?:(?:the|that|my|her|his) )?(?P<what>(?:\w+ ){0,4}\w+)$"
)
"""`take back weak bh`: nothing but what the note claims. A "drop" or "forget" might be advice."""
_THAT = regex(rf"^{_POLITE}{_DROP} that (?!is\b|was\b)")
"""`forget that okafor jams`: with a name behind it, for `forget that` alone is an undo."""

_SAID_OF = regex(
    rf"^{_POLITE}{_DROP} {_TOLD}(?: (?:down|before|earlier))?"
    r" (?:about|on|of|regarding) (?P<what>\w+(?: \w+){0,3})$"
)
"""`forget what i said about the lefty`: what was told is named, and of nobody."""
_TELLER = regex(
    r"\b(?:what|everything|anything|all|thing) (?:that )?(?P<who>[a-z]+) (?:just )?said\b"
)
_OURSELVES = words_in("i we you he she they")
_TELLS = words_in("said wrote noted told put have had")

_DENIED = regex(
    r"^(?:(?:no|nope|oops|wait|sorry) )*(?:thats|that is|that was|its|it is)?(?: not)?"
    r" ?(?:wrong|not true|not right|incorrect|false)(?: (?:about|on|for|with))\b"
)
"""`thats wrong about okafor`."""


_NOT_ABOUT = words_in(
    "a an the his her their he she they him them is are was were being be been has have had"
    " having do does doing did it its that this and or of on in at to for about with a lot"
    " alot always often much very so too really please pls thanks now again not no i we you me"
    " my our said part thing stuff one bit line note notes what only just all everything any"
    " anything wrong true right incorrect false thats forget delete remove scratch drop erase"
    " ignore scrap take back undo cancel strike disregard out wrote noted told put down before"
    " earlier regarding saying can could sorry wait actually oops hey so ok first last other"
    " scrub bin cross get rid"
    " those play plays playing use uses"
)
_POINTING = words_in("it its is was thats actually no nope sorry were we play playing v vs")


def _says_who(message: Message, rest: str, named: Sequence[Mention]) -> bool:
    """ "Scratch that, it is okafor" tells who it is instead; "scratch that okafor" who goes."""
    names = " ".join(
        word.folded
        for word in message.said
        if any(one.span[0] <= word.span[0] < one.span[1] for one in named)
    )
    beside = set(rest.split()) - set(names.split()) - {"and", "n"}
    return bool(beside) and beside <= _POINTING


def _tells(named: Mention, said: Sequence[Word]) -> bool:
    """Whether it is whoever told the note: the Marco of "forget what marco said"."""
    behind = [word.folded for word in said if word.span[0] >= named.span[1]]
    before = [word.folded for word in said if word.span[0] < named.span[0]]
    return bool(_TELLS & {*behind[:1]}) and bool({"what", "that", "everything"} & {*before[-1:]})


def _form_of(line: str) -> re.Match[str] | None:
    forms = (_TAKEN_BACK, _ONE_ABOUT, _OF_SOMEBODY, _THAT, _DENIED)
    return next((at for form in forms if (at := form.match(line)) is not None), None)


def words_to_drop(text: str, mentions: Sequence[Mention]) -> frozenset[str]:
    """What the notes to go are about, beside whom: "cheating" of "forget benny's cheating"."""
    return frozenset(
        word.folded
        for word in words(text)
        if word.folded not in _NOT_ABOUT
        and not any(one.span[0] <= word.span[0] < one.span[1] for one in mentions)
    )


def notes_dropped(message: Message, chat: ChatView) -> BookSaid | None:
    """Whose notes are to go, the newest first; of nobody named, the part that has such a word."""
    named = tuple(
        one for one in message.mentions if not one.pronoun and not _tells(one, message.said)
    )
    if "?" in message.text:
        return None
    line = " ".join(word.folded for word in message.said)
    if not named:
        found = _PART.match(line) or _SAID_OF.match(line)
        is_score = bool(groups(message.said))
        what = found["what"] if found is not None else "" if is_score else _claimed(line, chat)
        is_told = bool({*what.split()} - _NOT_ABOUT)
        teller = _TELLER.search(line)
        if is_told and teller is not None and teller["who"] not in _OURSELVES:
            # Only a note that names who told it is surely the one.
            what = f"{teller['who']} {what}"
            return BookSaid(text=what, verb=BookVerb.DROP_NOTES, words=teller["who"])
        return BookSaid(text=what, verb=BookVerb.DROP_NOTES) if is_told else None
    found = _form_of(line) or (_PLAINLY.match(line) if message.note.claims else None)
    if found is None:
        return None
    that = _THAT.match(line)
    if that is not None and _says_who(message, line[that.end() :], named):
        return None
    begins = sum(word.span[0] < named[0].span[0] for word in message.said)
    if begins > len(found[0].split()) + 2:
        return None
    is_denied = _DENIED.match(line) is not None
    told = dict.fromkeys(
        claim.trait.value if is_denied or _only_names(claim, message) else as_told(claim)
        for claim in message.note.claims
    )
    return BookSaid(
        text=message.text, verb=BookVerb.DROP_NOTES, words=" ".join(told), mentions=named[:1]
    )


def _only_names(claim: Claim, message: Message) -> bool:
    """Whether a habit is but the subject, named beside a player: "about okafor and stack"."""
    before = [word.folded for word in message.said if word.span[1] <= claim.span[0]]
    own = message.text[slice(*claim.span)].split()
    return claim.value is Value.OFTEN and len(own) == 1 and before[-1:] in (["and"], ["n"])


def _claimed(line: str, chat: ChatView) -> str:
    """What the line names that a note may claim: the "weak bh" of "take back weak bh"."""
    found = _PLAINLY.match(line)
    is_claim = found is not None and claims_of(f" {found['what']}", chat)
    return found["what"] if found is not None and is_claim else ""


def as_told(claim: Claim) -> str:
    """The claim in a word: its trait and what is told of it."""
    return f"{claim.trait.value}={'not-' if claim.denied else ''}{claim.value.value}"


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldOf:
    """What a note to go claims: of which trait, and, where that is told, what of it."""

    trait: Trait
    value: Value | None = None
    denied: bool = False

    def is_told_by(self, one: Claim | NewObservation) -> bool:
        """Whether it is the same; of two values the one is told by the other denied."""
        if one.trait is not self.trait:
            return False
        return self.value is None or (one.value is self.value) is (one.denied is self.denied)


def told_of(words: str) -> tuple[ToldOf, ...]:
    """What `notes_dropped` put into words, read back."""
    found = []
    for word in words.split():
        trait, _, value = word.partition("=")
        bare = value.removeprefix("not-")
        known = Value(bare) if bare else None
        found.append(ToldOf(trait=Trait(trait), value=known, denied=bare != value))
    return tuple(found)
