"""Whom a pronoun means: "they", "him", "my partner", by who was named and who is on court."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.note_ourselves import is_myself
from bot.chat.note_sides import is_told_to_do, shares_the_court, tells_a_fact
from bot.chat.said import Certainty, Mention
from bot.chat.told_by_looks import is_one_of_their
from bot.chat.view import ChatView
from bot.chat.words import Word, folded_line
from knowledge.regex import regex
from knowledge.vocabulary import PlayerId
from scouting_db.called_names import call_of_name
from scouting_db.sounds import fold

CALLS = dict.fromkeys(("he", "him", "his", "hes"), "he") | dict.fromkeys(
    ("she", "her", "hers", "shes"), "she"
)
_SINGULAR = frozenset(CALLS)
PLURAL = frozenset(["they", "them", "their", "theyre", "both", "em", "these", "those"])
_PARTNER = frozenset(["partner", "partners", "pard", "p", "pardner"])
_SPOUSES = dict.fromkeys(("husband", "husbands", "boyfriend"), "he") | dict.fromkeys(
    ("wife", "wifes", "girlfriend"), "she"
)
_PERSONS = (
    dict.fromkeys(("man", "mans", "guy", "guys", "dude", "gentleman", "fella", "bloke"), "he")
    | dict.fromkeys(("lady", "ladys", "woman", "womans", "girl", "girls", "gal"), "she")
    | _SPOUSES
)
_OTHER = frozenset(["other"])
_BEFORE_A_PERSON = frozenset(["the", "that"])


def pronoun(
    position: int, word: Word, said: Sequence[Word], before: Sequence[Mention], view: ChatView
) -> list[Mention]:
    """A mention for each player that the word stands for; none for any other word."""
    meant = _meant(position, word.folded, said, before, view)
    return [
        Mention(
            typed=word.typed,
            span=word.span,
            certainty=Certainty.SURE,
            players=(player,),
            pronoun=True,
        )
        for player in meant
    ]


def _meant(
    position: int, folded: str, said: Sequence[Word], before: Sequence[Mention], view: ChatView
) -> tuple[PlayerId, ...]:
    sure = [each for each in before if each.certainty is Certainty.SURE]
    named = [each.players[0] for each in sure if not each.pronoun] or [
        each.players[0] for each in sure
    ]
    is_of_a_pair = all(each.pronoun for each in before) and tells_of_two(said)
    focus = [each for each in view.focus if not (is_of_a_pair and each in view.ours)]
    last = (*named[::-1], *focus)
    may_be_mine = folded in _SINGULAR and not set(named) & set(view.theirs)
    if may_be_mine and (shares_the_court(said) or is_told_to_do(said)):
        return _beside(view.asker, view)
    if only_contrasts(said) and (other := _other_asked_of(folded, last, before, view)):
        return other
    if folded in _SINGULAR and not last and _tells_of_myself(said):
        return _beside(view.asker, view)
    if folded in _SINGULAR:
        unsure = any(each.certainty is not Certainty.SURE for each in before)
        return () if unsure and not named else _one_called(folded, last, before, view)
    if folded in PLURAL:
        return () if is_one_of_their(said, position) else _they(named, view)
    owner = said[position - 1].folded if position else ""
    if folded in _PARTNER or (folded in _SPOUSES and owner in _SINGULAR):
        return _partner(position, said, last, before, view)
    if folded in _PERSONS and is_person(said, position):
        if said[position - 1].folded in _OTHER and last and last[0] in view.theirs:
            return _beside(last[0], view)
        return _one_opponent(_PERSONS[folded], view, _called(before, view))
    return ()


_CONTRASTS = regex(
    r"(?:(?:ok|okay|and|so|but|then|n|what|how|about|bout|for|with|against|to|on|at|vs|same) )*"
    r"(?:him|her|he|she|(?:the |his |her |their )?other(?: one| guy| girl| lady| player)?)"
    r"(?: (?:then|too|instead|now))*"
)


_MOST_TO_CONTRAST = 12
"""Words that are looked at; this is asked of every word, and no such message is half as long."""


def only_contrasts(said: Sequence[Word]) -> bool:
    """ "And her?", "what about him", "and the other one": nothing but another person is named."""
    return len(said) <= _MOST_TO_CONTRAST and _CONTRASTS.fullmatch(folded_line(said)) is not None


def _other_asked_of(
    folded: str, last: Sequence[PlayerId], before: Sequence[Mention], view: ChatView
) -> tuple[PlayerId, ...]:
    """The other of the pair, right behind an answer about the one: the same is not asked twice.

    Not where only the one is called so: "and him?" behind the man of a mixed pair is that man.
    """
    if view.last_topic is None or view.noted or len(view.focus) != 1 or not last:
        return ()
    other = _beside(last[0], view) if last[0] in view.theirs else ()
    if folded in _OTHER or not other or folded not in _SINGULAR:
        return other if folded in _OTHER else ()
    called, call = _called(before, view), CALLS[folded]
    is_the_one = called.get(last[0]) == call and called.get(other[0], call) != call
    return () if is_the_one else other


def _tells_of_myself(said: Sequence[Word]) -> bool:
    """ "Im lefty shes righty": where nobody else was spoken of, she plays with me."""
    return any(is_myself(said, at) and tells_a_fact(said, at) for at in range(len(said)))


def tells_of_two(said: Sequence[Word]) -> bool:
    """ "He bangs and she blocks": two whom nobody named are a pair across the net, not of us."""
    return len({CALLS[word.folded] for word in said if word.folded in CALLS}) > 1


def is_partner_word(typed: str) -> bool:
    """Whether a mention's word means the other of somebody's pair: "partner", "husband"."""
    return fold(typed) in _PARTNER or fold(typed) in _SPOUSES


def is_person(said: Sequence[Word], position: int) -> bool:
    """Whether "the lady", "that tall guy" or "her husband" ends here; "the wife and I" are us."""
    ahead = [word.folded for word in said[position + 1 : position + 3]]
    before = [word.folded for word in said[max(0, position - 2) : position]]
    if is_partner_word(said[position].folded) and set(before[-1:]) & _SINGULAR:
        return True
    is_of_us = len(ahead) == 2 and ahead[0] in {"and", "n"} and ahead[1] in {"i", "me"}
    is_pointed_at = bool(_BEFORE_A_PERSON & set(before)) and not is_of_us
    return said[position].folded in _PERSONS and is_pointed_at


def is_nobody_else(mention: Mention, view: ChatView) -> bool:
    """Whether that word can mean only this one of their pair: a "he", or "the lady" of a mixed; so
    does "the other lady", behind the one."""
    call = (CALLS | _PERSONS).get(fold(mention.typed))
    if not mention.pronoun or call is None:
        return False
    is_other = len(view.focus) == 1 and mention.players == _beside(view.focus[0], view)
    if is_other and set(mention.players) <= set(view.theirs):
        return True
    return _one_opponent(call, view, _called((), view)) == mention.players


def _one_called(
    folded: str, last: Sequence[PlayerId], before: Sequence[Mention], view: ChatView
) -> tuple[PlayerId, ...]:
    """The last one spoken of who was never called the other: who was he is not she.

    Where all of them were, the other of that pair, or the one opponent who fits. Whoever was not
    spoken of yet is called as most people of that first name are, unless that leaves nobody.
    """
    said = dict(view.called) | calls_in(before)
    return (
        _fitting(CALLS[folded], last, view, _called(before, view))
        or _fitting(CALLS[folded], last, view, said)
        or tuple(last[:1])
    )


def _fitting(
    call: str, last: Sequence[PlayerId], view: ChatView, called: Mapping[PlayerId, str]
) -> tuple[PlayerId, ...]:
    fitting = [one for one in last if called.get(one, call) == call]
    if fitting:
        return (fitting[0],)
    beside = _beside(last[0], view) if last else ()
    other = tuple(one for one in beside if called.get(one, call) == call and one != view.asker)
    return other or _one_opponent(call, view, called)


def _one_opponent(
    call: str, view: ChatView, called: Mapping[PlayerId, str]
) -> tuple[PlayerId, ...]:
    """The one of them who is called so, or else the one who is not called otherwise."""
    theirs = [one for one in view.theirs if called.get(one) == call]
    theirs = theirs or [one for one in view.theirs if called.get(one, call) == call]
    return tuple(theirs) if len(theirs) == 1 else ()


def _called(before: Sequence[Mention], view: ChatView) -> dict[PlayerId, str]:
    """What everybody near is called: as was said, or as most people of that first name are."""
    near = {*view.theirs, *view.ours, *view.focus}
    calls = {row.player: call_of_name(row.name) for row in view.roster if row.player in near}
    guessed: dict[PlayerId, str] = {
        player: call for player, call in calls.items() if call is not None
    }
    return guessed | dict(view.called) | calls_in(before)


def calls_in(mentions: Sequence[Mention]) -> dict[PlayerId, str]:
    """Whom the pronouns of a message call he, and whom she."""
    return {
        one.players[0]: CALLS[fold(one.typed)]
        for one in mentions
        if one.pronoun and fold(one.typed) in CALLS
    }


def _they(named: Sequence[PlayerId], view: ChatView) -> tuple[PlayerId, ...]:
    """All who were named or spoken of; the one of us who was is nobody's "they"."""
    if named:
        return tuple(dict.fromkeys(named))
    if len(view.focus) > 1:
        return view.focus
    return view.theirs or tuple(player for player in view.focus if player not in view.ours)


def _partner(
    position: int,
    said: Sequence[Word],
    last: Sequence[PlayerId],
    before: Sequence[Mention],
    view: ChatView,
) -> tuple[PlayerId, ...]:
    """`my partner` is the other of us; `his partner`, `Hale's partner` the other of that pair."""
    word = said[position - 1] if position else None
    follows_name = bool(word and before and before[-1].span[1] == word.span[1])
    theirs = word is not None and (follows_name or word.folded in _SINGULAR | {"the"})
    return _beside(last[0] if theirs and last else view.asker, view)


def _beside(subject: PlayerId | None, view: ChatView) -> tuple[PlayerId, ...]:
    """The other of the pair that the player is of."""
    pair = next((each for each in (view.theirs, view.ours) if subject in each), ())
    return tuple(each for each in pair if each != subject)
