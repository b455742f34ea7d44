"""From a typed message to what it is: the one entry for texts.

The order matters: what is said in a fixed form (commands, undo, scores, results, matches)
comes before notes, and notes before questions, since a fixed form is never a question.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.announced_and_noted import announced_and_noted
from bot.chat.asked_after_score import put_clearly, question_beside
from bot.chat.asked_beside import ASKS_BESIDE, with_offers, with_topics_beside
from bot.chat.body_told import body_told
from bot.chat.book_said import own_pair_said
from bot.chat.commands import BOOK_COMMANDS, TOPIC_COMMANDS, Command, command
from bot.chat.consequence_asked import consequence_asked
from bot.chat.courtesies import is_declined, is_regretted
from bot.chat.disputed_calls import call_and_question, disputed_call
from bot.chat.dropped_behind import dropped_behind
from bot.chat.emergency_said import emergency_said
from bot.chat.fine_again import fine_again
from bot.chat.follow_ups import answers_who_serves
from bot.chat.game_opening import game_opening
from bot.chat.game_put_right import game_put_right
from bot.chat.instead_asked import told_and_instead
from bot.chat.lead_asked import lead_asked
from bot.chat.listed_said import listed_said
from bot.chat.message import (
    Message,
    may_be_ours,
    read_message,
    weighed_note,
)
from bot.chat.note_openings import note_dictated
from bot.chat.note_put_right import note_put_right
from bot.chat.noted_behind_a_rally import rally_and_note
from bot.chat.noted_beside import told_and_noted
from bot.chat.partner_again import partner_again
from bot.chat.partner_beside import partner_beside
from bot.chat.partner_in_passing import partner_in_passing
from bot.chat.partner_pointed_at import partner_pointed_at
from bot.chat.partner_told import partner_told
from bot.chat.rally_beside_score import rally_beside_score
from bot.chat.rally_clauses import with_details
from bot.chat.run_told import run_told
from bot.chat.said import (
    BookSaid,
    BookVerb,
    NoteSaid,
    Question,
    RallySaid,
    ResultSaid,
    ScoreSaid,
    Unclear,
    Understood,
    UndoSaid,
)
from bot.chat.score_asked_beside import beside_the_score
from bot.chat.score_behind_question import score_behind
from bot.chat.score_supposed import only_asked_about
from bot.chat.settled_forms import settled
from bot.chat.slots import find_slots
from bot.chat.starts_said import own_start, tells_own_start
from bot.chat.talk_or_question import small_talk, talk_or_question
from bot.chat.timeouts_said import timeout_before_question
from bot.chat.told_before import before_the_question
from bot.chat.told_first import told_first
from bot.chat.topic_question import CERTAIN, asking
from bot.chat.two_partners_told import other_partner_told, two_partners_told
from bot.chat.view import ChatView, names_of_ours, names_of_theirs
from bot.chat.weather_beside import tells_lightning, tells_weather, tells_wind
from bot.chat.who_writes import knowing_writer
from knowledge.cautions import is_emergency
from knowledge.complaints import complains
from knowledge.distress import distress_of
from knowledge.tactics.smalltalk import is_other_language
from knowledge.vocabulary import Seen, Topic
from scouting_db.directory.invitations import code_in

_RULES = Topic.RULES_QUESTION
_NOTE_COMMANDS = frozenset(["note", "n"])


def understand(text: str, *, chat: ChatView) -> tuple[Understood, ...]:
    """What the message says: one thing, or a note and the question that comes with it."""
    chat = knowing_writer(text, chat)
    typed = command(text)
    is_note = typed is not None and typed.word in _NOTE_COMMANDS
    if typed is not None and not (is_note and is_emergency(typed.rest)):
        return (_commanded(text, typed, chat),)
    if code_in(text) is not None:
        return (BookSaid(text=text, verb=BookVerb.JOIN, words=text),)
    # Help comes first: such words are answered at once, never kept as a note.
    emergency = emergency_said(text, chat)
    if emergency:
        return emergency
    if distress_of(text, ours=names_of_ours(chat), theirs=names_of_theirs(chat)) is not None:
        return (Question(text=text, topic=Topic.RESET_HEAD, confidence=CERTAIN),)
    listed = listed_said(text, chat)
    if listed is not None:
        return (listed,)
    partner = None if chat.forwarded else two_partners_told(text, chat) or partner_told(text, chat)
    if partner is None and not chat.forwarded:
        partner = partner_in_passing(text, chat)
    partner = partner or partner_pointed_at(text, chat) or partner_again(text, chat)
    partner = partner or partner_beside(text, chat) or other_partner_told(text, chat)
    if partner is not None:
        return (partner,)
    dictated = None if chat.forwarded else note_dictated(text, chat, settled)
    if dictated is not None:
        return _read(dictated.text, dictated, chat) if dictated.asks else (_noted(dictated, chat),)
    message = read_message(text, chat)
    # Behind a note "ignore that" would take the note back.
    if is_declined(text, message.said) or (is_regretted(message.said) and not chat.noted):
        return (small_talk(text),)
    own_pair = None if chat.forwarded else own_pair_said(text, message.mentions)
    if own_pair is not None and all(may_be_ours(one, chat.ours) for one in own_pair.mentions):
        return (own_pair,)
    return _read(text, message, chat)


def _read(text: str, message: Message, chat: ChatView) -> tuple[Understood, ...]:
    if not message.said:
        # Letters of another script leave no word of ours; signs and emoji leave no letter.
        return (small_talk(text) if is_other_language(text) else Unclear(text=text, offers=()),)
    rest = beside_the_score(message, chat)
    if rest is not None:
        said = _read(rest, read_message(rest, chat), chat)
        tells = any(isinstance(one, ScoreSaid | RallySaid | ResultSaid) for one in said)
        return said if tells else (*said, BookSaid(text=text, verb=BookVerb.SCORE))
    opening = game_opening(message, chat)
    if opening:
        return opening
    announced = announced_and_noted(message, chat, settled)
    if announced is not None:
        return (announced,)
    scored = rally_beside_score(message, chat) or game_put_right(message, chat)
    beside = (scored,) if scored else fine_again(message, chat)
    beside = beside or lead_asked(message, chat)
    beside = beside or consequence_asked(message, chat) or told_and_noted(message, chat, settled)
    beside = beside or told_and_instead(message, chat) or rally_and_note(message, chat, settled)
    beside = beside or dropped_behind(message, chat) or run_told(message, chat, settled)
    if beside:
        return beside
    fixed = note_put_right(message, chat) or settled(text, message, chat)
    if isinstance(fixed, RallySaid) and not fixed.understood:
        fixed = with_details(fixed, message, chat)
    fixed = fixed or told_first(message, chat, settled) or disputed_call(message, chat)
    if fixed is None:
        said = tuple(_heard(one) for one in talk_or_question(message, chat))
        said = tuple(_of_body(one, message, chat) for one in said)
        said = (*said[:-1], put_clearly(said[-1], message, chat))
        told = tuple(weighed_note(message, chat) if one is message.note else one for one in said)
        told = _without_report(told, message)
        return _with_told(with_offers(told, message, chat), message, chat)
    several = call_and_question(message, chat) if isinstance(fixed, Question) else ()
    if several:
        return several
    if isinstance(fixed, Question) and fixed.changes:
        return (fixed,)
    if isinstance(fixed, ResultSaid) and fixed.corrects:
        return (fixed,)
    if answers_who_serves(message.said, chat):
        return (fixed,)
    asked = question_beside(fixed, message, chat)
    if asked and _is_only_told_by_words(fixed) and asking(message, chat) >= ASKS_BESIDE:
        return asked
    if only_asked_about(fixed, asked, message):
        return asked
    if isinstance(fixed, Question):
        return _with_told((fixed,), message, chat)
    beside = (*_start_beside(fixed, message, chat), *asked)
    return (*beside, fixed if beside else with_topics_beside(fixed, message, chat))


def _with_told(
    said: tuple[Understood, ...], message: Message, chat: ChatView
) -> tuple[Understood, ...]:
    """Questions with what was told of the match before them: a rally or a game counts before they
    are answered, a score is also theirs."""
    if not any(isinstance(one, Question | Unclear) for one in said):
        return said
    if (timeout := timeout_before_question(message, chat)) is not None:
        return (timeout, *said)
    before = before_the_question(message, chat)
    told = before.told or score_behind(message, chat, said)
    of_rules = any(isinstance(one, Question) and one.topic is _RULES for one in said)
    if told is None or (of_rules and isinstance(told, RallySaid)):
        # Whose rally it was is what a question about a fault wants to know.
        return tuple(
            replace(one, may_count=before.won_by_us) if isinstance(one, Question) else one
            for one in said
        )
    comes_first = isinstance(told, RallySaid | ResultSaid) or told.side_out
    return (told, *said) if comes_first else (*said, told)


def _heard(said: Understood) -> Understood:
    """A complaint of a body, or weather, that no topic was read from is answered as one."""
    match said:
        case Unclear(text=text, slots=slots) if complains(text) or _is_weather(text):
            topic = Topic.WEATHER_OR_BODY
            return Question(text=text, topic=topic, confidence=CERTAIN, slots=slots)
        case Question(topic=Topic.SMALLTALK_OR_UNKNOWN) if complains(said.text):
            return replace(said, topic=Topic.WEATHER_OR_BODY)
        case Question() if tells_weather(said):
            return replace(said, topic=Topic.WEATHER_OR_BODY)
    return said


def _is_weather(text: str) -> bool:
    return tells_lightning(text) or tells_wind(text)


def _of_body(said: Understood, message: Message, chat: ChatView) -> Understood:
    return body_told(said, message, chat) if isinstance(said, Question) else said


def _without_report(said: tuple[Understood, ...], message: Message) -> tuple[Understood, ...]:
    """ "Lindqvist in a cast", "somebody said hale is the better one": what is told of somebody asks
    for no report on them."""
    match said:
        case (NoteSaid() as note, Question(topic=Topic.OPPONENT_REPORT)) if not message.asks:
            return (note,) if note.seen is Seen.HEARSAY or complains(message.text) else said
    return said


def understand_note(text: str, *, chat: ChatView) -> NoteSaid:
    """The text read as a note, whatever else it might be."""
    chat = knowing_writer(text, chat)
    return replace(_noted(read_message(_without_command(text), chat), chat), text=text)


def _noted(message: Message, chat: ChatView) -> NoteSaid:
    return replace(weighed_note(message, chat), text=message.text)


def _without_command(text: str) -> str:
    """The text with a leading `/note` blanked out, so that spans still fit."""
    typed = command(text)
    if typed is None or typed.word not in _NOTE_COMMANDS:
        return text
    start = len(text) - len(text.lstrip())
    end = start + len(text[start:].split(maxsplit=1)[0])
    return " " * end + text[end:]


def _commanded(text: str, typed: Command, chat: ChatView) -> Understood:
    rest = read_message(typed.rest, chat)
    if typed.word in _NOTE_COMMANDS:
        return understand_note(text, chat=chat)
    if typed.word == "undo":
        return UndoSaid(text=text)
    if typed.word in TOPIC_COMMANDS:
        slots = find_slots(rest.said, rest.mentions, rest.told)
        topic = TOPIC_COMMANDS[typed.word]
        return Question(text=text, topic=topic, confidence=CERTAIN, slots=slots)
    verb = BOOK_COMMANDS.get(typed.word, BookVerb.HELP)
    if verb is BookVerb.START and code_in(typed.rest) is not None:
        # A deep link of the messenger arrives as "/start CODE".
        verb = BookVerb.JOIN
    if verb is BookVerb.FORGET and typed.rest.lower() == "me":
        verb = BookVerb.FORGET_ME
    return BookSaid(text=text, verb=verb, words=typed.rest, mentions=rest.mentions)


def _start_beside(fixed: Understood, message: Message, chat: ChatView) -> tuple[Understood, ...]:
    """ "I started on the left, we're 7-4-1": who started comes first, or where that puts us."""
    if not isinstance(fixed, ScoreSaid) or not tells_own_start(message):
        return ()
    start = own_start(message, chat)
    if start is not None:
        return (start,)
    slots = find_slots(message.said, message.mentions, message.told)
    topic = Topic.WHERE_TO_STAND
    return (Question(text=message.text, topic=topic, confidence=CERTAIN, slots=slots),)


def _is_only_told_by_words(fixed: Understood) -> bool:
    """A rally or a match's end without a number: what asks as well may not move the score."""
    is_brief = isinstance(fixed, ResultSaid) and not fixed.games and fixed.tally is None
    return is_brief or isinstance(fixed, RallySaid)
