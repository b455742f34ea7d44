"""What a note takes back in the same breath: "hale is a lefty no wait righty".

What stands before is read, and what stands behind: of what both speak of, the second counts. A
word that is no sentence stands in the place of the one of its kind: "off the backhand no sorry
forehand".
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import takewhile

from bot.chat.claim_model import SKILL
from bot.chat.clauses import clauses
from bot.chat.forms import word_set
from bot.chat.note_breach import BEFORE_A_WORD, OTHER, Breach, breach_of
from bot.chat.note_hits import JUDGEMENTS, Hit, Hits
from bot.chat.note_line import note_line
from bot.chat.note_negations import under_negation
from bot.chat.said import Claim, Mention, NoteSaid
from bot.chat.trait_lexicon import Role
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import PlayerId, Seen, Value

Reader = Callable[[Sequence[Word], Sequence[Mention], ChatView], NoteSaid]
"""How the words of a note are read."""

_ALL_OF_IT = frozenset(["scratch", "strike", "mean", "meant"])
"""What takes back all that was just told, whatever is told instead."""

_HANDS = frozenset(["left", "right", "lefty", "righty"])
_SIDES = frozenset(["left", "right"])
_HANDED = frozenset(["handed", "hander"])
_NO_SUCH_HAND = frozenset(["not", "isnt", "aint", "wasnt", "never"])
_A = frozenset(["a", "an", "the"])

_ONLY_DENIES = word_set("only_denies")
_DOES_NOT = word_set("denied_doing") | {"cant", "cannot", "dont", "couldnt", "rarely", "hardly"}
_IS_NOT = word_set("denied_being") | {"wasnt", "arent"}
_ALL_THE_MORE = word_set("all_the_more")
_MORE = frozenset(["more", "still", "always", "again", "constantly", "worse", "lots", "time"])
"""What "he's doing it even more now" has that says of what was told that it is done."""
_OF_IT = frozenset(["it", "them", "that", "those", "these"])

_UNTRUE = frozenset(["wrong", "true", "right", "so"])


def with_what_counts(
    said: Sequence[Word], mentions: Sequence[Mention], view: ChatView, read: Reader
) -> NoteSaid | None:
    """The note without what it takes back; None where it takes back nothing that is read."""
    breach = breach_of(said)
    if breach is None:
        return None
    instead = _word_for_word(breach, mentions, view)
    if instead is not None:
        return read(instead, mentions, view)
    first = read(breach.before, _within(mentions, breach.before), view)
    told = _within(mentions, breach.behind)
    last = _last_of(first)
    alone = view if told or last is None else replace(view, focus=(last,), noted=False)
    second = read(breach.behind, told, alone)
    if not second.claims and all(one.pronoun for one in told):
        second = replace(second, claims=_judged_again(first, breach, view))
    if breach.seen:
        return _as_seen(first, second)
    claims = _counting(first, second, breach, is_bare=not told)
    return None if claims is None else _joined(first, second, claims)


def _as_seen(first: NoteSaid, second: NoteSaid) -> NoteSaid | None:
    """What whoever writes saw, with what others told beside it; None where they agree."""
    if not any(_is_at_odds(one, new) for one in first.claims for new in _said_of(second)):
        return None
    stands = tuple(
        one for one in first.claims if not any(_is_at_odds(one, new) for new in _said_of(second))
    )
    told = _joined(first, second, (*stands, *second.claims))
    return told if stands else replace(told, seen=second.seen)


def _said_of(note: NoteSaid) -> tuple[Claim, ...]:
    return (*note.claims, *note.offered)


def _is_at_odds(one: Claim, other: Claim) -> bool:
    """Whether the one says of somebody's trait what the other does not."""
    same = one.player == other.player and one.trait is other.trait
    return same and (one.value, one.denied) != (other.value, other.denied)


def _within(mentions: Sequence[Mention], said: Sequence[Word]) -> tuple[Mention, ...]:
    start, stop = said[0].span[0], said[-1].span[1]
    return tuple(one for one in mentions if start <= one.span[0] < stop)


def _last_of(note: NoteSaid) -> PlayerId | None:
    """Whoever was told of last, if it is one."""
    players = {one.player for one in note.claims[-1:]} or {
        player for one in note.mentions[-1:] for player in one.players
    }
    return players.pop() if len(players) == 1 else None


