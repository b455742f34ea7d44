"""Words that stand where a name stands though nobody bears it: "kimur bangs", "kims backhand".

Whatever else is odd is no name: a capital alone proves little, since German writes every noun so.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from importlib.resources import files

from bot.chat.common_words import is_common, respelled
from bot.chat.forms import any_of, word_set
from bot.chat.trait_lexicon import trait_phrases
from bot.chat.words import Word
from knowledge.regex import regex
from scouting_db.called_names import call_of_name

_SHORTEST_NAME = 3
_SHORTEST_ODD = 5
"""Letters of a word that is a name for no other reason than that it is no word."""
LONGEST_SKILL = 2
"""Words that name a skill: "fh dink"."""

_MARKS = frozenset(",;:.!?()\n—–|&/")

_BEFORE_A_NAME = frozenset(["note", "notes", "about", "vs", "versus", "against", "report"])
_ASKS_ABOUT = any_of("asked_about_somebody", last=True)
_BEFORE_WHOM = word_set("before_whom_it_is_aimed_at")
_STARTERS = word_set("clause_starters")
_ADVERBS = word_set("adverbs_before_a_verb")
_PREDICATES = word_set("predicates")
_SKILLS = word_set("owned_skills")
_ADJECTIVES = word_set("told_adjectives")
_OF_A_SKILL = _ADJECTIVES | word_set("told_of_a_skill")
_NO_NAME = word_set("no_name")
_GIVEN_NAMES = word_set("given_names_that_are_words")
_BEFORE_A_FULL_NAME = _BEFORE_A_NAME | word_set("before_a_full_name")
_AFTER_A_NAME = word_set("after_a_full_name")
_SMALL_WORDS = word_set("small_words")
_OWNERS = frozenset(["her", "his"])
_VOWELS = frozenset("aeiouy")

_HEADING = regex(r" *[;|=>] *| +[-–—]+>? +")
"""Between somebody at the start of a line and what is told of them."""

_ENDINGS = ("ing", "ive")
"""Of words that stand after "about" and "vs" without being names: "stopping", "defensive"."""


def is_unknown_name(said: Sequence[Word], position: int) -> bool:
    """Whether a word that fits nobody on the roster is still somebody's name."""
    word = said[position]
    if not word.folded.isalpha() or len(word.folded) < _SHORTEST_NAME or _is_a_word(word.folded):
        return False
    if owns_a_skill(said, position) or _is_aimed_at(said, position):
        return True
    if _heads_a_line(said, position) or _is_asked_about(said, position):
        return True
    slipped = respelled(word.folded) in trait_phrases().words
    if is_written_as_name(said, position) and not _is_another_language(said):
        return word.is_capitalised or not word.folded.endswith(_ENDINGS)
    opens = begins_a_clause(said, position) or said[position - 1].folded == "partner"
    return not slipped and opens and _is_told_of(said, position + 1)


def _heads_a_line(said: Sequence[Word], position: int) -> bool:
    """ "joost | right hander", "wim; slow knees": a list of people, each with a line of notes."""
    opens = not position or "\n" in said[position].gap
    ahead = said[position + 1] if position + 1 < len(said) else None
    if not opens or ahead is None or not _HEADING.fullmatch(ahead.gap):
        return False
    folded = said[position].folded
    is_told = any(word.folded in trait_phrases().words for word in said[position + 1 :][:3])
    is_name = call_of_name(folded) is not None or _is_new(folded)
    return is_told and is_name


def _is_aimed_at(said: Sequence[Word], position: int) -> bool:
    """The last word, which is none we know, after a shot or its "at": "where do we dink zorb"."""
    after = said[position - 1].folded if position else ""
    is_last = position + 1 == len(said)
    return is_last and after in _BEFORE_WHOM and is_no_word(said[position].folded)


def _is_asked_about(said: Sequence[Word], position: int) -> bool:
    """The last word, after "report on" or "what do i have on"; a slip of a word we know is none."""
    line = " ".join(word.folded for word in said[:position])
    is_last = position + 1 == len(said)
    return (
        is_last
        and bool(_ASKS_ABOUT.search(line))
        and not _is_a_word_mistyped(said[position].folded)
    )


def unknown_name_end(said: Sequence[Word], start: int, known: Callable[[str], bool]) -> int | None:
    """Where the name of somebody unknown that begins here ends; None where none begins.

    `known` tells names on the roster: "kimur okafor" are two people.
    """
    if _is_full_name(said, start) and not known(said[start + 1].folded):
        return start + 2
    return start + 1 if is_unknown_name(said, start) else None


