"""From what was understood to replies: each kind to its answer, questions together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby

from bot.chat.answers import (
    booking,
    coaching,
    corrections,
    formats,
    game_start,
    matches,
    notes,
    pool_standing,
    pools,
    rallies,
    reminders,
    score_remarks,
    scores,
    timeouts,
    undo_words,
    video,
)
from bot.chat.answers.announced_first import held_for_announced, held_taken_back
from bot.chat.answers.clock_zone import take_zone
from bot.chat.answers.coachs_pairs import of_other_pair
from bot.chat.answers.comparing import compare
from bot.chat.answers.costs import what_costs
from bot.chat.answers.desk import Desk
from bot.chat.answers.drills import drill_for
from bot.chat.answers.explaining import explain_last
from bot.chat.answers.handed_back import of_play
from bot.chat.answers.leak_list import review_by_leak
from bot.chat.answers.list_pages import next_page
from bot.chat.answers.match_over import one_game_told
from bot.chat.answers.note_put_right import put_right
from bot.chat.answers.opponents_put_right import strangers_announced
from bot.chat.answers.plan_pages import tell_plan
from bot.chat.answers.questions import answer_asked
from bot.chat.answers.rally_details import take_detail
from bot.chat.answers.rally_strangers import with_strangers
from bot.chat.answers.result_corrected import take_or_correct
from bot.chat.answers.retelling import retell
from bot.chat.answers.runs import ask_of_several
from bot.chat.answers.score_asked import kept_by_tap, of_the_match, only_chances_asked
from bot.chat.answers.scoreboard import score_buttons
from bot.chat.answers.serve_asked import open_call
from bot.chat.answers.several import answer_several
from bot.chat.answers.topic_unclear import ask_topic
from bot.chat.answers.write_down import nothing_waits, taken_down
from bot.chat.asked import Asked
from bot.chat.one_reply import brief, joined, undoing_apart, undoing_what
from bot.chat.render import offer_buttons, with_buttons
from bot.chat.reply import Button, Reply
from bot.chat.said import (
    AgreementSaid,
    BookSaid,
    BookVerb,
    CoachSaid,
    CompareAsked,
    CorrectionSaid,
    DetailSaid,
    FormatTold,
    ListAsked,
    ListedVerb,
    MatchMoved,
    MatchSaid,
    NoteSaid,
    PlanSaid,
    PoolAsked,
    PoolSaid,
    PoolVerb,
    Question,
    RallySaid,
    RemarkSaid,
    ReminderSaid,
    ResultSaid,
    RetellSaid,
    ScoreRemark,
    ScoreSaid,
    ServerSaid,
    StarterSaid,
    TimeoutSaid,
    TimeoutsAsked,
    Unclear,
    Understood,
    UndoSaid,
    VideoSaid,
    WhySaid,
    WriteDownSaid,
    ZoneSaid,
)
from bot.chat.said_once import said_once
from bot.chat.understand import understand
from bot.chat.wording import wording
from knowledge.vocabulary import Topic

_TOLD = (ScoreSaid, RallySaid, ResultSaid, TimeoutSaid)


def acted(desk: Desk, understood: Sequence[Understood]) -> list[Reply]:
    """The replies in order; questions that follow each other are answered in one."""
    if (other := of_other_pair(desk, understood)) is not None:
        return [_act(desk, other)]
    told = [one for one in understood if isinstance(one, _TOLD)]
    asked = [one for one in understood if isinstance(one, Question | Unclear)]
    if told and asked and len(told) + len(asked) == len(understood):
        return [_answered_as_it_stands(desk, told, asked)]
    noted = [one for one in understood if isinstance(one, NoteSaid)]
    told_so = (*told, *(one for one in understood if isinstance(one, RemarkSaid)))
    if told_so and noted and len(told_so) + len(asked) + len(noted) == len(understood):
        return [_told_and_noted(desk, told_so, noted, asked)]
    if len(understood) > 1 and all(isinstance(one, ScoreSaid | StarterSaid) for one in understood):
        return [_act(desk, one) for one in understood][-1:]  # the last tells how it stands
    replies: list[Reply] = []
    for asks_something, group in groupby(understood, lambda one: isinstance(one, Question)):
        if asks_something:
            questions = [one for one in group if isinstance(one, Question)]
            replies.append(_answered(desk, questions))
        else:
            replies += [_act(desk, one) for one in group]
    if len(replies) > 1 and not told and _asks_score(understood[-1]):
        replies = [joined([*replies[:-1], brief(replies[-1])])]
    return said_once(replies)


def _asks_score(said: Understood) -> bool:
    return isinstance(said, BookSaid) and said.verb is BookVerb.SCORE


def _told_and_noted(
    desk: Desk,
    told: Sequence[Understood],
    noted: Sequence[NoteSaid],
    asked: Sequence[Question | Unclear],
) -> Reply:
    """One message for a result and the note that came with it; the answer knows of both."""
    kept = [undoing_apart(_act(desk, one), wording("undo_note")) for one in noted]
    if asked:
        return joined([_answered_as_it_stands(desk, told, asked), *kept])
    return joined([*(_act(desk, one) for one in told), *kept])


def _answered(desk: Desk, asked: Sequence[Question | Unclear]) -> Reply:
    """The answer to all of them, or what an unclear one may ask about."""
    questions = [one for one in asked if isinstance(one, Question)]
    if not questions:
        return joined([_act(desk, one) for one in asked])
    answer = coaching.for_whom(desk, answer_several(desk, questions))
    return with_buttons(answer, _rally_told(desk, questions))


def _rally_told(desk: Desk, questions: Sequence[Question]) -> list[Button]:
    """The tap that counts what was told before the question, where that may be a rally."""
    match = desk.context.match
    won = next((one.may_count for one in questions if one.may_count is not None), None)
    if won is None or match is None or not _is_playing(desk):
        return []
    ours, theirs, *_ = score_buttons(match, desk.log().lines + 1)
    return [ours if won else theirs]


def _answered_as_it_stands(
    desk: Desk, told: Sequence[Understood], asked: Sequence[Question | Unclear]
) -> Reply:
    """One message for a score told with a question: the answer, by the match as it stands now, and
    under it how it stands. Two would make the phone buzz twice for one rally.
    """
    if not _is_playing(desk) and not any(isinstance(one, ResultSaid) for one in told):
        answer = _answered(desk, asked)
        if only_chances_asked(told, asked):
            return with_buttons(answer, kept_by_tap(desk, told))
        return joined([answer, *(brief(_act(desk, one)) for one in told)])
    stands = [brief(_act(desk, one)) for one in told]
    is_settled = open_call(desk) is None
    answer = _answered(desk, [of_the_match(one) for one in asked] if is_settled else asked)
    return joined([answer, *stands])


def _act(desk: Desk, understood: Understood) -> Reply:
    understood = of_play(understood)
    held = held_for_announced(desk, understood)
    if held is not None:
        return held
    match understood:
        case Question():
            return answer_several(desk, [understood])
        case NoteSaid():
            desk.context = replace(desk.context, asked_last=False)
            put = put_right(desk, understood)
            return put or with_strangers(desk, understood, notes.take(desk, understood))
        case ScoreSaid():
            reply = scores.take_score(desk, understood)
            return with_buttons(reply, offer_buttons(understood.may_ask))
        case ResultSaid():
            return take_or_correct(desk, understood)
        case MatchSaid(then=rest) if rest:
            return _announced_and_noted(desk, understood)
        case MatchSaid():
            return reminders.take_more_of_match(desk, understood) or matches.announce(
                desk, understood
            )
        case MatchMoved():
            return reminders.take_move(desk, understood)
        case ReminderSaid():
            return reminders.take_reminder(desk, understood)
        case ZoneSaid():
            return take_zone(desk, understood)
        case FormatTold():
            return one_game_told(desk, understood) or formats.take_format(desk, understood)
        case TimeoutsAsked():
            return timeouts.timeouts_left(desk)
        case RallySaid():
            return strangers_announced(desk, understood) or rallies.take_rally(desk, understood)
        case DetailSaid():
            return take_detail(desk, understood) or _otherwise(desk, understood)
        case StarterSaid():
            return game_start.take_starter(desk, understood)
        case ServerSaid():
            return game_start.take_server(desk, understood)
        case RemarkSaid(remark=ScoreRemark.SEVERAL_RALLIES):
            return ask_of_several(desk, understood)
        case RemarkSaid():
            return score_remarks.take_remark(desk, understood)
        case TimeoutSaid():
            return timeouts.take_timeout(desk, understood)
        case AgreementSaid():
            return booking.agree(desk, understood)
        case UndoSaid():
            return held_taken_back(desk) or undo_words.take_back(desk, understood)
        case WhySaid():
            return explain_last(desk)
        case PlanSaid():
            return tell_plan(desk, understood)
        case RetellSaid():
            return retell(desk, understood)
        case WriteDownSaid():
            note = taken_down(desk)
            return nothing_waits() if note is None else _act(desk, note)
        case CorrectionSaid():
            return corrections.correct(desk, understood)
        case PoolSaid():
            return pools.take_pool(desk, understood)
        case PoolAsked(verb=PoolVerb.STANDING | PoolVerb.THROUGH):
            return pool_standing.asked_how(desk, understood.verb)
        case PoolAsked() | BookSaid(verb=BookVerb.NEXT):
            return pool_standing.next_match(desk)
        case ListAsked(verb=ListedVerb.MORE):
            return next_page(desk)
        case ListAsked(verb=ListedVerb.DRILL, about=leak):
            return drill_for(leak)
        case ListAsked():
            return review_by_leak(desk, for_student=understood.verb is ListedVerb.FOR_STUDENT)
        case CompareAsked():
            return compare(desk, understood)
        case CoachSaid():
            return coaching.take_pair(desk, understood) or _asked_for_them(desk, understood)
        case VideoSaid():
            return video.take_video(desk, understood)
        case BookSaid(verb=BookVerb.REVIEW, words="costs"):
            return what_costs(desk, understood.text)
        case BookSaid(verb=BookVerb.REVIEW, words="lost") if _is_playing(desk):
            return answer_asked(desk, Asked(topic=Topic.ADJUST, text=understood.text))
        case BookSaid(then=rest) if rest:
            told = booking.manage(desk, replace(understood, then=""))
            more = acted(desk, understand(rest, chat=desk.chat_view()))
            return joined([told, *(undoing_what(one, rest) for one in more)])
        case BookSaid():
            return booking.manage(desk, understood)
        case Unclear():
            return ask_topic(desk, understood)


def _announced_and_noted(desk: Desk, said: MatchSaid) -> Reply:
    """The match, and the note behind it; whoever is asked about is noted on once that is known."""
    asked = desk.context.pending_count
    told = matches.announce(desk, said)
    if desk.context.pending_count > asked:
        return told
    noted = acted(desk, understand(said.then, chat=desk.chat_view()))
    return joined([told, *(undoing_what(one, said.then) for one in noted)])


def _is_playing(desk: Desk) -> bool:
    """Whether a match is under way, and not only announced."""
    return desk.context.match is not None and desk.log().is_begun


def _asked_for_them(desk: Desk, said: CoachSaid) -> Reply:
    """What is asked for a pair, once it is that pair that speaks."""
    understood = understand(said.asks, chat=desk.chat_view())
    asked = [one for one in understood if not isinstance(one, CoachSaid)]
    if not asked:
        return coaching.spoken_for(desk)
    return coaching.with_new(desk, joined(acted(desk, asked)))


def _otherwise(desk: Desk, said: DetailSaid) -> Reply:
    """What would be about the last rally, where something else was done since."""
    view = replace(desk.chat_view(), tells_of_rally=False)
    return joined(acted(desk, understand(said.text, chat=view)))
