"""A rally told at length as acts in order: who did what to whom, in the words of the game."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import field, replace

from bot.chat.common_words import is_common
from bot.chat.rally_subjects import begins_anew
from bot.chat.rally_who import Who, WhoIsWho
from bot.chat.rally_words import filling_words, link_words, passive_words, rally_lexicon
from bot.chat.said import Certainty, Mention
from bot.chat.words import Word
from knowledge.dataclass import dataclass
from knowledge.vocabulary import Stroke, Wing

_MARKS = frozenset(",;.!?:()\n–—")
_JOINS = frozenset(["and", "then", "but", "so"])
_ARTICLES = frozenset(["the", "a", "an"])
_STRESSED = frozenset(
    ["just", "really", "totally", "completely", "absolutely", "all", "so", "again"]
)
_OUR_OWN = frozenset(["my", "our"])
_VERBS = frozenset(["burnt", "beat", "hit", "blew", "put", "drove", "sped"])
_ERROR_NOUNS = frozenset(["error", "errors", "err", "miss", "unforced"])
_CALLED = frozenset(["endings.forced", "endings.unforced", "endings.jammed"])
STROKE_AHEAD = 2
"""Words from whose it was to the stroke, the wing between them: "my backhand dink"."""
SHORTEST_NAME = 3
"""Letters of a name that the book does not know."""

_TAKEN = "\0"
"""Stands for a name, so that no form reaches across it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """One clause. `by` did it; `at` is whom it was played at; `victim` whose error it led to.

    `strokes` are those of `by`, in order; `endings`, `aims` are concepts of rally_words.toml.
    `is_verb`: a clause without a subject, "drove it into the net", which is the writer's own.
    """

    by: Who | None = None
    at: Who | None = None
    victim: Who | None = None
    strokes: tuple[Stroke, ...] = ()
    wing: Wing | None = None
    endings: frozenset[str] = frozenset()
    aims: frozenset[str] = frozenset()
    is_deep: bool | None = None
    forward: bool | None = None
    is_verb: bool = False

    @property
    def ours(self) -> bool | None:
        """Whether one of us did it; None where it is not said."""
        return None if self.by is None else self.by.ours


@dataclass(frozen=True, slots=True, kw_only=True)
class Acts:
    """`understood` counts the words that told something, `unknown` those we know nothing of."""

    acts: tuple[Act, ...]
    understood: int
    unknown: int


def read_acts(
    said: Sequence[Word],
    mentions: Sequence[Mention],
    who: WhoIsWho,
    *,
    won_by_us: bool | None = None,
) -> Acts:
    """The acts that the words tell, of a rally that we won, lost, or that they tell by itself."""
    acts: list[Act] = []
    understood = unknown = 0
    for clause in _clauses(said):
        reader = _Clause(said=clause, mentions=mentions, who=who, is_won=won_by_us is True)
        act = reader.read()
        understood += reader.understood
        unknown += reader.unknown
        if acts and act.wing is not None and act == Act(wing=act.wing):
            acts[-1] = replace(acts[-1], wing=acts[-1].wing or act.wing)
        elif act != Act():
            acts.append(act)
    return Acts(acts=tuple(acts), understood=understood, unknown=unknown)


def _clauses(said: Sequence[Word]) -> Iterator[list[Word]]:
    clause: list[Word] = []
    for at, word in enumerate(said):
        is_join = word.folded in _JOINS
        is_apart = is_join or bool(set(word.gap) & _MARKS) or " - " in word.gap
        if clause and (is_apart or begins_anew(clause, said[at:])):
            yield clause
            clause = []
        if not is_join:
            clause.append(word)
    if clause:
        yield clause


def _nobody(word: Word) -> Mention:
    return Mention(typed=word.typed, span=word.span, certainty=Certainty.NOBODY)


