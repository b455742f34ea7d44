"""What the topic model sees of a message: features by key, each tied to the tokens it came from.

Six groups: words, characters, concepts (with who does what to whom, in order), form (how it
asks), the topic before, and the words of the part that asks.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations, pairwise

from bot.chat.asking_part import asking_part
from bot.chat.lexicon import ConceptHit, Lexicon
from bot.chat.utterance import Utterance
from bot.chat.wordforms import ROLE_OF, Word, spell_out, stem
from knowledge.dataclass import dataclass
from knowledge.reading.keys import Group, Place, character_keys, key_of
from knowledge.vocabulary import Topic

SHORT_MESSAGE_WORDS = 4  # no longer ones lean on the topic before them unless they say so
LONGEST_COUNTED_WORDS = 8
WORDS_A_STEP, STEPS = 6, 6  # message length in rough steps, so that ramblers look alike

_LEANING_STARTS = frozenset(
    [
        *("and", "or", "then", "so", "but", "also", "same", "ok", "even", "only", "another"),
        *("what about", "how about", "what if", "does that", "does it", "does this", "is that"),
        *("if it", "still", "would that", "is it"),
    ]
)
_FRAGMENT_STARTS = frozenset(
    ["in", "on", "at", "with", "from", "off", "against", "if", "when its", "n"]
)
"""How a message opens that has no question of its own: "in the wind?", "at 9-9?"."""

_KEPT_IN_ORDER = frozenset(
    [
        *("what", "where", "who", "which", "how", "when", "why", "whose", "whom"),
        *("should", "can", "not", "no", "if", "or", "keep", "keeps", "always", "and"),
    ]
)

_CONTINUING = _LEANING_STARTS | _FRAGMENT_STARTS

GROUP_LENGTHS = (1.14, 1.41, 1.0, 0.55, 1.14, 0.71)
"""How much words, characters, concepts, form, context and the asking part count (lengths of
vectors), chosen on the open voices, each scored by a model that had not read it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """A message as the model sees it; `unknown` is the share of words never met before.

    `goes_on`: it opens like a continuation of what was said before.
    """

    groups: tuple[Group, ...]
    words: int
    unknown: float
    goes_on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Spelled:
    """A message with slips mended and short forms spelled out.

    `asked` are the words [start, end) of the part that asks, `hits` the lexicon's findings among
    the words, `strange` how many words were never met before.
    """

    typed: tuple[str, ...]
    words: tuple[Word, ...]
    asked: tuple[int, int]
    hits: tuple[ConceptHit, ...]
    strange: int


def spelled(utterance: Utterance, lexicon: Lexicon, known: frozenset[str]) -> Spelled:
    """The message as both models of questions read it."""
    typed = utterance.words
    repaired = [word if word in known else lexicon.repair(word) for word in typed]
    words = spell_out(repaired, lexicon.shorthand, known)
    return Spelled(
        typed=typed,
        words=tuple(words),
        asked=_asked(words, utterance),
        hits=tuple(lexicon.find([word.text for word in words])),
        strange=sum(
            1 for word in repaired if not (word in known or word in lexicon.words or word[0] == "<")
        ),
    )


def extract(
    utterance: Utterance,
    lexicon: Lexicon,
    *,
    known: frozenset[str],
    context_topic: Topic | None,
) -> Seen:
    """The features of a message after the topic that was spoken of before it."""
    message = spelled(utterance, lexicon, known)
    words, asked, count = message.words, message.asked, len(message.typed)
    groups = (
        _word_group(words),
        _character_group(message.typed),
        _concept_group(words, message.hits, asked),
        _form_group(words, asked, count, utterance),
        _context_group(words, count, context_topic),
        _asking_group(words[asked[0] : asked[1]]),
    )
    return Seen(
        groups=groups,
        words=count,
        unknown=message.strange / count if count else 1.0,
        goes_on=bool(_opening([word.text for word in words]) & _CONTINUING),
    )


def _asked(words: Sequence[Word], utterance: Utterance) -> tuple[int, int]:
    """The words of the part that asks: in the last sentence with a question mark, if any."""
    asking = [sentence for sentence in utterance.sentences if sentence.asks]
    start, end = (asking[-1].start, asking[-1].end) if asking else (0, len(utterance.tokens))
    inside = [at for at, word in enumerate(words) if start <= word.token < end]
    if not inside:
        return 0, len(words)
    return asking_part([word.text for word in words], inside[0], inside[-1] + 1)


def _add(group: Group, name: str, start: int, end: int) -> None:
    group.setdefault(key_of(name), (start, end))