def _word_for_word(
    breach: Breach, mentions: Sequence[Mention], view: ChatView
) -> Sequence[Word] | None:
    """The words with the one put right in the place of the wrong one."""
    first = next((at for at, word in enumerate(breach.behind) if not _leads(word)), None)
    if first is None:
        return None
    right = breach.behind[first]
    before = [word.folded for word in breach.before]
    if any(one.span[0] <= right.span[0] < one.span[1] for one in mentions):
        return None
    wrong = OTHER.get(right.folded)
    if wrong in before:
        at = len(before) - 1 - before[::-1].index(wrong)
        again = [word.folded for word in breach.behind[first + 1 :]]
        alike = 1 + _alike_behind(before[at + 1 :], again)
        return _put(breach, at, at + alike, first, first + alike)
    ahead = note_line(breach.behind[first:], (), view).hits
    behind = next(_alike(ahead, 0), None)
    judged, named = ahead.having(*JUDGEMENTS), ahead.having(Role.STROKE, Role.NOUN)
    if behind is None or (judged and named):
        return None
    told = note_line(breach.before, _within(mentions, breach.before), view).hits
    same = [hit for hit in _alike(told) if _is_kind(hit, behind)]
    if not same:
        return None
    return _put(breach, same[-1].start, same[-1].stop, first, first + behind.stop)


def _alike_behind(before: Sequence[str], behind: Sequence[str]) -> int:
    """How many words are told again behind the right one: "left handed, make that right handed"."""
    pairs = enumerate(zip(before, behind, strict=False), start=1)
    return max((n for n, _ in takewhile(lambda each: each[1][0] == each[1][1], pairs)), default=0)


def _leads(word: Word) -> bool:
    return word.folded in BEFORE_A_WORD


def _alike(hits: Hits, place: int | None = None) -> Iterator[Hit]:
    """What may stand for another of its kind, in order of place."""
    found = hits.having(Role.DIRECT, Role.STROKE, Role.NOUN, Role.WING, *JUDGEMENTS)
    return (hit for hit in found if place is None or hit.start == place)


def _is_kind(hit: Hit, other: Hit) -> bool:
    one, two = hit.meaning, other.meaning
    if one.role is Role.DIRECT or two.role is Role.DIRECT:
        return one.role is two.role and one.trait is two.trait and one.value is not two.value
    if one.role in JUDGEMENTS or two.role in JUDGEMENTS:
        return {one.role, two.role} == JUDGEMENTS
    return (one.role is Role.WING) is (two.role is Role.WING) and one != two


def _put(breach: Breach, start: int, stop: int, first: int, last: int) -> Sequence[Word]:
    """The words put right stand from the wrong ones' begin to their own end."""
    start = _denial_of_a_hand(breach.before, start, stop)
    begins = breach.before[start].span[0]
    right = [
        replace(word, span=(begins, word.span[1]), gap=breach.before[start].gap)
        if at == 0
        else word
        for at, word in enumerate(breach.behind[first:last])
    ]
    return [*breach.before[:start], *right, *breach.before[stop:], *breach.behind[last:]]


def _denial_of_a_hand(before: Sequence[Word], start: int, stop: int) -> int:
    """Where "not a lefty" begins: who is put right has the other hand, and does not lack it."""
    told = [word.folded for word in before]
    if told[start] not in _HANDS or (told[start] in _SIDES and not _HANDED & {*told[start:stop]}):
        return start
    at = start - 1
    while at >= 0 and told[at] in _A:
        at -= 1
    return at if at > 0 and told[at] in _NO_SUCH_HAND else start


def _counting(
    first: NoteSaid, second: NoteSaid, breach: Breach, *, is_bare: bool
) -> tuple[Claim, ...] | None:
    """The claims that count; None where nothing of the first is taken back."""
    last = _last_clause(breach.before)
    words = {word.folded for word in breach.behind}
    if not second.claims and words <= _ONLY_DENIES:
        return _denied(first, words, last)
    if not second.claims and words <= _ALL_THE_MORE and words & _MORE:
        return _done_after_all(first, last)
    gone = [one for one in first.claims if any(_is_contrary(one, new) for new in second.claims)]
    if second.claims and (is_bare or _ALL_OF_IT & breach.cue):
        whose = {one.player for one in second.claims}
        gone += [one for one in first.claims if one.span[0] >= last and one.player in whose]
    if not gone:
        return None
    kept = [one for one in first.claims if one not in gone]
    told = {(one.player, one.trait, one.value, one.denied) for one in second.claims}
    kept = [one for one in kept if (one.player, one.trait, one.value, one.denied) not in told]
    return (*kept, *second.claims)


