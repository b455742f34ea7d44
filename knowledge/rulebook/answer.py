"""The reply to a rules question: the rule without or with a referee, and what to do now."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from knowledge.advice import Advice, Choice, MatchFact
from knowledge.game import Scoring
from knowledge.regex import regex
from knowledge.rulebook.bad_calls import BAD_CALL
from knowledge.rulebook.broken_paddle import as_broken_paddle
from knowledge.rulebook.entry import Rule, Ruling, rule_named
from knowledge.rulebook.finding import Found, find_rule
from knowledge.rulebook.hurt_awaited import as_awaited
from knowledge.rulebook.in_format import in_format
from knowledge.rulebook.our_pause import as_our_pause
from knowledge.rulebook.partners_differ import PARTNERS_DISAGREE, partners_differ
from knowledge.rulebook.ruled_already import as_ruled_already
from knowledge.rulebook.their_call import as_their_call, called_in_by_them
from knowledge.rulebook.theirs_to_call import as_theirs
from knowledge.rulebook.volleyed_too_soon import as_whose_volley
from knowledge.rulebook.whose_point import with_point
from knowledge.situation import Asked, Situation
from knowledge.sources import SourceKind
from knowledge.vocabulary import Topic

UNKNOWN_RULE = "Ask the referee or the desk before the next serve."

DONT_HAVE = "I don't have that rule; the event's rules decide."

NOT_SURE = "I'm not sure which rule you mean."

WHICH_RULE = "Which rule do you mean?"
"""To a bare word that several speak of: "replay"."""

STEM = 4
"""Letters that "hindrance" shares with the rule of a hinder."""

SAY_MORE = "Or say in a few words what happened."

NO_REF_ASSUMED = "No ref assumed. {edition}; event rules first."
NO_REF_SAID = "No ref. {edition}; the event's rules first."
REF_SAID = "With a ref, who decides. {edition}."
SAME_EITHER_WAY = "{edition}; event rules and the ref come first."

EDITION = "2025"
AS_CITED = "As cited"
"""Where a reason was read in another edition: it names its own, and none is claimed for all."""

TAKEN_AS = "Not meant? I took it as: {name}."

_NO_REF = regex(
    r"\b(?:no|without|w/o|wo|isnt|isn't|not|havent|haven't)\b(?:\s+(?:a|an|any|the|have|got))*"
    r"\s+(?:ref|refs|referee|referees|umpire|official|officiated)\b|\bunofficiated\b"
    r"|\bref\w*\s+(?:wont|won't|isnt|isn't|not|is\s+not|never)\s+(?:be\s+)?"
    r"(?:there|here|around|about|coming|on\s+our\s+court|showing|showed|turned)\b"
    r"|\bself[- ]?officiated\b",
    re.IGNORECASE,
)
_OR_REF = regex(
    r"\bor\b(?:\s+(?:only|just|is|it|does|do|the|a))*\s+(?:ref|referee|umpire)\b"
    r"|\b(?:ref|referee|umpire)\b[\w\s]{0,30}\bor\s+(?:we|us|me|do|the|players?)\b",
    re.IGNORECASE,
)
_REF = regex(
    r"\b(?:ref|refs|reffed|referee|refereed|umpire|officiated|"
    r"(?<!no )(?<!get )(?<!get a )(?<!for a )(?<!have a )line ?judges?)\b",
    re.IGNORECASE,
)
"""Line judges come with a referee, who hears what is appealed; who asks for one has none."""


def advise(situation: Situation) -> Advice:
    """The rule that the words ask for, or whom to ask."""
    asked = situation.asked
    ours = [part for one in situation.ours for part in one.name.split()]
    found = _found(asked, ours=ours)
    if found.rule is None:
        return Advice(
            topic=Topic.RULES_QUESTION,
            call=UNKNOWN_RULE,
            unless=SAY_MORE,
            assumed=DONT_HAVE if found.has_none else NOT_SURE,
            choices=tuple(_meant(rule) for rule in found.others),
        )
    if asked.rule is None and found.others and not _is_named(found.rule, asked.words):
        return Advice(
            topic=Topic.RULES_QUESTION,
            call=WHICH_RULE,
            unless=SAY_MORE,
            assumed=SAME_EITHER_WAY.format(edition=f"{EDITION} edition"),
            choices=tuple(map(_meant, (found.rule, *found.others))),
        )
    format = situation.format if situation.match is None else situation.match.format
    rule = as_theirs(in_format(found.rule, format, situation.match), asked.words, ours)
    rule = as_awaited(rule, asked.words, asked.before, ours)
    theirs = [part for one in situation.theirs for part in one.name.split()]
    rule = as_whose_volley(rule, asked.words, ours=ours, theirs=theirs)
    rule = as_ruled_already(rule, asked.words)
    rule = as_our_pause(as_their_call(rule, asked.words, asked.before, ours), asked.words)
    rule = as_broken_paddle(rule, asked.words)
    rally = format is not None and format.scoring is Scoring.RALLY
    rule = replace(rule, ruling=with_point(rule.ruling, asked.words, rally_scoring=rally))
    return _advice(rule, found.others, is_officiated(asked))


def _is_named(rule: Rule, words: str) -> bool:
    """Whether more than a bare word is said, or one that is nearly the rule's name."""
    word = words.strip(" ?!.").lower()
    named = any(each[:STEM] == word[:STEM] for each in rule.name.lower().split())
    return named or len(word.split()) != 1


