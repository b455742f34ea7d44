"""A rally put right in the same breath: "we won that one no i mean they did".

What stands before the slip tells a rally, and what stands behind it tells whose it was or who
ended it, in nothing but such words: a question or a note can be neither half.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from bot.chat.message import Message, read_message
from bot.chat.rallies_said import brief_rally
from bot.chat.rally_clauses import LONGEST_TOLD, with_details
from bot.chat.rally_denied import belongs, rally_denied
from bot.chat.said import (
    Certainty,
    Mention,
    RallySaid,
    RemarkSaid,
    ScoreRemark,
    Understood,
)
from bot.chat.scores import score_message, stray_words
from bot.chat.slip_words import A_LET
from bot.chat.view import ChatView
from bot.chat.words import folded_line, words_in
from knowledge.regex import regex

_SLIP = (
    r"(?:no|nope|nah|naw|oops|whoops|wait|actually|sorry|wrong|correction|hang on|hold on|i meant?"
    r"|my bad|scratch that|strike that|make that|or rather|rather)"
)
_SLIPS = regex(rf"(?<= )(?:(?:but|ah|oh|um|uh) )*{_SLIP} (?:(?:{_SLIP}|ah|oh|um|uh|ok|that|and) )*")
_BEHIND = r"(?: (?:sorry|actually|then|i mean|instead|lol|my bad))*"
_OURS = regex(belongs(r"(?:us|ours|our (?:point|pt|rally))", "(?:we|i)") + _BEHIND)
_THEIRS = regex(belongs(r"(?:them|theirs|their (?:point|pt|rally))", "they") + _BEHIND)
_DID = regex(r"(?P<who>we|i|they) (?:just )?did" + _BEHIND)
"""They did what was told before: won it, or lost it."""
_DID_NOT = regex(r"(?:we|i|they) (?:didnt|did not)" + _BEHIND)
_LOST = regex(r"\b(?:lost|lose|dropped|blew)\b", re.IGNORECASE)
_IT_WAS = words_in("it was that its thats did who i mean sorry actually instead")

LONGEST_RETOLD = 2 * LONGEST_TOLD
"""Words of two rallies told with what happened in them."""

STRAY_WORDS = 2
"""Words of a half that tell nothing of whose rally it was: "ok fine, our point"."""


def rally_retold(message: Message, chat: ChatView) -> RallySaid | None:
    """The rally as it is told last; None where nothing is told twice."""
    if not chat.match_on or "?" in message.text or len(message.said) > LONGEST_RETOLD:
        return None
    for before, behind in halves(message):
        first = _told(message.text[:before], chat)
        found = None if first is None else _second(message, before, behind, first, chat)
        if first is not None and found is not None:
            found = replace(found, text=message.text, corrects=first.corrects)
            found = found if found.understood else with_details(found, message, chat)
            return replace(found, understood=len(message.said))  # no word is left that could ask
    return None


def let_told(message: Message, chat: ChatView) -> RemarkSaid | None:
    """A rally taken back in the same breath as one to be played again: nothing was won in it."""
    if not chat.match_on or "?" in message.text or len(message.said) > LONGEST_RETOLD:
        return None
    for before, behind in halves(message):
        line = folded_line([word for word in message.said if word.span[0] >= behind])
        if A_LET.fullmatch(line) and _told(message.text[:before], chat) is not None:
            return RemarkSaid(text=message.text, remark=ScoreRemark.LET)
    return None


def halves(message: Message) -> Iterator[tuple[int, int]]:
    """Where each slip begins in the text and where the words behind it do, the last one first."""
    line = "".join(f"{word.folded} " for word in message.said)
    for slip in reversed([*_SLIPS.finditer(line)]):
        start, stop = (line.count(" ", 0, at) for at in slip.span())
        if stop < len(message.said):
            yield message.said[start].span[0], message.said[stop].span[0]


def _told(text: str, chat: ChatView) -> RallySaid | None:
    """The rally that the words tell, and nothing else."""
    message = read_message(text, chat)
    if not message.said or message.asks:
        return None
    found = rally_retold(message, chat) or brief_rally(message, chat) or _whose(message)
    if not isinstance(found, RallySaid):
        return None
    return found if found.understood else with_details(found, message, chat)


def _whose(message: Message) -> Understood | None:
    """ "Our point", with hardly anything else."""
    said = message.told.of_score
    is_brief = stray_words(said) <= STRAY_WORDS and not message.note.claims
    return score_message(message.text, said) if is_brief else None


def _second(
    message: Message, before: int, behind: int, first: RallySaid, chat: ChatView
) -> RallySaid | None:
    """What the words behind the slip make of the first rally."""
    told = read_message(" " * behind + message.text[behind:], chat)
    line = " ".join(word.folded for word in told.told.words)
    named = [one for one in told.mentions if not one.pronoun]
    if len(named) == 1 and _only_names(told, named[0]):
        return _by_somebody_else(named[0], first, chat)
    if named:
        return _told(told.text, chat)
    did = _DID.fullmatch(line)
    if did is not None or _DID_NOT.fullmatch(line):
        return _did(message.text[:before], did and did["who"], first)
    for form, ours in ((_OURS, True), (_THEIRS, False)):
        if form.fullmatch(line):
            return RallySaid(text=message.text, won_by_us=ours)
    return rally_denied(told, chat) or _told(told.text, chat)


def _did(text: str, who: str | None, first: RallySaid) -> RallySaid | None:
    """Whose it is where `who` did what the text tells, and nobody named where it was not so.

    After "lost it, malin netted" both may be meant: the rally or the net.
    """
    is_error = first.details.ending is not None and first.details.ending.is_error
    if is_error and first.says_whose:
        return None
    if who is None:
        return RallySaid(text=text, won_by_us=not first.won_by_us)
    is_lost = is_error or _LOST.search(text) is not None
    return RallySaid(text=text, won_by_us=(who == "they") is is_lost)


def _only_names(message: Message, one: Mention) -> bool:
    """Whether nothing is said but the name: "lindqvist", "lindqvist did"."""
    rest = [word for word in message.said if not one.span[0] <= word.span[0] < one.span[1]]
    return {word.folded for word in rest} <= _IT_WAS and one.certainty is Certainty.SURE


def _by_somebody_else(one: Mention, first: RallySaid, chat: ChatView) -> RallySaid | None:
    """The rally with who ended it put right, where it ends so whose it was said to be."""
    ending, player = first.details.ending, one.players[0]
    if ending is None or player not in (*chat.ours, *chat.theirs):
        return None
    by_us = player in chat.ours
    won = by_us is not ending.is_error
    if won is not first.won_by_us and first.says_whose:
        return None
    details = replace(first.details, by=player, by_us=by_us)
    return replace(first, won_by_us=won, mentions=(one,), details=details)
