"""What of a message tells about somebody: statements, and the parts of it that do not ask."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from bot.chat.asking import asks
from bot.chat.clauses import NOT_TO_DO
from bot.chat.forms import any_of, word_set
from bot.chat.how_known import words_of_seeing, words_of_thought
from bot.chat.pronouns import PLURAL
from bot.chat.said import Certainty, Claim, Mention, NoteSaid
from bot.chat.unknown_names import begins_a_clause, has_predicate
from bot.chat.words import Word, words_in
from knowledge.dataclass import dataclass
from knowledge.vocabulary import PlayerId, Trait

_PART_MARKS = frozenset(",.;!?\n")
_TAGS = word_set("tags")
"""Words of a part that only asks whether what stands before is so; it goes with that."""

LONGEST_TELLING = 12
"""Words of a part that is plainly a note; a longer one sets the scene of its question."""

_OPENINGS = frozenset(["and", "but", "so", "ok", "okay", "note", "also"])
_CAUSES = words_in("because cause cuz coz cos bc since")
_LEADS = _OPENINGS | _CAUSES
_NO_REASON = words_in("is it its that thats this just only or not mostly probably maybe")
"""Before a "because" they ask whether it is the reason, and tell nothing: "is it because hes tall".
"""

_SUPPOSES = words_in("if when whenever once unless imagine suppose say")
_FEWEST_WORDS_KEPT = 3
"""Words of what I think of somebody, with whom: "i think he does" tells nothing."""
_JOINING = frozenset(["and", "n", "plus", "both", "s"])
_SUBJECTS = frozenset(["he", "she", "hes", "shes"])
_OWNERS = frozenset(["his", "her"])
_SKILLS = word_set("owned_skills")
_OF_A_STROKE = _SKILLS | {
    "speed",
    "up",
    "ups",
    "speedup",
    "speedups",
    "hand",
    "shot",
    "game",
    "roll",
}
_WORDS_OF_A_STROKE = 4
_RANKED = words_in("weak weaker weakest strong stronger strongest better best worse worst")
_RANKS = words_in("one player link half of side guy girl woman man lady partner")
_TOLD_OF_US = frozenset([Trait.HAND, Trait.TWO_HANDED_BACKHAND])
"""What is noted of ourselves too beside a question: it never changes."""

_IS = words_in("is isnt has hasnt")
"""Behind a name they tell what somebody is, and at all times."""

_AIMS = frozenset(
    ["attack", "target", "avoid", "exploit", "pound", "pick", "test", "punish", "respect", "feed"]
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A sentence or clause: words `start` up to `stop`, and whether it asks.

    `runs_on`: no mark parts it from the question after it.
    """

    start: int
    stop: int
    asks: bool
    runs_on: bool = False

    def span(self, said: Sequence[Word]) -> tuple[int, int]:
        return said[self.start].span[0], said[self.stop - 1].span[1]


