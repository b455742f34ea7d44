"""Which of our pairs plays now ("we are mira and zoe again"), and who we are, asked for."""

from __future__ import annotations

from bot.chat.names import find_mentions
from bot.chat.said import BookSaid, BookVerb, Certainty, Mention
from bot.chat.view import ChatView
from bot.chat.words import folded_line, words, words_in
from knowledge.regex import regex

OF_US = "us"
"""What the words of WHO are where only our own pair is asked for."""

_TELLS = regex(r"\b(?:we|were|again|back|now|with|w|pair|partner)\b")
_BESIDE = words_in(
    "hi hey hello ok okay so and n w with yes btw now then well we are were its it is im i am me"
    " our pair partner play playing paired partnered up back again together this time for the in on"
    " today tomorrow tonight mixed mens womens open doubles dubs seniors final finals semi semis"
    " quarter quarters bronze gold medal match game next pool round one bracket event a of new"
    " here going to be will"
)
"""Words beside the names that tell of nothing else: with any other it is a note or a question."""

_ASKS = regex(
    r"(?:(?:ok|so|wait|hey|and|hang|on|um|btw) )*(?:who (?:are we|am i (?:\w+ )?with"
    r"|do (?:i|we) (?:\w+ )?play with|is my (?:\w+ )?partner|are my (?:\w+ )?partners)"
    r"|whos my (?:\w+ )?partner|which (?:pair|team) (?:are we|am i)"
    r"|who do you (?:think|have|say|take) (?:that )?(?:we are|i am|us (?:as|for|down as)))"
    r"(?: (?:now|again|today|then|right|at|the|moment|please|pls|set|as))*"
)


def own_pair_again(text: str, chat: ChatView) -> BookSaid | None:
    """The pair of ours that is named as playing, or that is asked for; None for anything else.

    All who are named are ours in the book, and each other word only says that they play.
    """
    said = words(text)
    line = folded_line(said)
    if _ASKS.fullmatch(line):
        return BookSaid(text=text, verb=BookVerb.WHO, words=OF_US)
    if "?" in text or not _TELLS.search(line) or chat.forwarded:
        return None
    named = [one for one in find_mentions(said, chat) if not one.pronoun]
    inside = {at for one in named for at, word in enumerate(said) if _is_in(word.span, one)}
    beside = [word.folded for at, word in enumerate(said) if at not in inside]
    if not named or not _BESIDE.issuperset(beside) or not _are_ours(named, chat):
        return None
    tells = {"we", "are", "were", "its", "back", "pair"} if len(named) == 2 else {"with", "w"}
    is_told = bool(tells.intersection(beside)) and len(named) <= 2
    returns = {"back", "again", "now", "for", "in"}.intersection(beside)
    if not is_told or not returns:
        return None
    pair = " and ".join(one.typed for one in named)
    return BookSaid(text=text, verb=BookVerb.OUR_PAIR, words=pair, mentions=tuple(named))


def _is_in(span: tuple[int, int], mention: Mention) -> bool:
    return mention.span[0] <= span[0] and span[1] <= mention.span[1]


def _are_ours(named: list[Mention], chat: ChatView) -> bool:
    """Whether all are surely of ours in the book, whichever pair plays now."""
    ours = {row.player for row in chat.roster if row.ours} - {*chat.theirs}
    return all(one.certainty is Certainty.SURE and one.players[0] in ours for one in named)
