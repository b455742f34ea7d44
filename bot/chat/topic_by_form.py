"""Topics that a reader of its own settles: rules, time-outs, our crash, which of them."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from bot.chat.all_at_one_asked import asks_all_at_one
from bot.chat.asked_by_the_way import (
    asks_bounce_or_volley,
    asks_if_windy,
    asks_who_smashes,
    wants_the_plan,
)
from bot.chat.first_server_asked import asks_first_of_us
from bot.chat.heat_of_the_moment import asks_of_shouting, rages_at_referee, wants_a_head
from bot.chat.hit_at_us_asked import asks_of_our_hip, asks_of_our_pop_ups
from bot.chat.message import Message
from bot.chat.named_line import NAME, named_line
from bot.chat.next_rally_asked import asks_for_a_break, asks_if_it_goes, asks_to_take_one
from bot.chat.own_crash import asks_our_crash
from bot.chat.ruled_incident import asks_of_landing_in
from bot.chat.rules_by_form import asks_of_rules
from bot.chat.rules_in_a_hurry import asks_if_ok, asks_when_ends_change
from bot.chat.score_questions import asks_ends_at, asks_how_at, asks_worth_at
from bot.chat.speed_ups_asked import asks_where_they_speed_up, asks_whom_to_speed_up_at
from bot.chat.stalling_asked import asks_of_stalling
from bot.chat.their_drives_asked import asks_of_their_drives
from bot.chat.timeouts_said import asks_what_to_say, tells_what_is_left
from bot.chat.vary_asked import vary_asked
from bot.chat.weather_beside import tells_of_blowing
from bot.chat.which_of_them import which_of_them
from bot.chat.whose_turn_asked import asks_of_the_wrong_place, asks_whose_turn
from bot.chat.win_by_asked import asks_win_by
from knowledge.regex import regex
from knowledge.rulebook.asked_plainly import rule_asked_plainly
from knowledge.rulebook.broken_paddle import only_tells_of_broken_paddle
from knowledge.rulebook.newcomers import rule_of_a_newcomer
from knowledge.rulebook.told_apart import (
    asks_of_feet_first,
    asks_of_line_judges,
    asks_of_medical,
    asks_who_should_serve,
)
from knowledge.rulebook.told_of_rally import asks_of_a_hurt_rally, tells_of_a_bounced_ball
from knowledge.rulebook.told_people import asks_of_talk_across, asks_to_take_back
from knowledge.rulebook.touching import tells_their_court
from knowledge.rulebook.volleyed_too_soon import tells_of_a_volley_too_soon
from knowledge.rulebook.whose_point import asks_only_whose
from knowledge.tactics.hurt_opponent import asks_if_fair
from knowledge.tactics.our_poach import asks_of_our_poach, tells_of_their_poach
from knowledge.vocabulary import Topic

_HABIT_LIKELY = regex(
    r"(?:(?:so|ok|and) )*(?:(?:whats|what is|what are|any) )?(?:the )?"
    r"(?:(?:chances?|odds|likelihood)(?: (?:that|of|for|is))?|how likely(?: is(?: it)?)?(?: that)?"
    r"|how often(?: (?:do|does|will|would))?)"
    r" (?:they|he|she)(?: (?:will|would|is|are|to|going|even|always|ever|really))*"
    r" (?:poach|lob|crash|ernie|stack|speed|drive|bang|drop|slice|leave|attack|counter|switch)\w*"
    r"(?: (?:up|it|us|me|again|now|next|the|our|middle|thirds?|returns?|balls?|a|lot))*"
)

_LOB_INTO_THE_SUN = regex(
    rf"(?:(?:so|ok|and|but) )*(?:(?:should|can|shall|do|does) )?(?:i|we|{NAME}|my partner)"
    r" (?:(?:want(?:s|ed)?|would like|likes?|plans?|trying|tries|thinks we should|says(?: we)?) )?"
    r"(?:wanna |to )*(?:lob|lobbing)\b(?: \w+){0,4} sun(?:ny)?\b"
    r"(?: (?:side|end|more|a lot|smart|good idea|good|yes|no|or not|right|ok|worth it|thoughts?))*"
)
"""`imke wants to lob the sun side, smart?`: a lob of ours is weighed, not who takes which end."""

_BAD_AT = regex(
    rf"(?:(?:so|ok|and) )*(?:whats|what is|what) (?:is )?{NAME} (?:so |really |most |actually )?"
    r"(?:bad|weak|good|strong|worst|best|poor|great) (?:at|in|with)(?: (?:then|anyway|again))*"
)
"""`whats soren bad at`: of a partner too the book is asked."""

_PAIRS_WITH = regex(
    rf"(?:(?:so|ok|and) )*whom? (?:should|could|would|can|do|does) (?:{NAME}|i|we)"
    r" (?:play|pair|partner|team)(?: up)?(?: best)? with(?: (?:next|best|today|then|tomorrow))*"
)


_WHOM_WE_SERVE = regex(
    r"(?:(?:so|ok|and|then|also) )*(?:who|whom|which (?:one|player|of they|of them))"
    r" (?:(?:do|should|shall|would|will|can|am|are|is it best) )?(?:i|we|to)(?: be| now)*"
    r" (?:serve|serving|aim (?:my|our|the|we|a) serves?)(?: it)? (?:to|at)"
    r"(?: (?:now|here|next|first|then|today|more|most))*"
)
"""`who do we serve to`: whom the serve is for; whom they serve is told by the score."""

_SAFE = r"(?:safe(?:st|r)?|surest|most reliable|highest percentage)"
_SAFE_SERVE = regex(
    r"(?:(?:so|ok|and|we|us|they|them|serve|serving|lead|up|down|at|all|game|match|point|\d+) )*"
    rf"(?:(?:whats|what is|which is|is there|whats my best|need|want|give me|tell me) "
    rf"(?:(?:the|a|my|our) )*{_SAFE}|(?:(?:my|our|the) )?(?:safest|surest)) serves?"
    r"(?: (?:here|now|then|to (?:hit|make|use|they|him|her)|for (?:me|us)|at this score|i have"
    r"|we have|vs they))*"
)
"""`9-9-2 us whats the safe serve`: which serve, not how much to risk at that score."""

_TELL_OF_THE_MIDDLE = regex(
    r"(?:(?:so|ok|and) )*(?:what|how) (?:do|should|shall|can|must|could) (?:i|we) "
    rf"(?:tell|say to|agree with) (?:{NAME}|him|her|them|my partner)"
    r"(?: now)? (?:about|on|for|of) (?:the )?(?:middle|mid|seam)(?: balls?)?(?: now)?"
)
"""`what shall i tell bram about the middle`: whose it is, which is what to say."""

_FELL = regex(
    r"(?:(?:ok|so|and|oh|ugh|ouch|ow|help|sorry|wait) )*"
    r"(?:(?:i|my partner|partner) )?(?:just |have )*"
    r"(?:fell|tripped|tumbled|slipped and fell|stumbled and fell|took a (?:fall|tumble))"
    r"(?: (?:over|down|hard|badly|again|backwards|flat))*"
    r" (?:going|running|chasing|reaching|diving|lunging|sprinting|backpedal\w*|back ?pedal\w*"
    r"|when|while|trying|getting|hitting|on|over|after|for)(?: \w+){0,8}"
)
"""`i fell going for the lob`: of a fall, whatever shot it was for."""

_GAPS = regex(
    r"(?:(?:so|ok|and) )*"
    r"(?:what (?:else )?(?:(?:do|does|have) (?:you|we|i|the book) (?:still |yet )?not"
    r"|dont (?:you|we|i)|(?:you|we|i) (?:still )?dont|is it (?:you|we) dont) know"
    r"|what(?:s| is)? (?:still )?(?:missing|unknown|not known))"
    rf"(?: yet)? (?:about|of|on|in|for)(?: (?:{NAME}|and|n|them|him|her|these|two|yet|still))*"
)
"""What to find out is what the book does not know of them."""

_RATES_USED = regex(
    r"(?:(?:so|ok|and|but) )*(?:what|which|whose) "
    r"(?:(?:win |rally |serve |our |my )*(?:rates?|numbers?|percent(?:age)?s?|figures?))"
    r" (?:(?:are|do|did|have|is) )?(?:you|u|that|it) (?:use|using|used|take|taking|took|assume"
    r"|assuming|go by|going by|reckon with|based on|work with|working with)"
    r"(?: (?:now|for (?:us|that|this|the (?:chances?|odds|game|match))|here|then))*"
)
"""`what rates are you using`: the chances say so in their first reason."""


def topic_by_form(message: Message) -> Topic | None:
    """The topic of the first reader that knows the message."""
    found = next((topic for knows, topic in _READERS if knows(message)), None)
    return found or vary_asked(message) or which_of_them(message.told.words)


def _asks_a_rule(message: Message) -> bool:
    readers = (
        tells_their_court,
        asks_of_medical,
        asks_of_feet_first,
        asks_of_line_judges,
        asks_who_should_serve,
        asks_of_a_hurt_rally,
        tells_of_a_bounced_ball,
        asks_to_take_back,
        asks_of_talk_across,
        asks_only_whose,
        only_tells_of_broken_paddle,
        _tells_of_a_volley,
    )
    text = message.text
    is_new = (rule_of_a_newcomer(text) or rule_asked_plainly(text)) is not None
    return is_new or any(reader(message.text) for reader in readers) or asks_of_rules(message)


_ASKS_MORE = regex(r"\b(?:and|n|plus|also) (?:where|who|whom|what|how|when|which)\b")


def _tells_of_a_volley(text: str) -> bool:
    """A serve or return volleyed; what is asked with it is cut off and read first."""
    return tells_of_a_volley_too_soon(text) and _ASKS_MORE.search(text.lower()) is None


def _asks_a_rule_by_form(message: Message) -> bool:
    line = " ".join(word.folded for word in message.said)
    return asks_if_ok(line) or asks_when_ends_change(line)


def _asks_our_crash(message: Message) -> bool:
    return asks_our_crash(" ".join(word.folded for word in message.told.words))


def _asks_of_our_poach(message: Message) -> bool:
    """In the words as typed, as the page reads them; a name may be one of theirs who does it."""
    line = " ".join(word.folded for word in message.told.words)
    return asks_of_our_poach(message.text) and not tells_of_their_poach(line)


def _asks_whom_we_serve(message: Message) -> bool:
    return (
        _WHOM_WE_SERVE.fullmatch(" ".join(word.folded for word in message.told.words)) is not None
    )


def _asks_safe_serve(message: Message) -> bool:
    return _SAFE_SERVE.fullmatch(" ".join(word.folded for word in message.told.words)) is not None


def _asks_if_they_do(message: Message) -> bool:
    """Whether it asks how likely a habit of theirs is: the book knows that, not the score."""
    return _HABIT_LIKELY.fullmatch(" ".join(word.folded for word in message.told.words)) is not None


def _asks_what_they_lack(message: Message) -> bool:
    return _BAD_AT.fullmatch(named_line(message.said, message.mentions)) is not None


def _asks_whom_to_pair(message: Message) -> bool:
    return _PAIRS_WITH.fullmatch(named_line(message.said, message.mentions)) is not None


def _weighs_a_lob(message: Message) -> bool:
    line = named_line(message.said, message.mentions)
    return "?" in message.text and _LOB_INTO_THE_SUN.fullmatch(line) is not None


def _asks_what_is_not_known(message: Message) -> bool:
    return _GAPS.fullmatch(named_line(message.said, message.mentions)) is not None


def _asks_what_to_tell_of_the_middle(message: Message) -> bool:
    return _TELL_OF_THE_MIDDLE.fullmatch(named_line(message.said, message.mentions)) is not None


def _tells_of_a_fall(message: Message) -> bool:
    return _FELL.fullmatch(" ".join(word.folded for word in message.said)) is not None


def _tells_of_blowing(message: Message) -> bool:
    return tells_of_blowing(" ".join(word.folded for word in message.said))


def _asks_for_rates(message: Message) -> bool:
    return _RATES_USED.fullmatch(" ".join(word.folded for word in message.said)) is not None


def _asks_if_fair(message: Message) -> bool:
    return asks_if_fair(message.text)


_READERS: Final[tuple[tuple[Callable[[Message], bool], Topic], ...]] = (
    (asks_first_of_us, Topic.PAIR_UP),
    (asks_of_stalling, Topic.RULES_QUESTION),
    (_asks_whom_we_serve, Topic.AIM_SERVE),
    (asks_whose_turn, Topic.WHERE_TO_STAND),
    (asks_of_the_wrong_place, Topic.RULES_QUESTION),
    (_asks_safe_serve, Topic.AIM_SERVE),
    (_asks_a_rule, Topic.RULES_QUESTION),
    (asks_of_landing_in, Topic.RULES_QUESTION),
    (_asks_a_rule_by_form, Topic.RULES_QUESTION),
    (wants_a_head, Topic.AIM_ATTACK),
    (rages_at_referee, Topic.RESET_HEAD),
    (asks_of_shouting, Topic.RESET_HEAD),
    (asks_for_a_break, Topic.TIMEOUT_NOW),
    (asks_to_take_one, Topic.TIMEOUT_NOW),
    (asks_if_it_goes, Topic.WIN_CHANCE),
    (_asks_what_to_tell_of_the_middle, Topic.COVER_MIDDLE),
    (asks_what_to_say, Topic.ADJUST),
    (tells_what_is_left, Topic.TIMEOUT_NOW),
    (asks_win_by, Topic.RULES_QUESTION),
    (_asks_if_fair, Topic.WEATHER_OR_BODY),
    (_tells_of_a_fall, Topic.WEATHER_OR_BODY),
    (_tells_of_blowing, Topic.WEATHER_OR_BODY),
    (asks_of_their_drives, Topic.ANSWER_PATTERN),
    (_asks_our_crash, Topic.THIRD_SHOT),
    (_asks_of_our_poach, Topic.BEING_TARGETED),
    (_asks_if_they_do, Topic.OPPONENT_REPORT),
    (asks_whom_to_speed_up_at, Topic.AIM_ATTACK),
    (asks_where_they_speed_up, Topic.OPPONENT_REPORT),
    (_asks_what_they_lack, Topic.OPPONENT_REPORT),
    (asks_of_our_hip, Topic.ANSWER_PATTERN),
    (asks_of_our_pop_ups, Topic.ADJUST),
    (_asks_whom_to_pair, Topic.PAIR_UP),
    (_weighs_a_lob, Topic.LOB),
    (_asks_what_is_not_known, Topic.PROBE),
    (asks_all_at_one, Topic.WHOM_TO_TARGET),
    (_asks_for_rates, Topic.WIN_CHANCE),
    (asks_worth_at, Topic.RISK_AT_SCORE),
    (asks_how_at, Topic.RISK_AT_SCORE),
    (asks_ends_at, Topic.RULES_QUESTION),
    (wants_the_plan, Topic.GAME_PLAN),
    (asks_if_windy, Topic.WEATHER_OR_BODY),
    (asks_bounce_or_volley, Topic.TAKE_OR_LET_BOUNCE),
    (asks_who_smashes, Topic.COVER_MIDDLE),
)
