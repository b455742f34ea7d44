"""How rules are found for a writer left out of the data: python tests/support/rules_left_out.py."""

from __future__ import annotations

import sys
from collections import Counter

from rules_asked import Outcome, outcome_of

from knowledge.rulebook import rules
from knowledge.rulebook.finding import Finder, vocabulary_of
from knowledge.rulebook.forms import ELSEWHERE, Writer, forms_by_rule


def outcomes_without(writer: Writer) -> Counter[Outcome]:
    """Outcomes of a writer's forms where the readers and the words know none of them."""
    kept = {
        name: tuple(form for form in forms if form.writer is not writer)
        for name, forms in forms_by_rule().items()
    }
    finder = Finder(rules=rules(), forms=kept, vocabulary=vocabulary_of(kept))
    return Counter(
        outcome_of(finder.find(form.text), () if name == ELSEWHERE else (name,))
        for name, forms in forms_by_rule().items()
        for form in forms
        if form.writer is writer
    )


def main() -> None:
    total = Counter[Outcome]()
    for writer in Writer:
        found = outcomes_without(writer)
        total += found
        sys.stdout.write(f"{writer}: {found.total()} {dict(found.most_common())}\n")
    for outcome, count in total.most_common():
        sys.stdout.write(f"  {outcome}: {count} ({count / total.total():.1%})\n")


if __name__ == "__main__":
    main()
