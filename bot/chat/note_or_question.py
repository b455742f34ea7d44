"""Whether a message without a fixed form tells, asks, or does both."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.asking import as_meant, opens_asking, surely_asks
from bot.chat.counted_of_them import counts_theirs
from bot.chat.forms import word_set
from bot.chat.message import Message, names_somebody, opponents, read_message, weighed_note
from bot.chat.note_breach import is_seen_otherwise
from bot.chat.note_ourselves import is_myself
from bot.chat.note_witness import is_hearsay, is_told_by_another
from bot.chat.notes import read_note
from bot.chat.own_play_told import own_play_told
from bot.chat.private_words import is_of_private_life
from bot.chat.pronouns import is_nobody_else, is_person
from bot.chat.ruled_incident import is_ruled_on
from bot.chat.said import Certainty, Mention, NoteSaid, Question, Unclear, Understood
from bot.chat.supposed_case import is_supposed
from bot.chat.telling import ranks_somebody, telling_note, tells_of, tells_of_focus, told_beside
from bot.chat.told_by_looks import opens_with_a_stranger
from bot.chat.told_dislike import tells_of_a_dislike
from bot.chat.topic_model import SURE_FROM
from bot.chat.topic_question import asking, read_question
from bot.chat.unknown_names import has_predicate
from bot.chat.view import ChatView
from bot.chat.words import Word
from knowledge.vocabulary import TRAITS, PlayerId, TraitKind

TOLD_BELOW = -0.55
"""How little a statement about somebody must read like a question to be kept as a note: of the open
voices' questions one in a hundred does, of the hard notes that had been answered five in ten."""

TOLD_BESIDE_BELOW = -0.7
"""The same for what has a sure topic as well, and so is kept beside its answer."""

_SOMEBODY = PlayerId(-1)
"""Stands for a player that the book does not know yet."""

SHORTEST_STATEMENT = 3
"""Words of a statement; shorter ones ("okafor backhand") ask."""

_OF_US = word_set("of_us")
_WITNESSED = frozenset(["heard", "hear", "saw", "noticed", "see", "found", "learned", "think"])
_IS = frozenset(["he", "she"])
"""With the 's of "he's", which reads as a possessive."""

_POINTING = frozenset(["the", "that", "their", "this", "his", "her"])
_SOMEBODIES = word_set("somebody_without_a_name")
_WORDS_OF_SOMEBODY = 4
"""Of "the tall blond guy". Common practice, no source."""

_GOES_ON = frozenset(["and", "but", "also", "ok", "oh", "btw"])


