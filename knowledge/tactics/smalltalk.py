"""What is no question about a match: a friendly short line, and an example of one that is."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

from knowledge.advice import CALL_LIMIT, Advice, Choice
from knowledge.dataclass import dataclass
from knowledge.general_rule import LINE_LIMIT, fitting, load_entries, overlap, read_words
from knowledge.said_phrases import without_accents
from knowledge.situation import Situation
from knowledge.vocabulary import Topic

EXAMPLE = '"who covers the middle?"'
EXAMPLE_OF = '"where do I dink {name}?"'
LONGEST_EXAMPLE = 34
"""Characters of an example, so that it stands in one line of a phone."""

OTHER_LANGUAGE = "<other language>"

_FOREIGN_WORDS = (
    "ich du wir sie nicht kein wie wer wohin wo ist sind bitte danke verstehe spielen aufschlag "
    "hallo guten und aber das der ein eine mir dir "
    "donde que quien como saco hola gracias por favor jugar pelota estoy entiendo los las una "
    "cuando nosotros ellos "
    "je nous vous qui est sont merci bonjour comprends pas avec pour quoi quand "
    "dove chi che cosa sono grazie ciao perche quando non capisco palla "
    "onde quem obrigado obrigada nao bola entendo "
    "ik jij wij niet wie waar dank hoe"
)
_FOREIGN = frozenset(_FOREIGN_WORDS.split())
"""Common words of German, Spanish, French, Italian, Portuguese and Dutch, without accents."""

SURE_SHARE = 0.5
"""Above this share of foreign words a message counts as foreign."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    words: tuple[str, ...]
    call: str
    line: str


DEFAULT = Answer(words=(), call="Ask me about the match: I'm here for that.", line="For example:")


def advise(situation: Situation) -> Advice:
    """A friendly line that fits the words, and an example question."""
    found = find_answer(situation.asked.words)
    return Advice(
        topic=situation.topic,
        call=found.call,
        assumed=f"{found.line} {_example(situation)}",
        choices=(
            Choice(label="who covers the middle?", topic=Topic.COVER_MIDDLE),
            Choice(label="game plan", topic=Topic.GAME_PLAN),
        ),
    )


def _example(situation: Situation) -> str:
    """A question about one of their own opponents, if any is known."""
    for one in situation.theirs:
        example = EXAMPLE_OF.format(name=one.name)
        if len(example) <= LONGEST_EXAMPLE:
            return example
    return EXAMPLE


def find_answer(words: str) -> Answer:
    """The entry that covers most of the words, or the plain one."""
    if is_other_language(words):
        return next(one for one in answers() if OTHER_LANGUAGE in one.words)
    best = max(answers(), key=lambda one: overlap(one.words, words) or _bare(one, words))
    return best if overlap(best.words, words) or _bare(best, words) else DEFAULT


def _bare(answer: Answer, words: str) -> int:
    """A phrase of words that tell little alone ("what are you") still counts whole."""
    said = f" {' '.join(re.findall(r'[a-z]+', words.casefold().replace(chr(39), '')))} "
    return int(any(f" {phrase} " in said for phrase in answer.words))


def is_other_language(words: str) -> bool:
    """Whether most words are of another language, or letters of another script."""
    letters = [c for c in words if c.isalpha()]
    if letters and sum(ord(c) > LATIN_ENDS for c in letters) > len(letters) / 2:
        return True
    said = re.findall(r"[a-z]+", without_accents(words))
    foreign = [word for word in said if word in _FOREIGN]
    return bool(said) and len(foreign) >= SURE_SHARE * len(said)


LATIN_ENDS = 0x24F
"""The last letter of Latin Extended-B."""


@cache
def answers() -> tuple[Answer, ...]:
    """All entries; RuleDataError if a line does not fit."""
    return tuple(_answer(row) for row in load_entries("knowledge.tactics", "smalltalk.toml"))


def _answer(row: Mapping[str, object]) -> Answer:
    return Answer(
        words=read_words(row),
        call=fitting(row.get("call"), CALL_LIMIT),
        line=fitting(row.get("line"), LINE_LIMIT),
    )