def tells_of(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether one of these is said to be or do something, or is to be attacked: a statement."""
    places = [_places(one, said) for one in mentions]
    named = {at for span in places for at in span}
    return any(_is_subject(said, span, named) or _is_target(said, span) for span in places if span)


def ranks_somebody(said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """ "Sunnivas the weak one maybe": whatever hedges it, it opens with somebody and ranks them."""
    places = [_places(one, said) for one in mentions if not one.pronoun]
    return any(_is_ranked(said, span.stop) and span.start == 0 for span in places if span)


def tells_of_focus(said: Sequence[Word]) -> bool:
    """Whether "he" or "her backhand" opens the message as the subject of a statement."""
    first = said[0].folded if said else ""
    if first in _OWNERS:
        return len(said) > 1 and said[1].folded in _SKILLS
    return first in {"hes", "shes"} or (first in _SUBJECTS and has_predicate(said, 1))


def telling_note(
    text: str, said: Sequence[Word], note: NoteSaid, ours: Sequence[PlayerId]
) -> NoteSaid | None:
    """What a message plainly notes beside its question, of us hardly anything; None without it."""
    parts = _parts(text, said, note.mentions)
    telling = [part for part in parts if _tells(part, said, note.mentions)]
    if not any(part.asks for part in parts):
        return None
    spans = [part.span(said) for part in telling]
    vague = [part.span(said) for part in telling if part.runs_on and not _names(part, said, note)]
    claims = tuple(
        one
        for one in note.claims
        if (one.player not in ours or one.trait in _TOLD_OF_US)
        and _is_inside(one, spans)
        and (one.trait is Trait.HAND or not _is_inside(one, vague))
    )
    kept = tuple(words for words in note.kept if any(words in text[a:b] for a, b in spans))
    if claims:
        return replace(note, claims=claims, kept=kept)
    thought = [part for part in telling if _is_thought_of_them(part, said, note.mentions, ours)]
    words = tuple(text[slice(*part.span(said))] for part in thought)
    return replace(note, claims=(), offered=(), kept=words) if words else None


def told_beside(
    text: str, said: Sequence[Word], note: NoteSaid, ours: Sequence[PlayerId]
) -> tuple[tuple[int, int], ...]:
    """Where the parts stand that say beside a question what an opponent, by name, is.

    What one does just now only sets the scene: "hale serves and hesitates, where do i return".
    """
    parts = _parts(text, said, note.mentions)
    if not any(part.asks for part in parts):
        return ()
    theirs = [one for one in note.mentions if not set(one.players) & set(ours)]
    named = replace(note, mentions=tuple(theirs))
    telling = [part for part in parts if _tells(part, said, theirs) and _names(part, said, named)]
    return tuple(part.span(said) for part in telling if _says_what_is(part, said, theirs))


def _says_what_is(part: Part, said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    opens = _subject_at(said, part.start)
    stops = [places.stop for one in mentions if opens in (places := _places(one, said))]
    return any(word.folded in _IS for stop in stops for word in said[stop : stop + 1])


def _is_inside(claim: Claim, spans: Sequence[tuple[int, int]]) -> bool:
    return any(start <= claim.span[0] and claim.span[1] <= stop for start, stop in spans)


def _names(part: Part, said: Sequence[Word], note: NoteSaid) -> bool:
    """Whether a name opens the part; of "they returned it short do i rip it" nothing is kept."""
    opens = _told_at(said, part.start)
    return any(not one.pronoun and opens in _places(one, said) for one in note.mentions)


def _subject_at(said: Sequence[Word], start: int) -> int:
    """Where the subject of a statement stands that begins here: behind "and", and "i think"."""
    at = start + (said[start].folded in _LEADS)
    return at + words_of_thought(said, at)


def _told_at(said: Sequence[Word], start: int) -> int:
    """The same where a part begins, which no question runs into: behind "we found out that" too."""
    at = start + (said[start].folded in _LEADS)
    seen = words_of_seeing(said, at)
    return at + seen if seen else _subject_at(said, start)


def _is_thought_of_them(
    part: Part, said: Sequence[Word], mentions: Sequence[Mention], ours: Sequence[PlayerId]
) -> bool:
    """ "I think he stands too far back": words to keep, though no trait is read in them."""
    lead = part.start + (said[part.start].folded in _LEADS)
    subject = _subject_at(said, part.start)
    is_told = subject > lead and part.stop - subject >= _FEWEST_WORDS_KEPT
    return (
        is_told
        and said[subject].folded not in PLURAL
        and any(
            one.certainty is Certainty.SURE
            and not set(one.players) & set(ours)
            and subject in _places(one, said)[:1]
            for one in mentions
        )
    )


def _places(mention: Mention, said: Sequence[Word]) -> range:
    start, stop = mention.span
    inside = [at for at, word in enumerate(said) if start <= word.span[0] < stop]
    return range(inside[0], inside[-1] + 1) if inside else range(0)


def _is_subject(said: Sequence[Word], span: range, named: set[int]) -> bool:
    after = span.stop
    while after < len(said) and (after in named or said[after].folded in _JOINING):
        after += 1
    if after < len(said) and "(" in said[after].gap:
        return begins_a_clause(said, span.start)
    is_told = has_predicate(said, after) or has_predicate(said, _past_a_skill(said, after))
    is_told = is_told or _is_ranked(said, span.stop)
    return begins_a_clause(said, span.start) and is_told


def _is_ranked(said: Sequence[Word], after: int) -> bool:
    """ "Sunnivas the weak one": the s is short for "is", and nothing like it asks."""
    line = [word.folded for word in said[after : after + 3]]
    owner = said[after - 1]
    is_short = owner.is_possessive or owner.folded.endswith("s")
    return is_short and line[:1] == ["the"] and line[1:2] != [] and _ranks(*line[1:])


def _ranks(how: str, what: str = "") -> bool:
    return how in _RANKED and what in _RANKS


def _past_a_skill(said: Sequence[Word], at: int) -> int:
    """Where "okafors forehand speed up goes" goes on behind the stroke that is his."""
    stop = at
    while stop < min(len(said), at + _WORDS_OF_A_STROKE) and said[stop].folded in _OF_A_STROKE:
        stop += 1
    return stop


def _is_target(said: Sequence[Word], span: range) -> bool:
    """`attack Hale's backhand`, `don't dink okafors backhand`: what we should do about it."""
    ahead = said[span.stop].folded if span.stop < len(said) else ""
    owned = ahead in _SKILLS and said[span.stop - 1].folded.endswith("s")
    owned = owned or (ahead in _SKILLS and said[span.stop - 1].is_possessive)
    first = [word.folded for word in said[: span.start]]
    dont = first[:1] in (["dont"], ["never"]) and first[1:2] and first[1] in NOT_TO_DO
    return owned and (dont or first[:1] in [[one] for one in _AIMS])


def _parts(text: str, said: Sequence[Word], mentions: Sequence[Mention]) -> list[Part]:
    """The sentences and clauses; one that only asks whether it is so goes with the one before."""
    marks = {at for at, word in enumerate(said) if at and set(word.gap) & _PART_MARKS}
    cuts = sorted(marks | _asking_places(said) | _telling_places(said, mentions))
    edges = [0, *cuts, len(said)]
    parts: list[Part] = []
    for start, stop in pairwise(edges):
        end = said[stop].span[0] if stop < len(said) else len(text)
        asking = asks(text[said[start].span[0] : end], said[start:stop])
        if parts and asking and {word.folded for word in said[start:stop]} <= _TAGS:
            last = parts.pop()
            start = last.start
        runs_on = stop < len(said) and stop not in marks
        parts.append(Part(start=start, stop=stop, asks=asking, runs_on=runs_on))
    return parts


def _asking_places(said: Sequence[Word]) -> set[int]:
    """Where a question begins without a mark: "okafor is a lefty where do i dink him"."""
    line, starts = "", dict[int, int]()
    for at, word in enumerate(said):
        starts[len(line)] = at
        line += f"{word.folded} "
    found = {starts[one.start()] for one in any_of("asking_opens").finditer(line)}
    return {at - (said[at - 1].folded in _OPENINGS) for at in found if at > 1}


def _telling_places(said: Sequence[Word], mentions: Sequence[Mention]) -> set[int]:
    """Where a statement begins behind a question without a mark: "where do i serve lindqvist and i
    think his return floats". What is only supposed tells nothing, and nor does a reason asked for.
    """
    subjects = {places.start for one in mentions if (places := _places(one, said))}
    found: set[int] = set()
    for at in range(2, len(said)):
        before = [word.folded for word in said[:at]]
        subject = _subject_at(said, at)
        if subject not in subjects or before[-1] in _LEADS | _SUPPOSES:
            continue
        is_reason = said[at].folded in _CAUSES and before[-1] not in _NO_REASON
        is_thought = subject > at + (said[at].folded in _LEADS)
        if is_thought or (is_reason and "why" not in before and not _SUPPOSES & set(before)):
            found.add(at)
    return found


def _tells(part: Part, said: Sequence[Word], mentions: Sequence[Mention]) -> bool:
    """Whether a part opens with somebody and says a short thing of them: "hale poaches a lot"."""
    words = [word.folded for word in said[part.start : part.stop]]
    opens = _told_at(said, part.start)
    about = any(opens in _places(one, said)[:1] for one in mentions)
    return about and not part.asks and len(words) <= LONGEST_TELLING and "or" not in words
