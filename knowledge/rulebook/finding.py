"""Which rule a question asks for: three readers, sure only where they agree.

1. Likeness of its ideas to a rule's ways of asking, and the odds of its ideas (likeness.py).
2. The chances by its ideas, words and pieces of words (pieces.py); this reader's rule is taken, as
   it is right most often on ways of asking that it has not seen.
3. Sure: all three agree, or two of them with a clear lead. Else another rule is offered beside it.
4. Nothing like it, three readers of three minds, or most like what no entry answers: none.

The limits are ours, set by leave-one-writer-out (tests/support/rules_left_out.py).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache

from knowledge.rulebook.entry import Rule, rules
from knowledge.rulebook.forms import ELSEWHERE, Form, Forms, Writer, forms_by_rule
from knowledge.rulebook.likeness import IdeaReader, read_ideas
from knowledge.rulebook.pieces import Floats, PieceReader, read_pieces
from knowledge.rulebook.words import Vocabulary, read_vocabulary, words_table

LIKE_ENOUGH = 0.3
"""Likeness from which three readers that agree are sure."""

ALIKE = 0.42
"""Likeness from which two readers that agree may be sure."""

CLEAR_LEAD = 1.5
"""Lead of the piece reader's first over its second, in nats, that two readers need for that."""

ANYHOW = 0.35
"""Likeness below which a rule of one reader alone is only offered."""

NEAR_ENOUGH = 0.25
"""Likeness below which nothing fits."""


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
    """What the readers take a question for (places of rules), the piece reader's two first."""

    by_pieces: tuple[int, int]
    lead: float
    likest: int
    likeness: float
    by_odds: int

    @property
    def seconds(self) -> int:
        """How many other readers agree with the piece reader."""
        return [self.likest, self.by_odds].count(self.by_pieces[0])

    @property
    def is_sure(self) -> bool:
        all_agree = self.seconds == 2 and self.likeness >= LIKE_ENOUGH
        return all_agree or (
            self.seconds > 0 and self.likeness >= ALIKE and self.lead > CLEAR_LEAD
        )

    @property
    def is_lost(self) -> bool:
        """Whether nothing fits well enough to be said."""
        return self.likeness < (NEAR_ENOUGH if self.seconds else ANYHOW)

    @property
    def others(self) -> tuple[int, ...]:
        """The likest first; each once, without the one taken."""
        ranked = dict.fromkeys((self.likest, self.by_odds, self.by_pieces[1]))
        return tuple(place for place in ranked if place != self.by_pieces[0])


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
        if votes.is_lost:
            near = (*votes.by_pieces[:1], *votes.others) if votes.likeness >= NEAR_ENOUGH else ()
            return Found(rule=None, others=self._named(near)[:2])
        taken = self._named(votes.by_pieces[:1])
        if not taken:
            return Found(rule=None, others=self._named(votes.others)[:1])
        if votes.is_sure:
            return Found(rule=taken[0])
        return Found(rule=taken[0], others=self._named(votes.others)[:1])

    def votes(self, said: str) -> Votes:
        """What each reader takes a text for."""
        reading = self.vocabulary.reading(said)
        ideas = reading.ideas & self.ideas.at.keys()
        chances, likeness = self.pieces.log_chances(reading), self.ideas.likeness(ideas)
        first, second = _two_best(chances)
        likest, _ = _two_best(likeness)
        return Votes(
            by_pieces=(first, second),
            lead=float(chances[first] - chances[second]),
            likest=likest,
            likeness=float(likeness[likest]),
            by_odds=_two_best(self.ideas.log_odds(ideas))[0],
        )

    def leans(self, said: str) -> bool:
        """Whether a text speaks of nothing by itself: "and with a ref, who calls it then?"."""
        return self.vocabulary.ideas(said) & self.ideas.at.keys() <= self.vocabulary.leaning

    def _named(self, places: Sequence[int]) -> tuple[Rule, ...]:
        """The rules at these places, without the one that stands for no rule."""
        return tuple(self.rules[place] for place in places if place < len(self.rules))


def _two_best(scores: Floats) -> tuple[int, int]:
    first, second = (-scores).argsort(kind="stable")[:2]
    return int(first), int(second)


def vocabulary_of(forms: Forms) -> Vocabulary:
    """The words file, with the words of all ways of asking that are spelled as they should be."""
    return read_vocabulary(words_table(), [form.text for form in _every(forms) if _is_spelled(form)])


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
