"""What has one meaning by its form: the readers of fixed forms, in the order they are asked."""

from __future__ import annotations

from bot.chat.announced_against import announced_against
from bot.chat.announced_round import match_of_a_round
from bot.chat.announced_strangers import match_of_strangers
from bot.chat.asked_of_book import asked_of_book
from bot.chat.ball_behind import ball_behind
from bot.chat.behind_asked import behind_asked
from bot.chat.bench_said import bench_said
from bot.chat.between_us import between_us
from bot.chat.both_told_of import both_told_of
from bot.chat.break_talk_asked import break_talk_asked
from bot.chat.changes_said import change_said
from bot.chat.counted_asked import counted_asked
from bot.chat.disagreed import disagreed
from bot.chat.fault_remembered import fault_remembered
from bot.chat.fixed_forms import fixed_form
from bot.chat.follow_ups import follow_up
from bot.chat.forget_asked import forget_asked
from bot.chat.full_names_told import full_name_told
from bot.chat.full_names_told_each import full_names_told_each
from bot.chat.head_goes_on import head_goes_on
from bot.chat.hit_at_us_asked import hit_at_us_told
from bot.chat.hurt_and_asked import hurt_and_asked
from bot.chat.hurt_awaited_asked import hurt_awaited_asked
from bot.chat.instead_asked import instead_asked
from bot.chat.introduced_first import watched
from bot.chat.match_of_others import match_of_others
from bot.chat.match_words import match_words, rally_put_right
from bot.chat.message import (
    Message,
    read_message,
)
from bot.chat.middle_told import middle_told
from bot.chat.nicknames_told import nickname_told
from bot.chat.noted_asked import noted_asked
from bot.chat.notes_dropped import notes_dropped
from bot.chat.of_myself_asked import of_myself_asked
from bot.chat.one_of_two_told import one_of_two_told
from bot.chat.own_shape import settled_shape
from bot.chat.own_substitute_said import own_substitute_said
from bot.chat.partner_crosses_asked import partner_crosses_asked
from bot.chat.partner_trouble import partner_trouble
from bot.chat.places_weighed import places_weighed
from bot.chat.plan_words import plan_said
from bot.chat.player_added import player_added
from bot.chat.plays_on_asked import plays_on_asked
from bot.chat.rally_clauses import with_details
from bot.chat.real_name_told import real_name_told
from bot.chat.reminders_said import schedule_said
from bot.chat.results_corrected import result_corrected
from bot.chat.said import (
    RallySaid,
    ScoreSaid,
    Understood,
)
from bot.chat.score_doubted import score_doubted
from bot.chat.score_questions import serve_after_asked
from bot.chat.scout_said import scout_said
from bot.chat.settled_topics import settled_topic
from bot.chat.side_answered import side_answered
from bot.chat.side_quarrel import side_quarrel
from bot.chat.spelling_told import spelling_told
from bot.chat.stated_rates import stated_rates
from bot.chat.struck_told import struck_told
from bot.chat.substitutes_said import substitute_said
from bot.chat.substitutes_told_of import substitute_told_of
from bot.chat.that_asked import that_asked
from bot.chat.topic_put_right import topic_put_right
from bot.chat.view import ChatView
from bot.chat.who_it_is_said import who_it_is
from bot.chat.wind_goes_on import wind_goes_on
from bot.chat.without_note_asked import without_note_asked
from bot.chat.write_down_said import write_down_said
from bot.chat.zones_said import zone_said


def settled(text: str, message: Message, chat: ChatView) -> Understood | None:
    """What has one meaning by its form, in this order."""
    fixed: Understood | None = write_down_said(text, message.said)
    fixed = fixed or spelling_told(message, chat) or real_name_told(message, chat)
    fixed = fixed or full_names_told_each(message, chat)
    fixed = fixed or hurt_awaited_asked(message, chat)
    fixed = fixed or plays_on_asked(message, chat) or scout_said(message, chat)
    fixed = fixed or watched(text, chat)
    fixed = fixed or plan_said(message, chat) or break_talk_asked(message)
    fixed = fixed or zone_said(message) or schedule_said(message, chat)
    fixed = fixed or serve_after_asked(message, chat)
    fixed = fixed or score_doubted(message, chat) or counted_asked(message, chat)
    fixed = fixed or asked_of_book(message, chat) or side_quarrel(message, chat)
    fixed = fixed or of_myself_asked(message, chat)
    fixed = fixed or noted_asked(message, chat) or without_note_asked(message, chat)
    fixed = fixed or struck_told(message, chat) or head_goes_on(message, chat)
    fixed = fixed or wind_goes_on(message, chat)
    fixed = fixed or hurt_and_asked(message, chat) or partner_trouble(message, chat)
    fixed = fixed or partner_crosses_asked(message, chat) or that_asked(message, chat)
    fixed = fixed or fault_remembered(message, chat) or hit_at_us_told(message, chat)
    fixed = fixed or match_of_strangers(message, chat) or announced_against(message, chat)
    fixed = fixed or match_of_a_round(message, chat) or both_told_of(message, chat)
    fixed = fixed or one_of_two_told(message, chat) or side_answered(message, chat)
    fixed = fixed or who_it_is(message, chat)
    fixed = fixed or disagreed(message, chat) or ball_behind(message, chat)
    fixed = fixed or middle_told(message, chat) or between_us(message, chat)
    fixed = fixed or instead_asked(message, chat) or settled_topic(message)
    fixed = fixed or substitute_said(message, chat) or substitute_told_of(message, chat)
    fixed = fixed or own_substitute_said(message, chat)
    fixed = fixed or bench_said(message, chat) or settled_shape(message, chat)
    fixed = fixed or result_corrected(message, chat) or match_of_others(message, chat)
    fixed = fixed or follow_up(text, message.said, chat)
    fixed = fixed or topic_put_right(message, chat)
    fixed = fixed or places_weighed(message, chat) or behind_asked(message, chat)
    fixed = fixed or change_said(message, chat)
    fixed = fixed or forget_asked(message, chat)
    fixed = fixed or rally_put_right(message, chat)
    fixed = fixed or notes_dropped(message, chat) or player_added(message)
    fixed = fixed or nickname_told(message, chat)
    fixed = fixed or match_words(message, chat)
    fixed = fixed or stated_rates(message, chat) or fixed_form(message, chat)
    return fixed or full_name_told(message, chat)


def rally_told(text: str, chat: ChatView) -> RallySaid | None:
    """The rally that a line of its own tells; None for anything else, whatever it might ask."""
    message = read_message(text, chat)
    found = None if message.asks or not message.said else settled(text, message, chat)
    if isinstance(found, ScoreSaid):
        won = found.rally_ours if found.side_out else found.won_by_us
        found = None if won is None else RallySaid(text=text, won_by_us=won)
    if not isinstance(found, RallySaid) or found.corrects:
        return None
    return found if found.understood else with_details(found, message, chat)
