"""Where to stand: by the rulebook at this score, or by the ball; both halves, asked one first.

The rule half names server, receiver and courts; knowledge.tactics.slide holds the other half.
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.advice import Advice, Choice, Confidence, MatchFact, Reason
from knowledge.dataclass import dataclass
from knowledge.game import (
    Discipline,
    GameFormat,
    GameState,
    Outcome,
    Places,
    Scoring,
    court_of_parity,
    outcomes,
    places,
    start,
)
from knowledge.regex import regex
from knowledge.situation import Formation, Situation
from knowledge.sources import COMMON_PRACTICE, RULEBOOK_2025, Source, SourceKind
from knowledge.tactics import slide, standing_picture
from knowledge.tactics.agreed_places import is_as_agreed
from knowledge.tactics.standing_movement import asks_for_movement
from knowledge.tactics.standing_names import Names, names_of
from knowledge.tactics.standing_subject import subject_of
from knowledge.tactics.standing_unsettled import unsettled
from knowledge.tactics.standing_words import POSITIONS_RULE, SERVER_RULE, capital, fitted, parity
from knowledge.vocabulary import BallKind, Side, Topic

AGREED = Source(kind=SourceKind.AGREED, citation="")

_WHO = regex(r"\bwho(?:s|'s|’s| is)? (?:serv\w*|receiv\w*|return\w*)|\bwhose (?:serve|turn)")
"""Words that ask for people first: the shortest answer keeps one reason."""


def advise(situation: Situation) -> Advice:
    """Who stands where at the score, or how to move with the ball, as the question is put."""
    if (partner := _PARTNER.search(_plain(situation.asked.words))) is not None:
        return _beside_partner(situation, serves=partner["serves"] is not None)
    if asks_for_movement(situation):
        return replace(slide.advise(situation), more=_rule_in_words(situation))
    return _by_rule(situation)


_PARTNER = regex(
    r"\bmy partner (?:is |has to )?(?:(?P<serves>serves?(?! first)|serving)|(?:returns?|returning|"
    r"receives?|receiving))\b"
)


def _plain(words: str) -> str:
    return " ".join(words.casefold().split())


def _beside_partner(situation: Situation, *, serves: bool) -> Advice:
    """The one who asks is the partner of whoever serves or receives, and free to stand anywhere."""
    now = _now(replace(situation, asked=replace(situation.asked, we_serve=serves)))
    at = places(now.game) if now.assumed is None and now.game.we_serve is serves else None
    court = f"on the {at.ours.bound_court.other}" if at else "on the other court"
    free = Reason(text="Only server and receiver are bound; you're free", source=POSITIONS_RULE)
    if serves:
        call = f"Stand {court}, back at the baseline."
        why = Reason(text="The return must bounce: stay back for it", source=RULEBOOK_2025)
        then = Reason(text="Move in together behind the third", source=COMMON_PRACTICE)
    else:
        call = f"Stand {court}, up at the kitchen line."
        why = Reason(text="Their third can't come before your return", source=RULEBOOK_2025)
        then = Reason(text="Watch the returner's ball, then cover middle", source=COMMON_PRACTICE)
    return Advice(
        topic=Topic.WHERE_TO_STAND,
        call=call,
        reasons=(free, why, then),
        assumed="You, while your partner serves." if serves else "You, while your partner returns.",
        confidence=Confidence.CLEAR,
        more=slide.in_words(situation),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Now:
    """The rally to be played, and what had to be assumed to name it."""

    game: GameState
    assumed: str | None


def _now(situation: Situation) -> _Now:
    game = situation.game
    asked_serve = situation.asked.we_serve
    if game is None:
        we_serve = asked_serve is not False
        first = start(GameFormat(), we_serve=we_serve)
        whose = "we serve" if we_serve else "they serve"
        return _Now(game=first, assumed=f"No score said: I took 0-0-2, {whose}.")
    if game.is_over:
        we_serve = True if game.we_started is None else not game.we_started
        following = start(game.format, we_serve=we_serve, lineup=game.lineup)
        whose = "we serve" if we_serve else "they serve"
        ended = f"{game.ours}-{game.theirs} ended that game"
        return _Now(game=following, assumed=f"{ended}: I took the next one, {whose}.")
    return _Now(game=game, assumed=None)


def _by_rule(situation: Situation) -> Advice:
    now = _now(situation)
    game = now.game
    names = names_of(situation, game)
    at = places(game)
    picture = standing_picture.by_rule(situation, game, names)
    if game.format.discipline is Discipline.SINGLES:
        call, reasons = _singles(game)
    elif at is None:
        call, reasons = unsettled(situation, game, names)
        reasons = _with_agreed_homes(reasons, situation, game)
    else:
        call, reasons = _settled(situation, game, names, at)
    return Advice(
        topic=Topic.WHERE_TO_STAND,
        call=call,
        reasons=reasons,
        assumed=now.assumed or _score_read(game),
        confidence=Confidence.CLEAR,
        choices=_choices(situation, game),
        picture=picture,
        more=(*_then(game, names), *slide.in_words(situation)),
    )


def _with_agreed_homes(
    reasons: tuple[Reason, ...], situation: Situation, game: GameState
) -> tuple[Reason, ...]:
    """Where an agreed stack ends up, before either case; the rule of parity makes room."""
    homes = standing_picture.agreed_homes(situation, game)
    if homes is None:
        return reasons
    return (Reason(text=homes, source=AGREED), *reasons[1:])


def _then(game: GameState, names: Names) -> tuple[str, ...]:
    """What the rally to come leads to, won and lost: the call, and who serves from where."""
    both = outcomes(game)
    return (
        f"Win it: {_next_serve(both.if_won, names)}.",
        f"Lose it: {_next_serve(both.if_lost, names)}.",
    )


def _next_serve(outcome: Outcome, names: Names) -> str:
    game = outcome.next
    if outcome.game_over:
        return f"the game is {'yours' if game.we_won else 'theirs'}, {game.ours}-{game.theirs}"
    pair = names.ours if game.we_serve else names.theirs
    starter = game.server_is_starter
    who = ("we" if game.we_serve else "they") if starter is None else pair.who(is_starter=starter)
    serves = "serve" if starter is None or who == "you" else "serves"
    court = f" from the {game.serving_court}" if game.serving_court else ""
    return f"{game.call}, {who} {serves}{court}"


def _score_read(game: GameState) -> str:
    whose = "we serve" if game.we_serve else "they serve"
    return f"At {game.call}, {whose}."


def _singles(game: GameState) -> tuple[str, tuple[Reason, ...]]:
    court = court_of_parity(game.serving_points)
    verb = "Serve from" if game.we_serve else "Receive on"
    why = f"The server's {game.serving_points} is {parity(game.serving_points)}: {court}"
    return f"{verb} the {court}.", (
        Reason(text=why, source=POSITIONS_RULE),
        Reason(text="The receiver stands diagonally across", source=POSITIONS_RULE),
    )


def _settled(
    situation: Situation, game: GameState, names: Names, at: Places
) -> tuple[str, tuple[Reason, ...]]:
    ours = at.ours
    bound = names.ours.who(is_starter=ours.bound_is_starter)
    other = names.ours.who(is_starter=not ours.bound_is_starter)
    verb = "Serve from" if game.we_serve else "Receive on"
    does = "serves from" if game.we_serve else "receives on"
    does = f"{does.split()[0].removesuffix('s')} from" if bound == "you" else does
    subject = subject_of(situation, names)
    to_subject: tuple[str, ...] = ()
    if subject is not None and subject.is_starter is ours.bound_is_starter:
        place = f"{verb} the {ours.bound_court}{subject.address}"
        to_subject = (f"{place}; {other} stands {ours.bound_court.other}.", f"{place}.")
    elif subject is not None:
        place = f"Stand {ours.bound_court.other}{subject.address}"
        to_subject = (f"{place}; {bound} {does} the {ours.bound_court}.", f"{place}.")
    call = fitted(
        *to_subject,
        f"{verb} the {ours.bound_court}, {bound}; {other} {ours.bound_court.other}.",
        f"{verb} the {ours.bound_court}, {bound}.",
        f"{verb} the {ours.bound_court}.",
    )
    why, across = _why_ours(game, names, ours.starter_court), _across(game, names, at)
    asks_who = _WHO.search(_plain(situation.asked.words)) is not None
    first = (across, why) if asks_who else (why, across)
    return call, (*first, _third(situation, game, names, at))


def _why_ours(game: GameState, names: Names, starter_court: Side) -> Reason:
    if game.format.scoring is Scoring.RALLY:
        points = game.serving_points
        whose = "Our" if game.we_serve else "Their"
        court = court_of_parity(points)
        text = f"{whose} {points} is {parity(points)}: the serve comes from the {court}"
        return Reason(text=text, source=POSITIONS_RULE)
    who = capital(names.ours.starter)
    text = f"{who} started right; our {game.ours} is {parity(game.ours)}: {starter_court}"
    return Reason(text=text, source=SERVER_RULE)


def _across(game: GameState, names: Names, at: Places) -> Reason:
    theirs = names.theirs.who(is_starter=at.theirs.bound_is_starter)
    does = "receives" if game.we_serve else "serves"
    where = f"diagonally across, on their {at.theirs.bound_court}"
    return Reason(text=f"{capital(theirs)} {does} {where}", source=POSITIONS_RULE)


def _third(situation: Situation, game: GameState, names: Names, at: Places) -> Reason:
    stack = standing_picture.stack_of(situation, game, names, at)
    other = names.ours.who(is_starter=not at.ours.bound_is_starter)
    if stack is None:
        are = "are" if other == "you" else "is"
        free = f"Only the {'server' if game.we_serve else 'receiver'} is bound; {other} {are} free"
        return Reason(text=free, source=POSITIONS_RULE)
    bound = names.ours.who(is_starter=at.ours.bound_is_starter)
    agreed = is_as_agreed(situation)
    if not stack.moves:
        which = "The stack you agreed" if agreed else "Your stack"
        return Reason(text=f"{which} needs no move at this score", source=POSITIONS_RULE)
    shot = "serve" if game.we_serve else "return"
    named = "Stack, as you agreed" if agreed else "Stack"
    text = f"{named}: {other} waits outside; after the {shot} {bound} goes {stack.bound_plays}"
    return Reason(text=text, source=POSITIONS_RULE)


def _choices(situation: Situation, game: GameState) -> tuple[Choice, ...]:
    topic = Topic.WHERE_TO_STAND
    other = Choice(
        label="We receive" if game.we_serve else "We serve",
        topic=topic,
        fact=MatchFact.WE_SERVE,
        value="no" if game.we_serve else "yes",
    )
    moving = Choice(
        label="Once they swing", topic=topic, fact=MatchFact.BALL_KIND, value=BallKind.DRIVE
    )
    if situation.formation is not None or game.format.discipline is Discipline.SINGLES:
        return (other, moving)
    stack = Choice(
        label="We stack",
        topic=topic,
        fact=MatchFact.FORMATION,
        value=Formation.STACK_ALWAYS,
    )
    return (other, stack, moving)


def _rule_in_words(situation: Situation) -> tuple[str, ...]:
    by_rule = _by_rule(situation)
    return (
        by_rule.call,
        *(f"{reason.text} ({reason.source})" for reason in by_rule.reasons),
        by_rule.assumed or "",
    )