def is_no_word(folded: str) -> bool:
    """Whether a word is none we know, nor one mistyped: perhaps a name, wherever it stands."""
    if len(folded) < _SHORTEST_ODD or not folded.isalpha() or folded in _seen_words():
        return False
    return not _is_a_word(folded) and not _is_a_word_mistyped(folded)


def stands_as_name(word: Word) -> bool:
    """Whether a word is a name where nothing but one can stand, "saskia's partner is lotte": it
    need only be no word of the game, of everyday English or of another language.
    """
    is_long = len(word.folded) >= _SHORTEST_NAME and word.folded.isalpha()
    return is_long and not _is_a_word(word.folded)


def may_bear_a_name(word: Word) -> bool:
    """Whether a word may be a name where one is told: none we know, or one written or known so."""
    if word.folded in _GIVEN_NAMES:
        return True
    is_known = is_common(word.folded) or word.folded in _NO_NAME
    is_new = word.folded not in _seen_words() and not _is_a_word(word.folded)
    return word.folded.isalpha() and not is_known and (is_new or word.is_capitalised)


def is_new_word(folded: str) -> bool:
    """Whether it is neither everyday English, nor a word of play, nor a slip of one."""
    return _is_new(folded) and not _is_a_word(folded)


def is_seen(folded: str) -> bool:
    """Whether it is an everyday word, though not one of the common ones."""
    return folded in _seen_words()


def _is_full_name(said: Sequence[Word], start: int) -> bool:
    """A first and a last name, where a subject or a list of names stands: "pat olsen pops up"."""
    if start + 1 >= len(said) or said[start + 1].gap != " ":
        return False
    first, last = said[start], said[start + 1]
    is_first = not _is_a_word(first.folded) or first.folded in _GIVEN_NAMES
    if not is_first or first.is_possessive or not all(map(_may_be_part, (first, last))):
        return False
    if _is_a_word(last.folded) or (_is_slip(last.folded) and not _must_be_last(said, start + 1)):
        return False
    if not first.is_capitalised and _is_a_word_mistyped(first.folded):
        return False
    if len(said) == 2 and not (first.is_capitalised and last.is_capitalised):
        return False  # two odd words alone are nobody's
    opens = begins_a_clause(said, start) or said[start - 1].folded in _BEFORE_A_FULL_NAME
    if opens and _is_name_until(said, start + 2):
        return True
    are_written = all(_has_capital_inside(said, at) for at in (start, start + 1))
    return are_written and not _is_another_language(said)


def _must_be_last(said: Sequence[Word], position: int) -> bool:
    """Whether a word like one of play ends a name: "we play Torvald Lunde", "serve torvald lunde".

    Nobody capitalises a verb, and who is aimed at lunges nowhere.
    """
    is_end = position + 1 == len(said) and position > 1
    is_aimed = is_end and said[position - 2].folded in _BEFORE_WHOM
    return is_aimed or _has_capital_inside(said, position)


def _may_be_part(word: Word) -> bool:
    letters = word.folded.replace("-", "").replace("'", "")
    return len(letters) >= _SHORTEST_NAME and letters.isalpha()


def _is_a_word_mistyped(folded: str) -> bool:
    """ "seocnd" and "thye": what opens with a slip is a line typed in a hurry, no name."""
    swapped = (
        f"{folded[:at]}{folded[at + 1]}{folded[at]}{folded[at + 2 :]}"
        for at in range(len(folded) - 1)
    )
    return respelled(folded) != folded or any(each in _SMALL_WORDS for each in swapped)


def _is_slip(folded: str) -> bool:
    """Whether it is a word of play, typed wrong: "kimur bangz"."""
    meant = respelled(folded)
    return meant != folded and (meant in trait_phrases().words or meant in _PREDICATES)


def _is_name_until(said: Sequence[Word], position: int) -> bool:
    """Whether what stands here may follow a name: nothing, a mark, "and", or what is told."""
    if position >= len(said) or said[position - 1].is_possessive:
        return True
    word = said[position]
    told = word.folded in _ADJECTIVES or word.folded in _SKILLS or has_predicate(said, position)
    is_apart = bool(set(word.gap) & _MARKS) or " - " in word.gap or word.folded[0].isdigit()
    return is_apart or word.folded in _AFTER_A_NAME or told


