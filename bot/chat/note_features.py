"""What the claim model sees of a note that may be about a player: word by word, who is meant by it,
its letters, what the lexicon found there, and what the rules read from that."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence

from bot.chat.note_hits import Hit, Hits
from bot.chat.note_line import NoteLine
from bot.chat.said import Certainty, Claim, Mention
from bot.chat.trait_lexicon import NAME
from bot.chat.wordforms import stem
from bot.chat.words import Word
from knowledge.dataclass import dataclass
from knowledge.reading.keys import character_keys, key_of
from knowledge.vocabulary import PlayerId

FIRST_PERSON = frozenset(["i", "me", "my", "im", "ive", "mine", "myself"])

_PAUSES = frozenset(",;:/—–|")
_ENDS = frozenset(".!?()\n")


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenWord:
    """The keys of one word's features, by where they come from.

    `letters` is the word whose runs of letters count, empty where it is a name.
    """

    place: tuple[int, ...]
    words: tuple[int, ...]
    letters: str
    lexicon: tuple[int, ...]
    rules: tuple[int, ...]

    @property
    def keys(self) -> tuple[int, ...]:
        letters = character_keys(self.letters) if self.letters else ()
        return (*self.place, *self.words, *letters, *self.lexicon, *self.rules)


def players_meant(note: NoteLine) -> tuple[PlayerId, ...]:
    """Everybody of whom the note may claim something, in order; at the end whoever typed it."""
    sure = [one for one in note.whose if one.certainty is Certainty.SURE]
    players = [player for one in sure for player in one.players]
    if note.asker is not None and any(word.folded in FIRST_PERSON for word in note.said):
        players.append(note.asker)
    return tuple(dict.fromkeys(players))


def see_note(note: NoteLine, ruled: Sequence[Claim], player: PlayerId) -> tuple[SeenWord, ...]:
    """The note as the model sees it when asked about `player`; `ruled` is what the rules read."""
    lexicon = _by_place(note.hits)
    rules = _rules(note.said, ruled, player)
    return tuple(
        SeenWord(
            place=_keys(
                [*_whose(word, note, player), *_nearest(word, note, player), *_parted(word, at)]
            ),
            words=_keys(_spelled(word.folded, note.line[at])),
            letters="" if note.line[at] == NAME else word.folded,
            lexicon=_keys(lexicon.get(at, ())),
            rules=_keys(rules.get(at, ())),
        )
        for at, word in enumerate(note.said)
    )


def _keys(names: Sequence[str]) -> tuple[int, ...]:
    return tuple(key_of(name) for name in dict.fromkeys(names))


def _whose(word: Word, note: NoteLine, player: PlayerId) -> list[str]:
    """Whether the word names the player, stands for them, or does so for somebody else."""
    found = [_mark(one, player) for one in note.whose if one.span[0] <= word.span[0] < one.span[1]]
    if not found and player == note.asker and word.folded in FIRST_PERSON:
        return ["nm:asker"]
    return found


def _nearest(word: Word, note: NoteLine, player: PlayerId) -> list[str]:
    """Whether it was the player who was named last before the word, and who is named next."""
    names = [one for one in note.whose if not one.pronoun]
    last = max((one for one in names if one.span[1] <= word.span[0]), key=_begins, default=None)
    following = min((one for one in names if one.span[0] > word.span[0]), key=_begins, default=None)
    found = [
        f"no:{where} {_mark(one, player)}"
        for where, one in (("last", last), ("next", following))
        if one is not None
    ]
    is_one_of_many = len({one for each in names for one in each.players}) > 1
    return [*found, *(f"{one} of many" for one in found)] if is_one_of_many else found


def _begins(mention: Mention) -> int:
    return mention.span[0]


def _mark(mention: Mention, player: PlayerId) -> str:
    is_sure = mention.certainty is Certainty.SURE
    whose = "its" if is_sure and player in mention.players else "others"
    return f"nm:{whose} pronoun" if mention.pronoun else f"nm:{whose}"


def _parted(word: Word, at: int) -> list[str]:
    """What parts it from the word before."""
    marks = set(word.gap) if at else set()
    return ["ng:ends"] if marks & _ENDS else ["ng:pauses"] if marks & _PAUSES else []


def _spelled(folded: str, line: str) -> list[str]:
    return [] if line == NAME else [f"nw:{stem(line)}", f"nw:{stem(folded)}"]


def _by_place(hits: Hits) -> Mapping[int, list[str]]:
    found: dict[int, list[str]] = defaultdict(list)
    for hit in (*hits.traits, *hits.others):
        for at in range(hit.start, hit.stop):
            found[at].append(f"nh:{_meaning(hit)}")
    return found


def _meaning(hit: Hit) -> str:
    sense = hit.meaning
    said = [sense.trait, sense.value, sense.family, *sense.wings]
    return " ".join([sense.role.value, *(one.value for one in said if one is not None)])


def _rules(
    said: Sequence[Word], ruled: Sequence[Claim], player: PlayerId
) -> Mapping[int, list[str]]:
    found: dict[int, list[str]] = defaultdict(list)
    for claim in ruled:
        whose = "its" if claim.player == player else "others"
        names = [
            f"nt:{whose} {claim.trait.value}",
            f"nv:{whose} {claim.value.value}",
            f"nr:{whose} {claim.trait.value} {claim.value.value}",
            *([f"nd:{whose}"] if claim.denied else []),
        ]
        for at, word in enumerate(said):
            if claim.span[0] <= word.span[0] < claim.span[1]:
                found[at] += names
    return found
