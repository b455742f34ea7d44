"""What the claim model sees of a clause of a note: its words, their letters, what the lexicon
found in them, and what the rules read from that."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, pairwise

from bot.chat.clauses import Clause
from bot.chat.features import Group, Place, Seen, character_keys, key_of
from bot.chat.note_claims import Judged
from bot.chat.note_hits import Hit, Hits
from bot.chat.note_pairs import NAME
from bot.chat.wordforms import stem


def see_clause(line: Sequence[str], hits: Hits, clause: Clause, judged: Sequence[Judged]) -> Seen:
    """The features of one clause; places count from the start of the note."""
    words = [(place, line[place]) for place in range(clause.start, clause.stop)]
    groups: tuple[Group, ...] = (
        _word_group(words),
        _character_group(words),
        _hit_group(hits),
        {},
        {},
        _rule_group(judged),
    )
    return Seen(groups=groups, words=len(words), unknown=0.0)


def _add(group: Group, name: str, place: Place) -> None:
    group.setdefault(key_of(name), place)


def _word_group(words: Sequence[tuple[int, str]]) -> Group:
    group: Group = {}
    stems = [(place, stem(word)) for place, word in words]
    for place, short in stems:
        _add(group, f"nw:{short}", (place, place + 1))
    for (first, left), (last, right) in pairwise(stems):
        _add(group, f"nb:{left} {right}", (first, last + 1))
    for (first, left), (last, right) in zip(stems, stems[2:], strict=False):
        _add(group, f"ns:{left} {right}", (first, last + 1))
    return group


def _character_group(words: Sequence[tuple[int, str]]) -> Group:
    group: Group = {}
    for place, word in words:
        if word != NAME:
            for key in character_keys(word):
                group.setdefault(key, (place, place + 1))
    return group


def _hit_group(hits: Hits) -> Group:
    """What each phrase of the lexicon means, and every two of them in order."""
    group: Group = {}
    found = sorted((*hits.traits, *hits.others), key=lambda hit: hit.start)
    for hit in found:
        _add(group, f"nh:{_meaning(hit)}", (hit.start, hit.stop))
    for one, other in combinations(found, 2):
        _add(group, f"np:{_meaning(one)} {_meaning(other)}", (one.start, other.stop))
    return group


def _meaning(hit: Hit) -> str:
    sense = hit.meaning
    said = [sense.trait, sense.value, sense.family, *sense.wings]
    return " ".join([sense.role.value, *(one.value for one in said if one is not None)])


def _rule_group(judged: Sequence[Judged]) -> Group:
    group: Group = {}
    for one in judged:
        denied = " denied" if one.denied else ""
        _add(group, f"nr:{one.trait.value} {one.value.value}{denied}", (one.start, one.stop))
    return group