def _add_runs(group: Group, words: Sequence[Word], mark: str) -> list[str]:
    """Single words and neighbours, with the edges; gives back the stems."""
    stems = [stem(word.text) for word in words]
    for word, short in zip(words, stems, strict=True):
        _add(group, f"{mark}w:{short}", word.token, word.token + 1)
    places = [word.token for word in words]
    for at, (left, right) in enumerate(pairwise(["^", *stems, "$"])):
        first = places[max(0, at - 1)] if places else 0
        last = places[min(len(places) - 1, at)] + 1 if places else 0
        _add(group, f"{mark}b:{left} {right}", first, last)
    return stems


def _word_group(words: Sequence[Word]) -> Group:
    group: Group = {}
    stems = _add_runs(group, words, "")
    for at in range(len(stems) - 2):
        name = f"s:{stems[at]} {stems[at + 2]}"
        _add(group, name, words[at].token, words[at + 2].token + 1)
    return group


def _asking_group(words: Sequence[Word]) -> Group:
    group: Group = {}
    _add_runs(group, words, "q")
    return group


def _character_group(typed: Sequence[str]) -> Group:
    group: Group = {}
    for at, word in enumerate(typed):
        if word[0] != "<":
            for key in character_keys(word):
                group.setdefault(key, (at, at + 1))
    return group


def _concept_group(
    words: Sequence[Word], hits: Sequence[ConceptHit], asked: tuple[int, int]
) -> Group:
    group: Group = {}
    places = [(words[hit.start].token, words[hit.end - 1].token + 1) for hit in hits]
    for hit, place in zip(hits, places, strict=True):
        _add(group, "k:" + hit.concept, *place)
        if asked[0] <= hit.start < asked[1]:
            _add(group, "qk:" + hit.concept, *place)
    for one, other in combinations(range(len(hits)), 2):
        low, high = sorted((hits[one].concept, hits[other].concept))
        if low != high:
            _add(group, f"p:{low} {high}", places[one][0], places[other][1])
    if hits:
        _add(group, "f:" + hits[0].concept, *places[0])
        _add(group, "l:" + hits[-1].concept, *places[-1])
    _add_order(group, _in_order(words, hits))
    return group


def _in_order(words: Sequence[Word], hits: Iterable[ConceptHit]) -> list[tuple[str, Place]]:
    """Who does what to whom: concepts, roles and asking words in the order said."""
    starts = {hit.start: hit for hit in hits}
    found: list[tuple[str, Place]] = []
    covered = 0
    for at, word in enumerate(words):
        hit = starts.get(at)
        if hit is not None:
            covered = max(covered, hit.end)
            found.append((hit.concept.upper(), (word.token, words[hit.end - 1].token + 1)))
        elif at >= covered and (word.text in ROLE_OF or word.text in _KEPT_IN_ORDER):
            name = ROLE_OF[word.text].value if word.text in ROLE_OF else word.text
            found.append((name, (word.token, word.token + 1)))
    return found


def _add_order(group: Group, order: Sequence[tuple[str, Place]]) -> None:
    if not order:
        return
    edged = [("^", order[0][1]), *order, ("$", order[-1][1])]
    for (left, first), (right, last) in pairwise(edged):
        _add(group, f"r:{left} {right}", min(first[0], last[0]), max(first[1], last[1]))
    for (left, first), (right, last) in zip(order, order[2:], strict=False):
        _add(group, f"rs:{left} {right}", first[0], last[1])


def _form_group(
    words: Sequence[Word],
    asked: tuple[int, int],
    count: int,
    utterance: Utterance,
) -> Group:
    texts = [word.text for word in words]
    names = [
        f"n:{min(len(texts), LONGEST_COUNTED_WORDS)}",
        f"n2:{min(len(texts) // WORDS_A_STEP, STEPS)}",
        f"a:{any(sentence.asks for sentence in utterance.sentences)}",
        "o:" + " ".join(texts[:1]),
        "o2:" + " ".join(texts[:2]),
        "oq:" + " ".join(texts[asked[0] : asked[0] + 1]),
        "oq2:" + " ".join(texts[asked[0] : asked[0] + 2]),
        *(f"h:{text}" for text in sorted(set(texts)) if text.startswith("<")),
    ]
    group: Group = {}
    for name in names:
        _add(group, name, 0, count)
    return group


def _context_group(words: Sequence[Word], count: int, context_topic: Topic | None) -> Group:
    """The topic before, alone in its group so that it can outweigh a bare "and the other one?"."""
    group: Group = {}
    if context_topic is not None:
        how = "leans" if leans([word.text for word in words]) else "stands"
        _add(group, f"t:{how} {context_topic.value}", 0, count)
    return group


def leans(texts: Sequence[str]) -> bool:
    """Whether the message cannot stand alone: short, or opening like a continuation."""
    return len(texts) <= SHORT_MESSAGE_WORDS or bool(_opening(texts) & _LEANING_STARTS)


def _opening(texts: Sequence[str]) -> frozenset[str]:
    return frozenset((" ".join(texts[:1]), " ".join(texts[:2])))