def _is_told_of(said: Sequence[Word], position: int) -> bool:
    """`zorblatt poaches`, and without a verb `zorblatt lefty`; `zorblatt her volley is weak`."""
    adjective = position < len(said) and said[position].folded in _ADJECTIVES
    if has_predicate(said, position) or (adjective and said[position].gap == " "):
        return True
    owns = position < len(said) and said[position].folded in _OWNERS and said[position].gap == " "
    return _is_new(said[position - 1].folded) and _tells_of_a_skill(said, position + owns)


def _tells_of_a_skill(said: Sequence[Word], position: int) -> bool:
    """`bh weak`, `fh dink pops up`: a skill and at once how it is."""
    start, end = position, min(position + LONGEST_SKILL, len(said))
    while position < end and said[position].folded in _SKILLS and said[position].gap == " ":
        position += 1
    if position == start or position >= len(said) or said[position].gap != " ":
        return False
    return said[position].folded in _OF_A_SKILL or has_predicate(said, position)


def _is_new(folded: str) -> bool:
    """Whether it is neither an everyday word nor one mistyped: hardly anything but a name."""
    is_said = folded in _seen_words() or _is_a_word_mistyped(folded)
    return not is_said and bool(_VOWELS & set(folded))


def is_written_as_name(said: Sequence[Word], position: int) -> bool:
    """Capitalised inside a sentence, or where a name stands: after `note`, before a colon."""
    ahead = said[position + 1].gap if position + 1 < len(said) else ""
    after = said[position - 1].folded if position else ""
    return _has_capital_inside(said, position) or ":" in ahead or after in _BEFORE_A_NAME


def _has_capital_inside(said: Sequence[Word], position: int) -> bool:
    word = said[position]
    inside = bool(position) and not any(mark in word.gap for mark in ".!?\n")
    shouted = all(each.typed.isupper() for each in said if each.typed.isalpha())
    return word.is_capitalised and inside and not shouted


def begins_a_clause(said: Sequence[Word], position: int) -> bool:
    """Whether a subject may stand here: first, after a mark, or after "and", "but", "ok"."""
    if not position or set(said[position].gap) & _MARKS or " - " in said[position].gap:
        return True
    return said[position - 1].folded in _STARTERS


def has_predicate(said: Sequence[Word], position: int) -> bool:
    """Whether a verb told of somebody stands here, "always" and the like before it."""
    while position < len(said) and said[position].folded in _ADVERBS:
        position += 1
    if position >= len(said) or set(said[position].gap) & set(",;:.!?\n"):
        return False
    return said[position].folded in _PREDICATES


def owns_a_skill(said: Sequence[Word], position: int) -> bool:
    """`Kim's backhand`, or `kims backhand is trash` at the start of a clause."""
    word = said[position]
    ahead = [each.folded for each in said[position + 1 : position + 4]]
    skill = next((at for at, each in enumerate(ahead[:2]) if each in _SKILLS), None)
    if skill is None or said[position + 1].gap.strip():
        return False
    if word.is_possessive:
        return True
    told = skill + 1 < len(ahead) and ahead[skill + 1] in _PREDICATES
    return word.folded.endswith("s") and begins_a_clause(said, position) and told


def without_possessive(said: Sequence[Word], position: int) -> str:
    """The name as it would be written in the book: `Kim` of "Kim's", and of "kims backhand"."""
    word = said[position]
    if word.is_possessive:
        return word.typed[:-2]
    owner = word.folded.endswith("s") and owns_a_skill(said, position)
    return word.typed[:-1] if owner else word.typed


def _is_a_word(folded: str) -> bool:
    known = is_common(folded) or folded in _NO_NAME
    return known or folded in _other_languages() or folded in trait_phrases().words


def _is_another_language(said: Sequence[Word]) -> bool:
    """A message in German or Spanish: its capitals tell nothing."""
    return any(word.folded in _other_languages() and not is_common(word.folded) for word in said)


@cache
def _other_languages() -> frozenset[str]:
    text = files("bot.chat.data").joinpath("other_languages.txt").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if not line.startswith("#")]
    return frozenset(" ".join(lines).split())


@cache
def _seen_words() -> frozenset[str]:
    """Everyday words beside the common ones, gathered by tests/train/train_words.py."""
    text = files("bot.chat.data").joinpath("seen_words.txt").read_text(encoding="utf-8")
    return frozenset(text.split())
