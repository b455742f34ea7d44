"""From a typed message to what it is: the one entry for texts.

The order matters: what is said in a fixed form (commands, undo, scores, results, matches)
comes before notes, and notes before questions, since a fixed form is never a question.
"""

from __future__ import annotations

from dataclasses import replace

from bot.chat.agreements_said import agreement_said
from bot.chat.announced_strangers import match_of_strangers
from bot.chat.asked_after_score import put_clearly, question_beside
from bot.chat.asked_beside import ASKS_BESIDE, with_offers, with_topics_beside
from bot.chat.asked_of_book import asked_of_book
from bot.chat.bench_said import bench_said
from bot.chat.book_said import book_said, own_pair_said
from bot.chat.break_talk_asked import break_talk_asked
from bot.chat.changes_said import change_said
from bot.chat.commands import BOOK_COMMANDS, TOPIC_COMMANDS, Command, command
from bot.chat.corrections_said import correction_said, undo_said
from bot.chat.courtesies import is_declined
from bot.chat.disagreed import disagreed
from bot.chat.disputed_calls import disputed_call
from bot.chat.follow_ups import answers_who_serves, follow_up
from bot.chat.formats_told import asked_of_another_format, format_told
from bot.chat.game_opening import game_opening
from bot.chat.game_target_said import game_target_said
from bot.chat.listed_said import listed_said
from bot.chat.match_announced import match_announced
from bot.chat.match_of_others import match_of_others
from bot.chat.match_words import match_words
from bot.chat.message import (
    Message,
    is_ours,
    names_somebody,
    read_message,
    weighed_note,
)
from bot.chat.note_openings import note_dictated
from bot.chat.note_or_question import begins_as_note
from bot.chat.note_put_right import note_put_right
from bot.chat.noted_beside import told_and_noted
from bot.chat.notes_dropped import notes_dropped
from bot.chat.own_shape import settled_shape
from bot.chat.pairs_said import pair_said
from bot.chat.partner_in_passing import partner_in_passing
from bot.chat.partner_told import partner_told
from bot.chat.partner_trouble import partner_trouble
from bot.chat.places_weighed import places_weighed
from bot.chat.plan_words import plan_said
from bot.chat.player_added import player_added
from bot.chat.plays_on_asked import plays_on_asked
from bot.chat.rally_clauses import with_details
from bot.chat.reminders_said import schedule_said
from bot.chat.results_corrected import result_corrected
from bot.chat.results_doubted import is_lead
from bot.chat.results_ended import ended_by_side
from bot.chat.results_said import result_said
from bot.chat.runs_said import after_lost_run, scored_beside
from bot.chat.said import (
    BookSaid,
    BookVerb,
    CorrectionSaid,
    NoteSaid,
    Question,
    RallySaid,
    ResultSaid,
    ScoreSaid,
    TimeoutsAsked,
    Unclear,
    Understood,
    UndoSaid,
)
from bot.chat.score_words import OUR_RALLY, THEIR_RALLY
from bot.chat.scores import (
    is_all_score,
    rally_beside_call,
    score_message,
    stray_words,
    tells_rally_apart,
    with_point_served,
)
from bot.chat.scout_said import scout_said
from bot.chat.serving_said import server_named
from bot.chat.settled_topics import settled_topic
from bot.chat.side_outs_said import with_side_out
from bot.chat.slip_words import starts_corrected
from bot.chat.slots import find_slots
from bot.chat.starts_said import own_start, starter_said, tells_own_start
from bot.chat.stated_rates import stated_rates
from bot.chat.substitutes_said import substitute_said
from bot.chat.talk_or_question import small_talk, talk_or_question
from bot.chat.timeouts_said import timeout_before_question, timeout_said, timeouts_asked
from bot.chat.told_before import before_the_question, result_put_right
from bot.chat.told_first import told_first
from bot.chat.topic_question import CERTAIN, asking
from bot.chat.view import ChatView
from bot.chat.weather_beside import tells_weather
from bot.chat.who_writes import knowing_writer
from bot.chat.won_what import won_what
from bot.chat.zones_said import zone_said
from knowledge.cautions import is_emergency
from knowledge.complaints import complains
from knowledge.distress import distress_of
from knowledge.tactics.smalltalk import is_other_language
from knowledge.vocabulary import Topic
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
    if is_emergency(text):
        # Help comes first: such words are answered at once, never read or kept as a note.
        return (Question(text=text, topic=Topic.WEATHER_OR_BODY, confidence=CERTAIN),)
    if distress_of(text) is not None:
        return (Question(text=text, topic=Topic.RESET_HEAD, confidence=CERTAIN),)
    listed = listed_said(text, chat)
    if listed is not None:
        return (listed,)
    partner = None if chat.forwarded else partner_told(text, chat) or partner_in_passing(text, chat)
    if partner is not None:
        return (partner,)
    dictated = None if chat.forwarded else note_dictated(text, chat, _settled)
    if dictated is not None:
        return _read(dictated.text, dictated, chat) if dictated.asks else (_noted(dictated, chat),)
    message = read_message(text, chat)
    if is_declined(text, message.said):
        return (small_talk(text),)
    own_pair = None if chat.forwarded else own_pair_said(text, message.mentions)
    if own_pair is not None and all(is_ours(one, chat.ours) for one in own_pair.mentions):
        return (own_pair,)
    return _read(text, message, chat)


