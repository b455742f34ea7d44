"""Taps of the running match; each names the match, and the log line or the game it counts on."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.answers import game_start, rallies, rally_details, rally_tags, scores, timeouts
from bot.chat.answers.desk import Desk
from bot.chat.payload import BadPayloadError, Tap, Verb, number_in
from bot.chat.reply import Reply
from bot.chat.said import SaidScore, ScoreSaid
from bot.chat.wording import wording
from knowledge.game import ScoreCall
from knowledge.vocabulary import PlayerId
from scouting_db.values import MatchId


def press_score(desk: Desk, tapped: Tap) -> Reply:
    """What a tap of the running match does; BadPayloadError for one we never wrote."""
    args = tapped.args
    if tapped.verb is Verb.SERVER:
        return game_start.serves_now(
            desk,
            player=PlayerId(number_in(args[0])),
            match=MatchId(number_in(args[1])),
            expected=number_in(args[2]),
        )
    if tapped.verb in _OF_A_RALLY:
        return _press_rally(desk, tapped)
    ours = _ours(args[0])
    match tapped.verb:
        case Verb.SERVE:
            number, game_no = MatchId(number_in(args[1])), number_in(args[2]) if args[2:] else 1
            return game_start.start_game(desk, we_serve=ours, match=number, game_no=game_no)
        case Verb.SIDES:
            return game_start.starts_right(
                desk,
                ours=ours,
                player=PlayerId(number_in(args[1])),
                match=MatchId(number_in(args[2])),
                game_no=number_in(args[3]),
            )
        case Verb.SCORE:
            return _score(desk, ours, args)
        case _:
            number, expected = MatchId(number_in(args[1])), number_in(args[2])
            if tapped.verb is Verb.RALLY:
                return rallies.count_rally(desk, ours=ours, match=number, expected=expected)
            return timeouts.call_timeout(desk, ours=ours, match=number, expected=expected)


_OF_A_RALLY = frozenset({Verb.ENDED, Verb.ENDED_BY, Verb.MEANT, Verb.TAG})


def _press_rally(desk: Desk, tapped: Tap) -> Reply:
    """What is told of a rally by tap, before it or after it."""
    *said, match, n = tapped.args
    number, line = MatchId(number_in(match)), number_in(n)
    if tapped.verb is Verb.TAG:
        return rally_tags.tag_next(desk, said[0], said[1], number, line)
    if tapped.verb is Verb.ENDED:
        if said[0] not in rally_details.TAPPED_ENDINGS:
            raise BadPayloadError(f"no end of a rally: {said[0]}")
        return rally_details.tell_ending(desk, said[0], number, line)
    player = PlayerId(number_in(said[0]))
    if tapped.verb is Verb.MEANT:
        return rally_details.tell_meant(desk, player, number, line)
    return rally_details.tell_whose(desk, player, number, line)


def _score(desk: Desk, ours: bool, args: Sequence[str]) -> Reply:
    """Whose a bare score was, as long as nothing has been counted since."""
    try:
        call = ScoreCall.parse(args[1])
    except ValueError:
        raise BadPayloadError(f"no score: {args[1]}") from None
    if number_in(args[2]) != desk.context.match:
        return Reply(text=wording("unclear.too_old"))
    said = ScoreSaid(text=args[1], score=SaidScore(call=call, we_serve=ours))
    return scores.answer_call(desk, MatchId(number_in(args[2])), said, number_in(args[3]))


def _ours(arg: str) -> bool:
    if arg not in ("us", "them"):
        raise BadPayloadError(f"us or them, not {arg}")
    return arg == "us"
