"""Which rule a question asks for: three readers together, sure only with a lead and agreement.

1. Likeness of its ideas to a rule's ways of asking, and the odds of its ideas (likeness.py).
2. The chance of each rule by ideas, words and pieces of words (pieces.py).
3. The three are added; the first is taken. Sure: it leads by some if all three readers have it
   first, by more if two have. Else the second is offered beside it.
4. Nothing like it, or most like what no entry answers: none.

The weights and limits are ours, set by leave-one-writer-out (tests/support/rules_left_out.py).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache

from knowledge.rulebook.entry import Rule, rules
from knowledge.rulebook.forms import ELSEWHERE, Form, Forms, Writer, forms_by_rule
from knowledge.rulebook.likeness import IdeaReader, read_ideas
from knowledge.rulebook.pieces import PieceReader, read_pieces
from knowledge.rulebook.words import Vocabulary, read_vocabulary, words_table

LIKENESS_COUNTS = 4.0
"""Nats that a full likeness adds to the log chance by pieces."""

ODDS_COUNT = 0.4
"""Share of the log odds of the ideas that is added to it."""

LEAD_OF_ALL = 1.5
"""Lead in nats from which the first is sure where all readers have it first."""

LEAD_OF_TWO = 2.8
"""And where two of the three have."""

LIKE_ENOUGH = 0.3
"""Likeness below which nothing is sure."""

ALONE_ENOUGH = 0.42
"""Likeness below which a rule that no reader has first is not said."""

NEAR_ENOUGH = 0.2
"""Likeness below which nothing fits."""

READERS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The rule meant, if one fits, and others that may be; `others` are the likest first."""

    rule: Rule | None
    others: tuple[Rule, ...] = ()

    @property
    def is_sure(self) -> bool:
        return self.rule is not None and not self.others


@dataclass(frozen=True, slots=True, kw_only=True)
class Votes:
    """The first three (places of rules), the first's lead in nats, its likeness, its readers."""

    first: int
    second: int
    third: int
    lead: float
    likeness: float
    readers: int

    @property
    def is_sure(self) -> bool:
        if self.likeness < LIKE_ENOUGH or self.readers < READERS - 1:
            return False
        return self.lead > (LEAD_OF_ALL if self.readers == READERS else LEAD_OF_TWO)

    @property
    def is_lost(self) -> bool:
        """Whether nothing fits well enough to be said."""
        return self.likeness < (NEAR_ENOUGH if self.readers else ALONE_ENOUGH)


@dataclass(frozen=True)
class Finder:
    """The rules' ways of asking, read once by three readers; what no rule answers stands last."""

    rules: tuple[Rule, ...]
    forms: Forms
    vocabulary: Vocabulary
    ideas: IdeaReader = field(init=False)
    pieces: PieceReader = field(init=False)

    def __post_init__(self) -> None:
        names = (*(rule.name for rule in self.rules), ELSEWHERE)
        read = [[self.vocabulary.reading(form.text) for form in self.forms[n]] for n in names]
        subjects = (*(rule.subject for rule in self.rules), frozenset[str]())
        ideas = read_ideas([[form.ideas for form in forms] for forms in read], subjects)
        object.__setattr__(self, "ideas", ideas)
        object.__setattr__(self, "pieces", read_pieces(read))

    def find(self, said: str) -> Found:
        """The rule that a text asks for, and what else it may mean."""
        votes = self.votes(said)
        # a doubt always has a rule to tap: the third where no rule at all comes second
        both = self._named((votes.first, votes.second, votes.third))[:2]
        if votes.is_lost:
            return Found(rule=None, others=both if votes.likeness >= NEAR_ENOUGH else ())
        if votes.first == len(self.rules):
            return Found(rule=None, others=both)
        return Found(rule=both[0], others=() if votes.is_sure else both[1:])

    def votes(self, said: str) -> Votes:
        """How the readers take a text."""
        reading = self.vocabulary.reading(said)
        ideas = reading.ideas & self.ideas.at.keys()
        chances, odds = self.pieces.log_chances(reading), self.ideas.log_odds(ideas)
        likeness = self.ideas.likeness(ideas)
        scores = chances + LIKENESS_COUNTS * likeness + ODDS_COUNT * odds
        first, second, third = (int(place) for place in (-scores).argsort(kind="stable")[:3])
        return Votes(
            first=first,
            second=second,
            third=third,
            lead=float(scores[first] - scores[second]),
            likeness=float(likeness[first]),
            readers=sum(int(one.argmax()) == first for one in (chances, likeness, odds)),
        )

    def leans(self, said: str) -> bool:
        """Whether a text speaks of nothing by itself: "and with a ref, who calls it then?"."""
        return self.vocabulary.ideas(said) & self.ideas.at.keys() <= self.vocabulary.leaning

    def _named(self, places: Sequence[int]) -> tuple[Rule, ...]:
        """The rules at these places, without the one that stands for no rule."""
        return tuple(self.rules[place] for place in places if place < len(self.rules))


def vocabulary_of(forms: Forms) -> Vocabulary:
    """The words file, with the words of all ways of asking that are spelled as they should be."""
    return read_vocabulary(
        words_table(), [form.text for form in _every(forms) if _is_spelled(form)]
    )


def _every(forms: Forms) -> list[Form]:
    return [form for many in forms.values() for form in many]


def _is_spelled(form: Form) -> bool:
    return form.writer is not Writer.SLIPS


@cache
def _finder() -> Finder:
    forms = forms_by_rule()
    return Finder(rules=rules(), forms=forms, vocabulary=vocabulary_of(forms))


def find_rule(words: str, *, before: str = "") -> Found:
    """The rule that the words ask for; `before` is the question that they go on from.

    A question that stands by itself is read alone, one that leans together with the one before;
    where that stays unsure ("and with a referee?"), the one before is still meant.
    """
    finder = _finder()
    alone = finder.find(words)
    if not before or (alone.is_sure and not finder.leans(words)):
        return alone
    both, earlier = finder.find(f"{before} {words}"), finder.find(before)
    if both.is_sure or earlier.rule is None:
        return both if both.rule is not None else alone
    return earlier if finder.leans(words) else both