def rally_told(text: str, chat: ChatView) -> RallySaid | None:
    """The rally that a line of its own tells; None for anything else, whatever it might ask."""
    message = read_message(text, chat)
    found = None if message.asks or not message.said else _settled(text, message, chat)
    if isinstance(found, ScoreSaid) and found.won_by_us is not None:
        found = RallySaid(text=text, won_by_us=found.won_by_us)
    if not isinstance(found, RallySaid) or found.corrects:
        return None
    return found if found.understood else with_details(found, message, chat)


def _settled(text: str, message: Message, chat: ChatView) -> Understood | None:
    """What has one meaning by its form, in this order."""
    fixed: Understood | None = plays_on_asked(message, chat) or scout_said(message, chat)
    fixed = fixed or plan_said(message, chat) or break_talk_asked(message)
    fixed = fixed or zone_said(message) or schedule_said(message, chat)
    fixed = fixed or substitute_said(message, chat)
    fixed = fixed or asked_of_book(message, chat) or partner_trouble(message, chat)
    fixed = fixed or match_of_strangers(message, chat)
    fixed = fixed or disagreed(message, chat) or settled_topic(message)
    fixed = fixed or bench_said(message, chat) or settled_shape(message, chat)
    fixed = fixed or result_corrected(message, chat) or match_of_others(message, chat)
    fixed = fixed or follow_up(text, message.said, chat)
    fixed = fixed or places_weighed(message, chat) or change_said(message, chat)
    fixed = fixed or notes_dropped(message) or player_added(message)
    fixed = fixed or match_words(message, chat)
    return fixed or stated_rates(message, chat) or _fixed(message, chat)


def _read(text: str, message: Message, chat: ChatView) -> tuple[Understood, ...]:
    if not message.said:
        # Letters of another script leave no word of ours; signs and emoji leave no letter.
        return (small_talk(text) if is_other_language(text) else Unclear(text=text, offers=()),)
    opening = game_opening(message, chat)
    if opening:
        return opening
    beside = told_and_noted(message, chat, _settled)
    if beside:
        return beside
    fixed = note_put_right(message, chat) or _settled(text, message, chat)
    if isinstance(fixed, RallySaid) and not fixed.understood:
        fixed = with_details(fixed, message, chat)
    fixed = fixed or told_first(message, chat, _settled) or disputed_call(message, chat)
    if fixed is None:
        said = tuple(_heard(one) for one in talk_or_question(message, chat))
        said = (*said[:-1], put_clearly(said[-1], message, chat))
        told = tuple(weighed_note(message, chat) if one is message.note else one for one in said)
        return _with_told(with_offers(told, message, chat), message, chat)
    if isinstance(fixed, Question) and fixed.changes:
        return (fixed,)
    if isinstance(fixed, ResultSaid) and fixed.corrects:
        return (fixed,)
    if answers_who_serves(message.said, chat):
        return (fixed,)
    asked = question_beside(fixed, message, chat)
    if asked and _is_only_told_by_words(fixed) and asking(message, chat) >= ASKS_BESIDE:
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
    told = before.told
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
        case Unclear(text=text, slots=slots) if complains(text):
            topic = Topic.WEATHER_OR_BODY
            return Question(text=text, topic=topic, confidence=CERTAIN, slots=slots)
        case Question(topic=Topic.SMALLTALK_OR_UNKNOWN) if complains(said.text):
            return replace(said, topic=Topic.WEATHER_OR_BODY)
        case Question() if tells_weather(said):
            return replace(said, topic=Topic.WEATHER_OR_BODY)
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


def _fixed(message: Message, chat: ChatView) -> Understood | None:
    """What has a form of its own, in this order."""
    text, said, mentions = message.text, message.said, message.mentions
    if chat.forwarded or begins_as_note(said):
        return None
    undone = undo_said(text, said)
    if undone is not None:
        return undone
    if timeouts_asked(message):
        return TimeoutsAsked(text=text)
    format = game_target_said(message, chat) or format_told(message)
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
        or agreement_said(text, said)
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
        message.told.words,
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
    return "?" not in message.text and not stray_words(message.told.of_score)


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
        rally_ours = scored_beside(message.said) if rally_ours is None else rally_ours
        served = with_point_served(score, told, chat.format.scoring) if chat.match_on else score
        served = with_side_out(served, told, chat.format.scoring) if chat.match_on else served
        if served.score is not None:
            served = replace(served, score=after_lost_run(served.score, message.said))
        by, leads = server_named(message, chat), is_lead(message.told.line.text)
        return replace(served, rally_ours=rally_ours, served_by=by, leads=leads)
    return replace(score, mentions=named, corrects=_corrects(message))


def _corrects(message: Message) -> bool:
    """Whether the rally is told instead of the last one: "no wait, their rally"."""
    line = " ".join(word.folded for word in message.told.of_score)
    told = OUR_RALLY.search(line) or THEIR_RALLY.search(line)
    return told is not None and starts_corrected(line, told.start())


def _opens(message: Message) -> bool:
    """Whether the message opens with somebody's name, as notes do."""
    return bool(message.mentions) and message.mentions[0].span[0] <= message.said[0].span[0]


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
