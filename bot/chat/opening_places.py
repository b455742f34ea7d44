"""Who stands where, told beside the score that opens a game: "0-0-2 they serve, jo stands right".

At 0-0 everybody still stands where they start; at any other score it tells only of that rally.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from bot.chat.follow_ups import follow_up
from bot.chat.message import Message, read_message
from bot.chat.said import Certainty, Mention, ScoreSaid, StarterSaid
from bot.chat.scores import score_message, stray_words
from bot.chat.serving_said import serving_said
from bot.chat.starts_said import starter_said
from bot.chat.view import ChatView
from bot.chat.words import Word, words_in
from knowledge.regex import regex

_LONGEST = 18
_MOST_PLACES = 2
_MARKS = frozenset(",;.:!\n–—")
_LINKS = words_in("and with")
_MYSELF = words_in("i im")
_STANDS = regex(
    r"(?:(?:am|is|are|stands?|standing|starts?|starting|begins?|goes) )*(?:out )?"
    r"(?:(?:on|at|in|to) )?(?:(?:the|our|their|my) )?"
    r"(?:(?P<right>right|even)|left|odd)(?: (?:side|court|box))?(?: (?:first|now))?"
)


def opened_with_places(message: Message, chat: ChatView) -> tuple[ScoreSaid | StarterSaid, ...]:
    """The opening score and who starts where; nothing unless it says only that."""
    said = message.said
    if not chat.match_on or chat.forwarded or "?" in message.text or len(said) > _LONGEST:
        return ()
    cuts = [at for at, word in enumerate(said) if at and _begins_anew(word)]
    if not 0 < len(cuts) <= _MOST_PLACES or not _tells_a_place(said[cuts[0] :]):
        return ()
    first, *rest = [_part(message, chat, *span) for span in pairwise([0, *cuts, len(said)])]
    score, places = _opening(first, chat), [_place(part, chat) for part in rest]
    found = [one for one in places if one is not None]
    return (score, *found) if score is not None and len(found) == len(places) else ()


def _begins_anew(word: Word) -> bool:
    return bool(_MARKS & set(word.gap)) or word.folded in _LINKS


def _tells_a_place(said: Sequence[Word]) -> bool:
    """Cheap to ask: what follows is read only where a side of the court is named in it."""
    return any(word.folded in ("right", "left", "even", "odd") for word in said)


def _part(message: Message, chat: ChatView, start: int, stop: int) -> Message:
    said = message.said
    start += said[start].folded in _LINKS and start + 1 < stop
    return read_message(message.text[said[start].span[0] : said[stop - 1].span[1]], chat)


def _opening(part: Message, chat: ChatView) -> ScoreSaid | None:
    """Who serves at 0-0, or first."""
    told = follow_up(part.text, part.said, chat) or serving_said(part, chat)
    if isinstance(told, ScoreSaid) and told.score is not None and told.score.call is None:
        return told if "first" in {word.folded for word in part.said} else None
    score = score_message(part.text, part.told.of_score)
    if not isinstance(score, ScoreSaid) or score.score is None or stray_words(part.told.of_score):
        return None
    call, known = score.score.call, (score.score.ours, score.score.theirs)
    points = (call.serving, call.receiving) if call else known
    return score if points == (0, 0) else None


def _place(part: Message, chat: ChatView) -> StarterSaid | None:
    mention = _who(part, chat)
    if mention is None:
        return None
    line = " ".join(word.folded for word in part.said if not _is_of(word, mention))
    found = _STANDS.fullmatch(line)
    if found is None:
        return starter_said(part, chat)
    return StarterSaid(text=part.text, mention=mention, is_right=found["right"] is not None)


def _who(part: Message, chat: ChatView) -> Mention | None:
    """The one player on court who is named, or whoever writes."""
    first = part.said[0]
    if first.folded in _MYSELF:
        is_known = chat.asker in chat.ours and not part.mentions
        players = () if chat.asker is None else (chat.asker,)
        sure = Mention(typed="i", span=first.span, certainty=Certainty.SURE, players=players)
        return sure if is_known else None
    named = [one for one in part.mentions if not one.pronoun]
    on_court = {*chat.ours, *chat.theirs}
    is_sure = len(named) == 1 and named[0].certainty is Certainty.SURE
    return named[0] if is_sure and named[0].players[0] in on_court else None


def _is_of(word: Word, mention: Mention) -> bool:
    return mention.span[0] <= word.span[0] < mention.span[1]
