"""Short messages that the running match gives their meaning: each is nothing but that."""

from __future__ import annotations

from bot.chat.games_bare import bare_game
from bot.chat.match_over_said import match_over_said
from bot.chat.message import Message
from bot.chat.note_or_question import begins_as_note
from bot.chat.packed_calls import DOTTED, packed_call
from bot.chat.rallies_in_order import rallies_in_order
from bot.chat.rallies_said import brief_rally
from bot.chat.rally_denied import rally_denied
from bot.chat.rally_remarks import names_who, rally_remark
from bot.chat.rally_retold import let_told, rally_retold
from bot.chat.rally_strangers import rally_of_stranger
from bot.chat.results_said import result_said
from bot.chat.runs_said import several_rallies
from bot.chat.said import RallySaid, RemarkSaid, ScoreRemark, Understood, UndoSaid
from bot.chat.score_fixes_said import score_fixed
from bot.chat.score_form import is_no_score
from bot.chat.serving_said import serving_said
from bot.chat.slip_words import EVERYTHING, OF_A_TAP, TAKES_BACK, WAS_A_LET, WRONG_PERSON
from bot.chat.view import ChatView
from bot.chat.words import folded_line
from knowledge.regex import regex

_MARKS = frozenset(",;.!:\n–—")


def match_words(message: Message, chat: ChatView) -> Understood | None:
    """What such a message means while a match is on; None for any other."""
    if chat.forwarded or begins_as_note(message.said):
        return None
    if WRONG_PERSON.match(folded_line(message.said)):
        return None
    is_dotted = chat.match_on and DOTTED.fullmatch(message.text) is not None
    is_odd = is_no_score(message.text) and not is_dotted
    if is_odd and result_said(message.text, message.said) is None:
        return RemarkSaid(text=message.text, remark=ScoreRemark.NO_SCORE)
    return (
        _taken_back(message, chat)
        or let_told(message, chat)
        or rally_retold(message, chat)
        or rally_denied(message, chat)
        or serving_said(message, chat)
        or bare_game(message, chat)
        or match_over_said(message, chat)
        or several_rallies(message, chat)
        or rallies_in_order(message, chat)
        or (None if names_who(message) else brief_rally(message, chat))
        or rally_remark(message, chat)
        or score_fixed(message, chat)
        or rally_of_stranger(message, chat)
        or (packed_call(message) if chat.match_on else None)
    )


_RALLY_AFTER = regex(r"(?:(?:no|oops|wait|sorry) )*(?:scratch|strike) that\b")


def rally_put_right(message: Message, chat: ChatView) -> RallySaid | None:
    """ "Scratch that, mira netted it": the rally told behind a mark, and no note on her taken back.

    Without the mark, "scratch that okafor nets it" names the note that is to go.
    """
    found = _RALLY_AFTER.match(folded_line(message.said))
    if not chat.match_on or chat.forwarded or found is None:
        return None
    ahead = message.said[len(found[0].split()) :]
    if not ahead or not set(ahead[0].gap) & _MARKS:
        return None
    rally = brief_rally(message, chat)
    return rally if isinstance(rally, RallySaid) and rally.corrects else None


def _taken_back(message: Message, chat: ChatView) -> UndoSaid | None:
    if "?" in message.text:
        return None
    line = " ".join(word.folded for word in message.said)
    if EVERYTHING.fullmatch(line):
        return UndoSaid(text=message.text, everything=True)
    if chat.match_on and WAS_A_LET.fullmatch(line):
        return UndoSaid(text=message.text, of_score=True, of_rally=True)
    if TAKES_BACK.fullmatch(line) and (chat.match_on or OF_A_TAP.search(line)):
        return UndoSaid(text=message.text, of_score=True)
    return None