@dataclass(slots=True, kw_only=True)
class _Clause:
    """A clause as it is read, word by word."""

    said: Sequence[Word]
    mentions: Sequence[Mention]
    who: WhoIsWho
    is_won: bool = False
    act: Act = Act()
    owner: Who | None = None
    link: str = ""
    is_after_verb: bool = False
    understood: int = 0
    unknown: int = 0
    _found: dict[int, tuple[int, set[str]]] = field(default_factory=dict)

    def read(self) -> Act:
        named = self._named()
        line = [
            _TAKEN if at in named else rally_lexicon().repair(word.folded)
            for at, word in enumerate(self.said)
        ]
        for hit in rally_lexicon().find(line):
            self._found.setdefault(hit.start, (hit.end, set()))[1].add(hit.concept)
        at = 0
        while at < len(line):
            if at in self._found:
                end, concepts = self._found[at]
                if self._is_passive(at, line):
                    self._suffer(line[at])
                else:
                    self._hit(concepts, line[at:end], is_first=at == 0)
                at = end
            else:
                self._word(at, line[at], named)
                at += 1
        return self._forced()

    def _named(self) -> dict[int, Mention]:
        """The places of names, each with its mention; a name of two words counts once."""
        return {
            at: one
            for at, word in enumerate(self.said)
            for one in self.mentions
            if not one.pronoun and one.span[0] <= word.span[0] < one.span[1]
        }

    def _word(self, at: int, word: str, named: dict[int, Mention]) -> None:
        if at in named and self._is_the_t(at):
            self.act = replace(self.act, aims=self.act.aims | {"t"})
        elif at in named:
            if named.get(at - 1) is not named[at]:
                self._person(self.who.named(named[at]), at)
        else:
            self._plain(at, word)

    def _is_passive(self, at: int, line: Sequence[str]) -> bool:
        """ "Okafor got burned": somebody right before, to whom it was done."""
        done = passive_words("beaten") | passive_words("of_a_ball")
        before = [word for word in line[:at] if word not in _STRESSED]
        is_done = line[at] in done and before[-1:] and before[-1] in passive_words("beside")
        return bool(is_done) and self._is_somebody(before[-2:-1])

    def _is_somebody(self, word: Sequence[str]) -> bool:
        return word == [_TAKEN] or (bool(word) and self.who.pronoun(word[0]) is not None)

    def _suffer(self, word: str) -> None:
        """Whoever was beaten lost to a winner of the others; of a dumped one no rally is told."""
        someone = self.owner
        if word in passive_words("of_a_ball") or someone is None or someone.ours is None:
            self.unknown += 1
            return
        self.understood += 1
        endings = self.act.endings | {"winner"}
        self.act = replace(self.act, by=Who(ours=not someone.ours), at=someone, endings=endings)

    def _is_a_name(self, at: int, word: str) -> bool:
        """An odd word right before what somebody did: "zorblatt missed the return".

        Where it went is no deed, and who follows an article is a thing: "hit a belter cross".
        """
        if at and self.said[at - 1].folded in _ARTICLES:
            return False
        is_odd = not (word in filling_words() or is_common(word)) and word.isalpha()
        _, done = self._found.get(at + 1, (0, set[str]()))
        is_done = any(not one.startswith("skipped.") for one in done)
        return is_odd and is_done and len(word) >= SHORTEST_NAME

    def _is_the_t(self, at: int) -> bool:
        """ "Served t": the place on the court, and not one of us called by a letter."""
        return self.said[at].folded == "t" and self.act.strokes[-1:] == (Stroke.SERVE,)

    def _plain(self, at: int, word: str) -> None:
        someone = self.who.pronoun(word)
        if someone is not None:
            self._person(someone, at)
        elif word in link_words("at_whom") | link_words("of_whose") | link_words("of_whose_error"):
            self.link = word
        elif self._is_a_name(at, word):
            self._person(self.who.named(_nobody(self.said[at])), at)
        elif word not in _ARTICLES:
            self.link = ""
            known = word in filling_words() or is_common(word)
            self.unknown += not known

    def _owns_all(self, at: int) -> bool:
        """ "Lost on my drive, long": the first stroke told of is that one's."""
        told = self.act.strokes or self.act.endings or self.act.by
        return not told and self._is_of_stroke(at)

    def _is_of_stroke(self, at: int) -> bool:
        ahead = [found for start, found in self._found.items() if 0 < start - at <= STROKE_AHEAD]
        return any(one.startswith("nouns.") for _, concepts in ahead for one in concepts)

    def _owns_what_went_wrong(self, at: int) -> bool:
        """ "Popped up my reset": nobody types the "i"; where we won, they popped it up."""
        is_ours = self.said[at].folded in _OUR_OWN and not self.is_won
        is_wrong = bool(self.act.endings & {"error", "popup"}) and self.is_after_verb
        is_wrong &= self.act.by is None
        return is_ours and is_wrong and self._is_of_stroke(at)

    def _person(self, someone: Who, at: int) -> None:
        """Whose it was, whom it was played at, or whose error it led to."""
        act, link = self.act, self.link
        ends_in_error = bool(act.endings & {"error", "popup", "forced", "unforced", "jammed"})
        is_whose = (
            link in link_words("of_whose")
            or self._owns_all(at)
            or self._owns_what_went_wrong(at)
            or (ends_in_error and not act.by and link in link_words("of_whose_error"))
        )
        self.link, self.owner = "", someone
        if is_whose and act.by is None:
            self.act = replace(act, by=someone)
        elif is_whose or (self.is_after_verb and "jammed" in act.endings and not link):
            self.act = replace(act, victim=someone)
        elif link in link_words("at_whom") | link_words("of_whose_error") or self.is_after_verb:
            self.act = replace(act, at=act.at or someone)
        elif act.by is None:
            self.act = replace(act, by=someone)

    def _hit(self, concepts: set[str], form: Sequence[str], *, is_first: bool) -> None:
        if any(one.startswith("skipped.") for one in concepts):
            self.link = ""
            return
        self.understood += len(form)
        self.link = ""
        is_others = self.owner is not None and self.owner != self.act.by
        for concept in sorted(concepts):
            table, _, name = concept.partition(".")
            self._take(table, name, is_others=is_others)
        is_verb = form[0].endswith("ed") or form[0] in _VERBS
        is_verb &= form[-1] not in _ERROR_NOUNS
        is_verb |= any(one.startswith("verbs.") for one in concepts)
        if is_verb and is_first and not concepts & _CALLED:
            self.act = replace(self.act, is_verb=True)
        self.is_after_verb |= is_verb

    def _take(self, table: str, name: str, *, is_others: bool) -> None:
        act = self.act
        match table:
            case "nouns" | "verbs":
                if table == "verbs" or not is_others:
                    self.act = replace(act, strokes=(*act.strokes, Stroke(name)))
            case "endings":
                self.act = replace(act, endings=act.endings | {name})
            case "wings":
                self.act = replace(act, wing=Wing(name))
            case "aims":
                self.act = replace(act, aims=act.aims | {name})
            case "depth":
                self.act = replace(act, is_deep=name == "deep")
            case "forward":
                self.act = replace(act, forward=name == "yes")
            case "acts":
                if name == "poach" and act.by is None:
                    self.owner = None
                if name == "let":
                    self.act = replace(act, by=Who(ours=act.ours is False))

    def _forced(self) -> Act:
        """ "We forced hale to miss": the error is his; "hale jammed": his too."""
        act = self.act
        if act.endings & {"forced", "jammed"} and act.victim is None and act.at is not None:
            is_across = act.by is None or act.at.ours is not act.ours
            return replace(act, victim=act.at) if is_across and "error" in act.endings else act
        return act
