"""A typed message made readable for machines: cut, folded, split into tokens that keep their place.

Look-alike letters and zero-width characters are folded away; scores, numbers and the names that
the caller points out become one token each, so that nothing else depends on who plays whom.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Sequence
from enum import StrEnum
from functools import lru_cache

from bot.chat.lookalikes import LOOKALIKE
from knowledge.dataclass import dataclass
from knowledge.regex import regex

LONGEST_READ_CHARS = 400  # a question is said by then; the rest is kept by the note, not read


class SlotToken(StrEnum):
    """What stands in the token row in place of a slot's own words."""

    NAME = "<name>"
    OURS = "<ours>"
    SCORE = "<score>"
    NUMBER = "<num>"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mask:
    """A stretch of the original text that stands for a slot; OURS is a player of our own pair."""

    span: tuple[int, int]
    token: SlotToken = SlotToken.NAME


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """One folded word (or a slot token) and its span in the text as typed."""

    text: str
    span: tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """Tokens [start, end) of one sentence; `asks` where it ends in a question mark."""

    start: int
    end: int
    asks: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Utterance:
    """A message as typed (cut to 400 characters), its tokens in order, and its sentences."""

    text: str
    tokens: tuple[Token, ...]
    sentences: tuple[Sentence, ...] = ()

    @property
    def words(self) -> tuple[str, ...]:
        return tuple(token.text for token in self.tokens)


_EXTRA_FOLDS = str.maketrans(
    {"ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "ı": "i", "&": " and ", "%": " percent "}
)
_APOSTROPHES = "'’‘`´ʼ′"
_POSSESSIVE = ("'s", "’s")
_JOINERS = {"\u200d", "\ufe0f", "\u00ad"}
_NUMBER_WORDS = (
    "zero|oh|love|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen"
    "|fifteen|sixteen|seventeen|eighteen|nineteen|twenty"
)
_SCORE_DIGITS = (
    r"\d{1,2}(?:\s*[-–—:/]\s*\d{1,2}){1,2}|\d{1,2} \d{1,2}(?: [12])?|\d{1,2} (?:all|apiece)"
)
_SCORE_WORDS = (
    rf"(?:{_NUMBER_WORDS})(?:[ -](?:to )?(?:{_NUMBER_WORDS})){{1,2}}|(?:{_NUMBER_WORDS}) all"
)
_TOKEN = regex(
    rf"(?P<score>\b(?:{_SCORE_DIGITS})\b|\b(?:{_SCORE_WORDS})\b)"
    r"|(?P<ordinal>\d+(?:st|nd|rd|th)\b)|(?P<number>\d+)|(?P<word>[^\W\d_]+)|(?P<mark>[^\w\s,.;:!()\"/-])"
)


@lru_cache(maxsize=4096)
def _fold_character(character: str) -> str:
    """What this character is read as: Latin letters, digits or a sign; nothing if invisible."""
    if character in _JOINERS or character in _APOSTROPHES:
        return ""
    if unicodedata.category(character) in ("Cf", "Mn", "Me"):
        return ""
    wide = unicodedata.normalize("NFKD", unicodedata.normalize("NFKC", character)).casefold()
    plain = "".join(c for c in wide if not unicodedata.combining(c) and c not in _APOSTROPHES)
    return plain.translate(_EXTRA_FOLDS).translate(LOOKALIKE)


def _fold(text: str) -> tuple[str, Sequence[int]]:
    """The folded text, and for each of its characters the place in `text` that it came from."""
    if text.isascii() and not any(sign in text for sign in "'`&%"):
        return text.lower(), range(len(text))
    pieces: list[str] = []
    origin: list[int] = []
    for place, character in enumerate(text):
        folded = _fold_character(character)
        pieces.append(folded)
        origin.extend([place] * len(folded))
    return "".join(pieces), origin


def _cover(text: str, masks: Iterable[Mask]) -> list[tuple[int, int, str | None]]:
    """The text as stretches in order: plain ones with no token, masked ones with theirs."""
    stretches: list[tuple[int, int, str | None]] = []
    at = 0
    for mask in sorted(masks, key=lambda m: m.span):
        start, end = max(at, mask.span[0]), min(len(text), mask.span[1])
        if text[end : end + 2].lower() in _POSSESSIVE:
            end += 2
        if start >= end:
            continue
        stretches += [(at, start, None), (start, end, mask.token.value)]
        at = end
    stretches.append((at, len(text), None))
    return [stretch for stretch in stretches if stretch[0] < stretch[1]]


def _split(text: str, offset: int) -> list[Token]:
    folded, origin = _fold(text)
    tokens = []
    for found in _TOKEN.finditer(folded):
        start = origin[found.start()] + offset
        end = origin[found.end() - 1] + 1 + offset
        word = {"score": SlotToken.SCORE, "number": SlotToken.NUMBER}.get(found.lastgroup or "")
        tokens.append(Token(text=word.value if word else found.group(), span=(start, end)))
    return tokens


def read(text: str, masks: Iterable[Mask] = ()) -> Utterance:
    """The message as tokens with spans in `text`; masked stretches become their slot token."""
    cut = text[:LONGEST_READ_CHARS]
    tokens: list[Token] = []
    for start, end, token in _cover(cut, masks):
        if token is None:
            tokens += _split(cut[start:end], start)
        else:
            tokens.append(Token(text=token, span=(start, end)))
    if len(tokens) > 1:
        tokens = [token for token in tokens if token.text != "?"]
    return Utterance(text=cut, tokens=tuple(tokens), sentences=_sentences(cut, tokens))


def _sentences(text: str, tokens: Sequence[Token]) -> tuple[Sentence, ...]:
    found: list[Sentence] = []
    start = 0
    for at, token in enumerate(tokens):
        last = at + 1 == len(tokens)
        gap = text[token.span[1] : len(text) if last else tokens[at + 1].span[0]]
        if last or _ends_sentence(gap):
            found.append(Sentence(start=start, end=at + 1, asks="?" in gap))
            start = at + 1
    return tuple(found)


def _ends_sentence(gap: str) -> bool:
    return any(mark in gap for mark in "?!\n;") or ". " in gap
