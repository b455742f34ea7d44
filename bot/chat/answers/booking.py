"""The book and the chat themselves: who plays, who we are, modes, agreements, /start and /help."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.chat.answers.day_results import day_told
from bot.chat.answers.desk import Desk, undo_button
from bot.chat.answers.formats import format_words
from bot.chat.answers.games_told import games_so_far
from bot.chat.answers.imports import export
from bot.chat.answers.last_meeting import last_meeting_told
from bot.chat.answers.lead_told import lead_told
from bot.chat.answers.names import ask_which, settled
from bot.chat.answers.newcomers import add_newcomers, capitalised, pair_up_them
from bot.chat.answers.no_match import no_match
from bot.chat.answers.notes_dropped import drop_notes
from bot.chat.answers.notes_shown import show_notes
from bot.chat.answers.of_people import manage_people
from bot.chat.answers.our_pair import our_pair
from bot.chat.answers.our_pairs import our_pairs
from bot.chat.answers.own_rates import drop_rates, set_base_rates
from bot.chat.answers.rally_tags import switch
from bot.chat.answers.renamed import rename
from bot.chat.answers.results import last_match
from bot.chat.answers.review import review
from bot.chat.answers.review_asked import reviewed_or_met
from bot.chat.answers.score_held import score_held
from bot.chat.answers.scoreboard import scoreboard
from bot.chat.answers.scout_card import scout
from bot.chat.answers.scratched import told_anew
from bot.chat.answers.serve_asked import ask_again, open_call
from bot.chat.answers.when_we_play import when_we_play
from bot.chat.format_asked import OF_FORMAT
from bot.chat.games_asked import OF_GAMES
from bot.chat.lead_asked import OF_LEAD
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.said import AgreementSaid, BookSaid, BookVerb
from bot.chat.score_doubted import OF_DOUBT
from bot.chat.wording import wording
from knowledge.regex import regex
from knowledge.vocabulary import Mode

EXAMPLES = 3
PAIR = 2
SHOWN_PLAYERS = 20


def manage(desk: Desk, said: BookSaid) -> Reply:
    """What a command or its words ask for."""
    desk.trace |= {"verb": said.verb}
    match said.verb:
        case BookVerb.START:
            return _start(desk)
        case BookVerb.HELP:
            return Reply(text=wording("help.text").strip())
        case BookVerb.MANY_NOTES:
            return Reply(text=wording("help.many_notes").strip())
        case BookVerb.WHO:
            return _players(desk)
        case BookVerb.OUR_PAIR:
            return our_pair(desk, said)
        case BookVerb.OUR_PAIRS:
            return our_pairs(desk)
        case BookVerb.ADD_PLAYER:
            return add_newcomers(desk, said.words)
        case BookVerb.PAIR:
            return pair_up_them(desk, said)
        case BookVerb.RENAME_PLAYER | BookVerb.ADD_NICKNAME:
            return _about_player(desk, said)
        case BookVerb.SHOW_NOTES:
            return show_notes(desk, said)
        case BookVerb.DROP_NOTES:
            return told_anew(desk, said) or drop_notes(desk, said)
        case BookVerb.MODE:
            return set_mode(desk, said.words)
        case BookVerb.LOG_ONLY:
            return _log_only(desk)
        case BookVerb.SCORE:
            return _score(desk, said.words)
        case BookVerb.NEXT:
            return no_match(desk)
        case BookVerb.WHEN:
            return when_we_play(desk)
        case BookVerb.REVIEW:
            return reviewed_or_met(desk, said)
        case BookVerb.DAY_RECORD:
            return day_told(desk) or review(desk)
        case BookVerb.LAST_MEETING:
            return last_meeting_told(desk, said)
        case BookVerb.SCOUT:
            return scout(desk, said)
        case BookVerb.TAG_RALLIES | BookVerb.STOP_TAGGING:
            return switch(desk, on=said.verb is BookVerb.TAG_RALLIES)
        case BookVerb.BASE_RATES:
            return set_base_rates(desk, said)
        case BookVerb.OWN_RATES:
            return drop_rates(desk, said)
        case BookVerb.EXPORT:
            return export(desk, said.words)
        case _:
            return manage_people(desk, said)


def example_text(desk: Desk, number: int) -> str:
    """The example question of a /start button, about whom this chat knows.

    KeyError for a number we never offered.
    """
    them = desk.names(desk.context.theirs)
    if len(them) != PAIR:
        return wording(f"example.{number}")
    return wording(f"example_known.{number}").format(one=them[0], other=them[1])


def _start(desk: Desk) -> Reply:
    examples = [
        Button(label=example_text(desk, number), payload=tap(Verb.EXAMPLE, number))
        for number in range(1, EXAMPLES + 1)
    ]
    return Reply(text=wording("start.text").strip(), buttons=rows(examples))


def _score(desk: Desk, words: str) -> Reply:
    """The score of the running match, and the taps that count on; or its finished games."""
    match = desk.context.match
    if words == OF_FORMAT:
        return Reply(text=wording("format.asked").format(format=format_words(desk.format())))
    if match is None:
        return last_match(desk)
    if words == OF_GAMES:
        return games_so_far(desk, match)
    if words == OF_LEAD:
        return lead_told(desk, match)
    if words.startswith(OF_DOUBT):
        return score_held(desk, match, other=words.removeprefix(OF_DOUBT).strip())
    if (asked := open_call(desk)) is not None:
        return ask_again(desk, asked)
    text, buttons = scoreboard(desk, match, ask_starters=True)
    return Reply(text=text, buttons=rows(buttons), about=("match", match))


def _players(desk: Desk) -> Reply:
    ours = [row.name for row in desk.view.roster if row.ours]
    names = [row.name for row in desk.view.roster if not row.ours]
    if not ours and not names:
        return Reply(text=wording("book.no_players"))
    lines = [wording("book.us").format(names=", ".join(ours))] if ours else []
    if names:
        shown = ", ".join(names[:SHOWN_PLAYERS])
        more = f" and {len(names) - SHOWN_PLAYERS} more" if len(names) > SHOWN_PLAYERS else ""
        lines.append(wording("book.players").format(names=shown + more))
    return Reply(text="\n".join(lines))


_INTO = regex(r"(?:\s+(?:to|as|into)\b|\s*(?::|=|->|→|,))\s*", re.IGNORECASE)


def _new_name(said: BookSaid) -> str:
    """What stands behind the player's name in "mori to Kenji Mori"; empty without any.

    "Rename okafor chidi o" does not tell where the old name ends, if that may be two words.
    """
    typed = next((one.typed for one in said.mentions if not one.pronoun), "")
    words = said.words.strip(" .!")
    into = _INTO.search(words)
    if into is not None:
        return words[into.end() :]
    if not words.lower().startswith(typed.lower()):
        return words
    return words[len(typed) :].strip() if len(typed.split()) == 1 else ""


def _about_player(desk: Desk, said: BookSaid) -> Reply:
    is_renamed = said.verb is BookVerb.RENAME_PLAYER
    mentions = said.mentions[:1] if is_renamed else said.mentions  # the new name is nobody's yet
    players = settled(mentions)
    if players is None:
        return ask_which(desk, said.text, mentions)
    if not players:
        return Reply(text=wording("name.whom"))
    player = players[0]
    desk.context = desk.context.looking_at(player)
    old = desk.view.name_of(player)
    if said.verb is BookVerb.RENAME_PLAYER:
        new = capitalised(_new_name(said))
        if not new:
            return Reply(text=wording("book.rename_how").format(old=old))
        change = rename(desk, player, new)
        text = wording("book.renamed").format(old=old, new=new)
    else:
        nickname = _new_name(said)
        if not nickname:
            return Reply(text=wording("book.nickname_how").format(name=old))
        desk.book.add_alias(player, nickname)
        change = desk.record("nickname", {"player": player, "words": nickname}, {})
        text = wording("book.nickname").format(nickname=nickname, name=old)
    desk.changed()
    return Reply(text=text, buttons=rows([undo_button(change)]))


def set_mode(desk: Desk, words: str) -> Reply:
    """Switch how much is said; without a mode, show the three as buttons."""
    wanted = words.strip().lower()
    if wanted not in {*Mode}:
        buttons = [Button(label=mode.value, payload=tap(Verb.MODE, mode)) for mode in Mode]
        return Reply(text=wording(f"book.mode_{desk.context.mode}"), buttons=rows(buttons))
    desk.context = replace(desk.context, mode=Mode(wanted))
    return Reply(text=wording(f"book.mode_{wanted}"))


def _log_only(desk: Desk) -> Reply:
    desk.context = replace(desk.context, log_only=not desk.context.log_only)
    return Reply(text=wording("book.log_only_on" if desk.context.log_only else "book.log_only_off"))


def agree(desk: Desk, said: AgreementSaid) -> Reply:
    """What our pair settled: it counts from now on."""
    pair = desk.pair_of(desk.ours)
    if pair is None:
        return Reply(text=wording("agreement.no_pair"))
    desk.book.agree(pair, said.key, said.value, said.text)
    change = desk.record(
        "agree",
        {"pair": pair, "key": said.key.value, "value": said.value, "words": said.text},
        {},
    )
    desk.changed()
    desk.trace |= {"agreement": {"key": said.key.value, "value": said.value}}
    return Reply(
        text=wording("agreement.stored").format(words=f"{said.key.label}: {said.value}"),
        buttons=rows([undo_button(change)]),
    )
