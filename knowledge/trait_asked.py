"""A trait that a question about somebody asks after: "is he a lefty", "does she lob a lot"."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.vocabulary import Trait, Value


@dataclass(frozen=True, slots=True, kw_only=True)
class TraitAsked:
    """The trait, and what is supposed of it; `value` is None where nothing is.

    `is_open`: how it is or how often is asked, so that neither yes nor no answers it.
    """

    trait: Trait
    value: Value | None = None
    is_open: bool = False