def note_or_question(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    note = message.note
    if begins_as_note(message.said) or chat.forwarded:
        return (note,)
    if tells_of_a_dislike(message):
        return (note,)
    if message.asks and not _only_sounds_asked(message, chat):
        return _asked(message, chat)
    if _tells_claims(message) or tells_of_somebody(message, chat):
        return (note,)
    if _tells_of_stranger(message, chat):
        return (note,)
    is_heard = is_hearsay(message.said) or is_seen_otherwise(message.said)
    is_heard = is_heard and names_somebody(message)
    if (is_heard or is_told_by_another(message.said, message.mentions)) and not message.asks:
        return (note,)
    if tells_of_private_life(message):
        return (note,)
    own = own_play_told(message, chat)
    if own is not None:
        return (own,)
    question = read_question(message, chat)
    if tells_of(message.said, opponents(message.mentions, chat)) or counts_theirs(message, chat):
        is_asked = _is_sure(question) and _speaks_of_us(message)
        return (note, question) if is_asked else (note,)
    if names_somebody(message) and _tells_of_others(message, question):
        return (note,)
    if _tells_of_asker(message, chat, question):
        return (note,)
    if _tells_of_unknown_writer(message, chat):
        return (replace(note, by_writer=True),)
    if _tells_of_focus(message, chat) and (note.claims or isinstance(question, Unclear)):
        return (note,)
    if _tells_of_them(message, question):
        return (note,)
    if _reads_told(message, chat):
        if not _is_sure(question):
            return (note,)
        return (note, question) if asking(message, chat) < TOLD_BESIDE_BELOW else (question,)
    return (question,)


def tells_of_private_life(message: Message) -> bool:
    """Whether it tells such of one of them, asking nothing: it is handed back, whoever it is, and
    no tactics come of it."""
    if message.asks or _speaks_of_us(message) or not message.said:
        return False
    return is_of_private_life(message.text[: message.said[-1].span[1]])


def _only_sounds_asked(message: Message, chat: ChatView) -> bool:
    """ "No idea why hale lobs so much": a word that asks, in a message that tells."""
    is_asked = surely_asks(message.text, message.said) or is_supposed(
        message.said, message.mentions
    )
    if is_asked:
        return False
    is_told = _reads_told(message, chat) or ranks_somebody(message.said, message.mentions)
    return is_told or _answers_itself(message)


def _answers_itself(message: Message) -> bool:
    """ "Okafor? Lefty.": a name is called up, and told of."""
    parts = message.text.split("?")
    named = [one for one in message.mentions if not one.pronoun]
    is_called_up = len(parts) == 2 and len(named) == 1 and named[0].span[1] == len(parts[0])
    return is_called_up and len(parts[0].split()) <= 2 and bool(message.note.claims)


def _reads_told(message: Message, chat: ChatView) -> bool:
    says_enough = message.note.claims or len(message.said) >= SHORTEST_STATEMENT
    told = bool(says_enough) and names_somebody(message)
    return told and asking(message, chat) < TOLD_BELOW


def _asked(message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """A question, and before it the note that stands beside it."""
    question = read_question(message, chat)
    if is_ruled_on(question, message):
        return (question,)
    beside = telling_note(message.text, as_meant(message.said), message.note, chat.ours)
    if beside is None and not message.note.about_body:
        for span in told_beside(message.text, as_meant(message.said), message.note, chat.ours):
            apart = _told_apart(message.text[slice(*span)], chat)
            if apart is not None:
                return (apart, _asked_beside(question, span))
    if beside is not None and not message.note.about_body:
        return (beside, question)
    tells = _tells_claims(message) and not _only_supposes(message)
    if tells and isinstance(question, Unclear) and not _weighs(message):
        is_sure = surely_asks(message.text, message.said)
        return (message.note, question) if is_sure else (message.note,)
    return (question,)


def _told_apart(part: str, chat: ChatView) -> NoteSaid | None:
    """The note that a part beside the question makes when read without it: of "okafor is slow on
    his backhand side and where do i serve hale" the whole blurs what its first half claims."""
    alone = read_message(part, chat)
    note = None if alone.asks else weighed_note(alone, chat)
    is_theirs = note is not None and not {one.player for one in note.claims} & {*chat.ours}
    return note if is_theirs and note is not None and note.claims else None


def _asked_beside(question: Question | Unclear, told: tuple[int, int]) -> Question | Unclear:
    """The question, of whom it names itself, where it names somebody beside that part."""
    start, stop = told
    mentions = question.slots.mentions
    own = tuple(one for one in mentions if not start <= one.span[0] < stop)
    if all(one.pronoun for one in own):
        return question
    return replace(question, slots=replace(question.slots, mentions=own))


_SUPPOSING = frozenset(["when", "if", "once", "whenever"])


def _only_supposes(message: Message) -> bool:
    """ "Who takes it when okafor lobs a lot": all that it would claim is the case asked about."""
    if is_supposed(message.said, message.mentions):
        return True
    said = as_meant(message.said)
    case = next((word.span[0] for word in said if word.folded in _SUPPOSING), None)
    if case is None or message.note.about_body or not opens_asking(said):
        return False
    return all(one.span[0] > case for one in message.note.claims)


def _tells_claims(message: Message) -> bool:
    note = message.note
    return bool(note.claims and names_somebody(message)) or note.about_body


def _tells_of_asker(message: Message, chat: ChatView, question: Question | Unclear) -> bool:
    """ "Im a lefty" is a note; "my backhand is weak" only where no topic is clear.

    So is "my partners lefty", which tells as much of us.
    """
    of_us = [one for one in message.note.claims if one.player in (chat.asker, *chat.ours)]
    mine = [one for one in of_us if one.player == chat.asker]
    facts = any(TRAITS[one.trait].kind is TraitKind.FACT for one in of_us)
    return facts or (bool(mine) and isinstance(question, Unclear))


def _tells_of_unknown_writer(message: Message, chat: ChatView) -> bool:
    """ "Im lefty shes righty", where nobody told who writes: a hand or a side for the book."""
    if chat.asker is not None or message.note.claims or names_somebody(message):
        return False
    if not any(is_myself(message.said, at) for at in range(len(message.said))):
        return False
    written = replace(chat, asker=_SOMEBODY)
    note = read_note(message.text, message.said, message.mentions, written)
    told = [TRAITS[one.trait].kind for one in note.claims if one.player == _SOMEBODY]
    return TraitKind.FACT in told


def _tells_of_stranger(message: Message, chat: ChatView) -> bool:
    """ "The tall one has a massive forehand": a note, whose is asked. What is told must stand
    behind the looks and be a trait: "the tall one" answers, "the tall one again" tells nothing."""
    begins = opens_with_a_stranger(message.said)
    if not begins or message.asks or message.mentions:
        return False
    whole = (message.said[0].span[0], message.said[begins - 1].span[1])
    sure = Mention(
        typed="", span=whole, certainty=Certainty.SURE, players=(_SOMEBODY,), pronoun=True
    )
    told = read_note(message.text, message.said, (sure,), chat).claims
    return any(one.span[0] > whole[1] for one in told)


def _tells_of_focus(message: Message, chat: ChatView) -> bool:
    """ "He hates lobs", "and he's lefty", right after the one player spoken of; of a mixed pair
    "the tall lady is a lefty" needs nobody before it."""
    opening = next((at for at, word in enumerate(message.said) if word.folded not in _GOES_ON), 0)
    said = message.said[opening:]
    is_nobody = any(is_nobody_else(one, chat) for one in message.mentions)
    if names_somebody(message) or not said or not (is_nobody or len(chat.focus) == 1):
        return False
    is_he = said[0].folded in _IS and said[0].is_possessive
    return tells_of_focus(said) or is_he or (is_nobody and _tells_of_person(said, message))


def _tells_of_them(message: Message, question: Question | Unclear) -> bool:
    """ "Neither of them lobs", and what "they both" do where nothing is clearly asked."""
    line = [word.folded for word in message.said]
    if line[:1] in (["neither"], ["none"]) and line[1:3] == ["of", "them"]:
        return bool(message.note.claims) or has_predicate(message.said, 3)
    is_theirs = line[:1] in (["they"], ["theyre"], ["both"]) and bool(message.note.claims)
    return is_theirs and isinstance(question, Unclear) and not _speaks_of_us(message)


def _tells_of_person(said: Sequence[Word], message: Message) -> bool:
    """ "The tall lady pops it up": a person is the subject, of whom something is told."""
    at = next((at for at in range(1, min(3, len(said))) if is_person(said, at)), None)
    return at is not None and (bool(message.note.claims) or has_predicate(said, at + 1))


def _is_sure(question: Question | Unclear) -> bool:
    return isinstance(question, Question) and question.confidence >= SURE_FROM


def _speaks_of_us(message: Message) -> bool:
    """Whether one of us is in it, beside whoever only heard of it: "i heard that okafor lobs"."""
    line = [word.folded for word in message.said]
    own = line[2:] if line[:1] == ["i"] and line[1:2] != [] and line[1] in _WITNESSED else line
    return any(word in _OF_US for word in own)


def _weighs(message: Message) -> bool:
    """A question mark, or two things weighed against each other: "weak backhand or forehand"."""
    return "?" in message.text or any(word.folded == "or" for word in message.said)


def _tells_of_others(message: Message, question: Question | Unclear) -> bool:
    """A statement about somebody else that no topic clearly fits: words to keep."""
    is_vague = not _speaks_of_us(message) and not _is_sure(question)
    return isinstance(question, Unclear) or (is_vague and len(message.said) > SHORTEST_STATEMENT)


def tells_of_somebody(message: Message, chat: ChatView) -> bool:
    """Whether it would be a note, were the names it has not settled known: "zorblatt: lefty"."""
    if message.asks or all(one.certainty is Certainty.SURE for one in message.mentions):
        return False
    known = [
        replace(one, certainty=Certainty.SURE, players=one.players[:1] or (_SOMEBODY,))
        for one in message.mentions
    ]
    return bool(read_note(message.text, message.said, known, chat).claims)


def opens_with_somebody(said: Sequence[Word]) -> bool:
    """ "The left one is tired", "their left guy can't volley": of somebody without a name."""
    opening = [word.folded for word in said[: _WORDS_OF_SOMEBODY + 1]]
    at = next((at for at, word in enumerate(opening) if at and word in _SOMEBODIES), None)
    return opening[:1] != [] and opening[0] in _POINTING and at is not None and at + 1 < len(said)


def begins_as_note(said: Sequence[Word]) -> bool:
    first = [word.folded for word in said[:2]]
    return first[:1] == ["note"] or first[:1] == ["notes"] or first == ["take", "note"]
