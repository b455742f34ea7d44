"""What somebody is really called, told of one whom the book knows by looks or by another name.

"Redcap is called Nigel Frost", "his name isn't redcap, it's Nigel Frost", "so lanky is marcus".
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.forms import word_set
from bot.chat.message import Message
from bot.chat.moods import tells_a_state
from bot.chat.named_line import named_line
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.trait_lexicon import trait_phrases
from bot.chat.unknown_names import may_bear_a_name
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.regex import regex
from scouting_db.known_names import is_no_name
from scouting_db.sounds import fold
from scouting_db.values import PlayerRow

_LEAD = (
    r"(?:(?:ok|okay|so|and|oh|right|no|nope|well|btw|fyi|hey|wait|actually|apparently|sorry|turns"
    r"|out|it|the) )*"
)
_END = r"(?: (?:apparently|actually|btw|then|by the way|lol|it turns out))*"
_NEW = r"(?P<new>[^\W\d]+(?: [^\W\d]+)??)"
_SAME = (
    r"(?:(?:the|is) )*(?:same|one) (?:bloke|person|guy|man|lad|woman|lady|girl|player|one|fella)"
)
_NAMES = tuple(
    regex(form)
    for form in (
        rf"{_LEAD}N(?: s)? (?:(?:real|actual|full|proper|right) )?names? (?:is|s)"
        rf"(?: (?:actually|really))? {_NEW}{_END}",
        rf"{_LEAD}(?:his|her|the|their) (?:(?:real|actual) )?name (?:isnt|is not|aint|wasnt) N"
        rf" (?:(?:its|it is|but|hes|shes|thats) )*{_NEW}{_END}",
        rf"{_LEAD}N (?:is|was) (?:(?:actually|really) )?(?:called|named) {_NEW}{_END}",
        rf"{_LEAD}N (?:and|is|=) {_NEW} (?:(?:are|is|theyre|its) )?{_SAME}{_END}",
        rf"{_LEAD}{_NEW} (?:and|is|=) N (?:(?:are|is|theyre|its) )?{_SAME}{_END}",
    )
)
"""Forms in which nothing but a name can stand."""

_IS = regex(rf"{_LEAD}N (?:is|was|turns out to be|is (?:actually|really)) {_NEW}{_END}")
""" "Redcap is Nigel Frost": only a word that is known as a name, or written as one, is one here."""

_IS_ME = frozenset({"me", "my", "our", "us"})


def real_name_told(message: Message, chat: ChatView) -> BookSaid | None:
    """The renaming; None where the new name is somebody's of the book, or tells how they are.

    So neither a note ("redcap is slow"), nor who is who of two players, renames anybody.
    """
    if chat.forwarded or message.asks or "?" in message.text:
        return None
    row = _only_one_known(message, chat)
    if row is None:
        return None
    old = next(one for one in message.mentions if row.player in one.players)
    line = named_line(message.said, (old,))
    found = next((at for form in _NAMES if (at := form.fullmatch(line)) is not None), None)
    is_sure = found is not None
    found = found or _IS.fullmatch(line)
    if found is None:
        return None
    new = _words_of(message.said, line, found.start("new"), found["new"], old)
    others = [each for each in chat.roster if each is not row]
    is_news = fold(" ".join(word.folded for word in new)) != fold(row.name)
    if not is_news or not all(_is_free(word, others) for word in new):
        return None
    if not (is_sure or all(map(_is_surely_name, new))):
        return None
    name = " ".join(one.typed if one.is_capitalised else one.typed.capitalize() for one in new)
    return BookSaid(
        text=message.text,
        verb=BookVerb.RENAME_PLAYER,
        words=f"{row.name} to {name}",
        mentions=(
            Mention(typed=row.name, span=old.span, certainty=old.certainty, players=old.players),
        ),
    )


def _only_one_known(message: Message, chat: ChatView) -> PlayerRow | None:
    """Whom of the book the message names by one name; nobody where it names two."""
    named = [one for one in message.mentions if one.players and not one.pronoun]
    meant = {player for one in named for player in one.players}
    if len(meant) != 1 or any(one.certainty is not Certainty.SURE for one in named):
        return None
    row = next((row for row in chat.roster if row.player in meant), None)
    return row if row is not None and _has_no_full_name(row) else None


def _has_no_full_name(row: PlayerRow) -> bool:
    """Whether the book knows them by one name, or by looks alone: "Tall Lad"."""
    return " " not in row.name or fold(row.name).split()[-1] in word_set("told_by_looks")


def _words_of(
    said: Sequence[Word], line: str, start: int, new: str, old: Mention
) -> Sequence[Word]:
    """The words as typed; in the line the old name, however long, is one word."""
    place = len(line[:start].split())
    before = line[:start].split()
    if "N" in before:
        place += sum(old.span[0] <= word.span[0] < old.span[1] for word in said) - 1
    return said[place : place + len(new.split())]


def _is_free(word: Word, others: Sequence[PlayerRow]) -> bool:
    """Whether it may be a name, and is nobody else's in the book."""
    taken = {fold(part) for row in others for part in row.name.split()}
    if word.folded in taken or word.folded in _IS_ME or word.folded in trait_phrases().words:
        return False
    return may_bear_a_name(word) and not tells_a_state(word)


def _is_surely_name(word: Word) -> bool:
    return word.is_capitalised or not is_no_name(word.folded)
