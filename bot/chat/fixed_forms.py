"""What has a form of its own: undo, formats, results, announcements, scores, corrections."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.agreements_said import agreement_said, middle_shared_out
from bot.chat.book_said import book_said
from bot.chat.corrections_said import correction_said, undo_said
from bot.chat.formats_told import asked_of_another_format, format_told
from bot.chat.game_target_said import game_target_asked, game_target_said
from bot.chat.match_announced import match_announced
from bot.chat.message import (
    Message,
    names_somebody,
)
from bot.chat.note_or_question import begins_as_note
from bot.chat.pairs_said import pair_said
from bot.chat.results_doubted import is_lead
from bot.chat.results_ended import ended_by_side
from bot.chat.results_said import result_said
from bot.chat.runs_said import after_lost_run, scored_beside
from bot.chat.said import (
    CorrectionSaid,
    RallySaid,
    ResultSaid,
    TimeoutsAsked,
    Understood,
)
from bot.chat.score_groups import score_group
from bot.chat.score_words import OUR_RALLY, THEIR_RALLY
from bot.chat.scores import (
    is_all_score,
    rally_beside_call,
    score_message,
    stray_words,
    tells_rally_apart,
    with_point_served,
)
from bot.chat.serving_said import server_named
from bot.chat.side_outs_said import with_lost_rally, with_side_out
from bot.chat.slip_words import starts_corrected
from bot.chat.starts_said import starter_said
from bot.chat.timeouts_said import timeout_said, timeouts_asked
from bot.chat.told_before import result_put_right
from bot.chat.view import ChatView
from bot.chat.won_what import won_what
from knowledge.regex import regex

_OF_A_SLIP = frozenset(["nah", "nope", "wait", "sorry", "make", "mean"])
_PUT_RIGHT = regex(r"\d\s*\?+\s*(?:no|nah|nope|wait|sorry|its|it's|make it|i mean)\b[^?]*\d[^?]*$")
"""`4-0-2? no 3-0-2`: the doubt is settled in the same breath."""


_NUMBERS_OF_A_CALL = 3
_WELL = regex(
    r"(?:(?:ok|okay|yeah|yes|no|so|all good|and|but) )*"
    r"(?:(?:we|he|she|i|they|all|everybody|everyone|hes|shes|were|im|its|it)(?: (?:is|are|re|am))?"
    r"(?: (?:all|just|still|really))* (?:fine|ok|okay|good|alright|better|well|great)\b"
    r"(?: (?:now|again|to play|to go|and|so))*(?: |$))?"
    r"(?:(?:he|she|i|we) can (?:stand|play|walk|run|go on|go|move|continue|carry on|serve)"
    r"(?: (?:on|now|again|and|so))*)?"
)
"""Somebody is well again, and nothing else."""


def fixed_form(message: Message, chat: ChatView) -> Understood | None:
    """What has a form of its own, in this order."""
    text, said, mentions = message.text, message.said, message.mentions
    if chat.forwarded or begins_as_note(said):
        return None
    undone = undo_said(text, said)
    if undone is not None:
        return undone
    if timeouts_asked(message):
        return TimeoutsAsked(text=text)
    format = game_target_said(message, chat) or game_target_asked(message, chat)
    format = format or format_told(message)
    if format is not None:
        return format
    if message.asks and not _is_bare_score(message):
        return result_put_right(message, chat) or book_said(text, said, mentions)
    replying = chat.replying_to_note
    return (
        pair_said(message, chat)
        or starter_said(message, chat)
        or ended_by_side(message, chat)
        or asked_of_another_format(message, chat)
        or timeout_said(message, chat)
        or _result(message, chat)
        or won_what(message, chat)
        or match_announced(message, chat)
        or _score(message, chat)
        or middle_shared_out(message, chat)
        or agreement_said(text, said, chat)
        or book_said(text, said, mentions)
        or _correction(message, replying=replying)
    )


def _correction(message: Message, *, replying: bool) -> CorrectionSaid | None:
    """A correction, unless it says what is right: "no, okafor is strong on the backhand"."""
    found = correction_said(message.text, message.said, message.mentions, replying=replying)
    return None if names_somebody(message) and message.note.claims else found


def _result(message: Message, chat: ChatView) -> ResultSaid | None:
    found = result_said(
        message.text,
        message.told.beside_times,
        of_score=message.told.of_score,
        format=chat.format if chat.match_on else None,
    )
    is_unplayed = found is not None and not found.games and found.tally is None
    named = {player for one in message.mentions if not one.pronoun for player in one.players}
    is_of_others = chat.match_on and not named <= {*chat.ours, *chat.theirs}
    if found is None or (is_unplayed and is_of_others):
        return None
    return replace(found, mentions=tuple(one for one in message.mentions if not one.pronoun))


def _is_bare_score(message: Message) -> bool:
    """Nothing but a score, though a word of it looks like asking ("were up 8 7")."""
    if "?" not in message.text:
        return not stray_words(message.told.of_score) or _reassures_first(message)
    rest = [word for word in message.told.of_score if word.folded not in _OF_A_SLIP]
    return _PUT_RIGHT.search(message.text.lower()) is not None and not stray_words(rest)


def _reassures_first(message: Message) -> bool:
    """Whether a call ends it, and all before says that somebody is well, which asks nothing."""
    call = score_group(message.told.of_score)
    if call is None or len(call.numbers) != _NUMBERS_OF_A_CALL:
        return False
    said = [word.folded for word in message.told.of_score]
    is_last = call.stop == len(said)
    return is_last and _WELL.fullmatch(" ".join(said[: call.start])) is not None


def _score(message: Message, chat: ChatView) -> Understood | None:
    """A score or a rally, with chatter around it but nothing said of anybody's play."""
    told = message.told.of_score
    score = score_message(message.text, told)
    if score is None:
        return None
    outcome = isinstance(score, RallySaid) or score.side_out
    is_apart = outcome and (not _opens(message) or tells_rally_apart(told))
    if message.note.claims and not is_all_score(told) and not is_apart:
        return None
    named = tuple(one for one in message.mentions if not one.pronoun)
    if not isinstance(score, RallySaid):
        rally_ours = rally_beside_call(score, told)
        scored = scored_beside(message) if rally_ours is None else None
        served = with_point_served(score, told, chat.format.scoring) if chat.match_on else score
        served = with_side_out(served, told, chat.format.scoring) if chat.match_on else served
        if served.score is not None:
            served = replace(served, score=after_lost_run(served.score, message.said))
        by, leads = server_named(message, chat), is_lead(message.told.line.text)
        rally_ours, is_scored = (rally_ours, False) if scored is None else (scored, True)
        read = replace(served, rally_ours=rally_ours, scored=is_scored, served_by=by, leads=leads)
        return with_lost_rally(read, message, chat)
    return replace(score, mentions=named, corrects=_corrects(message))


def _corrects(message: Message) -> bool:
    """Whether the rally is told instead of the last one: "no wait, their rally"."""
    line = " ".join(word.folded for word in message.told.of_score)
    told = OUR_RALLY.search(line) or THEIR_RALLY.search(line)
    return told is not None and starts_corrected(line, told.start())


def _opens(message: Message) -> bool:
    """Whether the message opens with somebody's name, as notes do."""
    return bool(message.mentions) and message.mentions[0].span[0] <= message.said[0].span[0]
