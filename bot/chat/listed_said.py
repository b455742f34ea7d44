"""What has a form so much of its own that it is read before any other message.

Pools, rallies of a video, for whom a coach speaks, and what is asked of lists.
"""

from __future__ import annotations

from bot.chat.coach_said import coach_said
from bot.chat.drills_said import drill_said
from bot.chat.introduced_said import introduced, one_of_us_told
from bot.chat.leaks_said import leaks_said
from bot.chat.note_of_list_said import note_of_list
from bot.chat.other_pair_told import other_pair_told
from bot.chat.own_pairs_told import own_pairs_told
from bot.chat.pool_said import pool_asked, pool_said
from bot.chat.results_brief import score_then_won
from bot.chat.said import ListAsked, ListedVerb, Understood
from bot.chat.through_asked import through_asked
from bot.chat.video_said import video_said
from bot.chat.view import ChatView
from bot.chat.words import words

_MORE = frozenset(
    ["more", "show more", "the rest", "rest", "next page", "mroe", "moer", "more please", "go on"]
)


def listed_said(text: str, chat: ChatView) -> Understood | None:
    """What such a message says; None for any other."""
    if chat.listing and " ".join(word.folded for word in words(text)[:3]) in _MORE:
        return ListAsked(text=text, verb=ListedVerb.MORE)
    told = note_of_list(text, chat)
    if told is not None:
        return told
    won = score_then_won(text, chat.format) if chat.match_on else None
    return (
        won
        or pool_asked(text, chat)
        or through_asked(text)
        or own_pairs_told(text, chat)
        or coach_said(text, chat)
        or other_pair_told(text, chat)
        or introduced(text, chat)
        or one_of_us_told(text, chat)
        or pool_said(text, chat)
        or video_said(text, chat)
        or leaks_said(text)
        or drill_said(text)
    )