def _denied(first: NoteSaid, words: set[str], last: int) -> tuple[Claim, ...] | None:
    """ "He can handle lobs, no he can't": what the last clause says is not so."""
    turned = [one for one in first.claims if one.span[0] >= last]
    does, been = bool(words & _DOES_NOT), bool(words & _IS_NOT)
    if not turned:
        return None
    kept = [one for one in first.claims if one not in turned]
    is_denied = any(one.denied for one in turned)
    if words & _UNTRUE or (is_denied and (does or been)):
        return tuple(kept)
    if not (does or been):
        return (*kept, *(_affirmed(one) for one in turned))
    return (*kept, *(_contrary(one, as_verb=does) for one in turned))


def _done_after_all(first: NoteSaid, last: int) -> tuple[Claim, ...] | None:
    """ "Has stopped poaching no wait he's going even more": what was denied of a habit is done."""
    turned = [one for one in first.claims if one.span[0] >= last and one.value is Value.RARELY]
    kept = (one for one in first.claims if one not in turned)
    return (*kept, *(_affirmed(one) for one in turned)) if turned else None


def _judged_again(first: NoteSaid, breach: Breach, view: ChatView) -> tuple[Claim, ...]:
    """ "Isn't that bad at lobs no wait he's great at them": the skill just told of, judged anew."""
    last = _last_clause(breach.before)
    hits = note_line(breach.behind, (), view).hits
    judged = hits.having(*JUDGEMENTS)
    names = hits.having(Role.DIRECT, Role.HABIT, Role.STROKE, Role.NOUN, Role.WING, Role.NOT)
    ahead = breach.behind[judged[-1].stop :] if judged else ()
    is_of_it = bool(_OF_IT & {word.folded for word in ahead[:2]})
    if len(judged) != 1 or names or not is_of_it:
        return ()
    value = Value.STRENGTH if judged[0].meaning.role is Role.GOOD else Value.WEAKNESS
    told = [one for one in first.claims if one.span[0] >= last and one.value in SKILL]
    return tuple(replace(one, value=value, denied=False) for one in told)


def _affirmed(claim: Claim) -> Claim:
    """ "Doesn't lob, no wait, he does", "isn't slow, no he is"."""
    rarely = claim.value is Value.RARELY
    return replace(claim, denied=False, value=Value.OFTEN if rarely else claim.value)


def _contrary(claim: Claim, *, as_verb: bool) -> Claim:
    value, denied = under_negation(claim.trait, claim.value, denied=True, is_verb=as_verb)
    return replace(claim, value=value, denied=denied)


def _is_contrary(one: Claim, other: Claim) -> bool:
    """Whether both say something of the same, and not the same."""
    same = one.player == other.player and one.trait is other.trait
    is_kind = (one.value in SKILL) is (other.value in SKILL)
    return same and is_kind and (one.value, one.denied) != (other.value, other.denied)


def _last_clause(said: Sequence[Word]) -> int:
    return said[clauses(said, ())[-1].start].span[0]


def _joined(first: NoteSaid, second: NoteSaid, claims: tuple[Claim, ...]) -> NoteSaid:
    named = [one for one in (*first.mentions, *second.mentions) if one.typed]
    told = {(one.player, one.trait) for one in claims}
    offered = (*first.offered, *second.offered)
    heard = Seen.HEARSAY in (first.seen, second.seen)
    return replace(
        first,
        mentions=tuple(dict.fromkeys(named)),
        claims=claims,
        kept=(*first.kept, *second.kept),
        seen=Seen.HEARSAY if heard else first.seen,
        about_body=first.about_body or second.about_body,
        offered=tuple(one for one in offered if (one.player, one.trait) not in told),
    )