def _found(asked: Asked, *, ours: Sequence[str]) -> Found:
    tapped = None if asked.rule is None else rule_named(asked.rule)
    if tapped is None and called_in_by_them(asked.words, ours):
        tapped = rule_named(BAD_CALL)
    if tapped is None and partners_differ(asked.words, ours):
        tapped = rule_named(PARTNERS_DISAGREE)
    return find_rule(asked.words, before=asked.before) if tapped is None else Found(rule=tapped)


def _advice(rule: Rule, others: tuple[Rule, ...], officiated: bool | None) -> Advice:
    ruling = rule.officiated if officiated and rule.officiated else rule.ruling
    branch = () if rule.officiated is None else (_branch(not officiated),)
    unsure = TAKEN_AS.format(name=rule.name) if others else None
    return Advice(
        topic=Topic.RULES_QUESTION,
        call=ruling.call,
        reasons=ruling.reasons,
        now=ruling.now,
        unless=unsure or rule.unless,
        assumed=_assumed(rule, officiated).format(edition=_edition(ruling)),
        caution=rule.caution,
        choices=(*map(_meant, others), *branch),
    )


def _assumed(rule: Rule, officiated: bool | None) -> str:
    if rule.officiated is None:
        return SAME_EITHER_WAY
    if officiated is None:
        return NO_REF_ASSUMED
    return REF_SAID if officiated else NO_REF_SAID


def _edition(ruling: Ruling) -> str:
    read_in = [one.source for one in ruling.reasons if one.source.kind is SourceKind.RULEBOOK]
    is_of_one = all(source.citation.startswith(EDITION) for source in read_in)
    return f"{EDITION} edition" if is_of_one else AS_CITED


def is_officiated(asked: Asked) -> bool | None:
    """Whether there is a referee: as tapped, else as the words say; None if they don't."""
    if asked.officiated is not None:
        return asked.officiated
    said = f"{asked.before} {asked.words}"
    if _NO_REF.search(said):
        return False
    if _OR_REF.search(said):
        return None
    return True if _REF.search(said) else None


def _branch(officiated: bool) -> Choice:
    return Choice(
        label="with a referee" if officiated else "no referee",
        topic=Topic.RULES_QUESTION,
        fact=MatchFact.OFFICIATED.value,
        value="yes" if officiated else "no",
    )


def _meant(rule: Rule) -> Choice:
    return Choice(
        label=rule.name,
        topic=Topic.RULES_QUESTION,
        fact=MatchFact.RULE.value,
        value=rule.name,
    )
