"""From advice to a reply: the call, why, what to do now, the number, what would change it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from types import MappingProxyType

from bot.chat.one_screen import lines_left_out, reasons_left_out, to_one_screen
from bot.chat.payload import Verb, tap
from bot.chat.render_mix import change_line
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.advice import Advice, Choice, Confidence, Reason
from knowledge.odds_words import of_hundred
from knowledge.sources import SourceKind
from knowledge.vocabulary import Topic

BUTTONS_PER_ROW = 3
ROW_CHARACTERS = 30
"""Labels in one row share a phone's width; longer ones take a row of their own."""

MOST_CHOICES = 3
"""Other branches offered under an answer: more would push the answer off the screen."""

MORE_CHOICES = MappingProxyType({Topic.ADJUST: 4})
"""What hurts has four names, and one of them missing would be the one that is looked for."""

SHORT_REASONS = 1
"""In match mode an answer is the call and its best reason."""


def render(
    advice: Advice,
    *,
    against: Sequence[str] = (),
    short: bool = False,
    keeps_read: bool = False,
    offers: Sequence[Topic] = (),
    faults: Sequence[str] = (),
) -> Reply:
    """The reply to a question. `against` names the pair it speaks about, `offers` other topics.

    `keeps_read`: a short answer too says which score it is about. `faults` tell, right under
    the call, what of the question could not be taken as said.
    """
    shown = shown_of(advice, against=against, short=short, keeps_read=keeps_read, faults=faults)
    lines = _lines(shown, against=against, short=short, faults=faults)
    most = MORE_CHOICES.get(advice.topic, MOST_CHOICES)
    choices = [_choice_button(choice) for choice in advice.choices[:most]]
    if advice.mix is not None and advice.mix.change_up is not None:
        choices.append(Button(label=wording("mix.exact"), payload=tap(Verb.MIX, advice.topic)))
    if advice.more or advice.evidence or leaves_out(advice, shown):
        choices.append(Button(label=wording("why"), payload=tap(Verb.WHY, advice.topic)))
    offered = {choice.topic for choice in advice.choices if choice.fact is None}
    others = [topic for topic in offers if topic not in offered]
    return Reply(
        text="\n".join(lines),
        buttons=rows([*choices, *offer_buttons(others)]),
        picture=None if short else advice.picture,
    )


def shown_of(
    advice: Advice,
    *,
    against: Sequence[str] = (),
    short: bool = False,
    keeps_read: bool = False,
    faults: Sequence[str] = (),
) -> Advice:
    """What of the advice the reply says; the arguments are those of `render`."""
    if short:
        return _shortened(advice, keeps_read=keeps_read)
    return to_one_screen(
        advice,
        lambda one: _lines(one, against=against, short=False, faults=faults),
    )


def _shortened(advice: Advice, *, keeps_read: bool) -> Advice:
    """The call, its best reason and what to do now."""
    body = advice.lines or advice.reasons
    kept = body[: _short(body)]
    return replace(
        advice,
        reasons=() if advice.lines else kept,
        lines=kept if advice.lines else (),
        number=None,
        unless=None,
        assumed=advice.assumed if keeps_read else None,
    )


def _lines(
    advice: Advice,
    *,
    against: Sequence[str],
    short: bool,
    faults: Sequence[str],
) -> list[str]:
    """The reply line by line."""
    lines = [advice.call, *faults, *map(reason_line, advice.lines or advice.reasons)]
    if advice.now:
        lines.append(wording("now").format(what=advice.now))
    lines += _closing(advice) if not short else ()
    vs = wording("vs").format(names="/".join(against))
    is_named = not against or _names_all("\n".join(lines), against)
    if advice.assumed:
        # The pair stands beside what was assumed, to spare a line.
        lines.append(advice.assumed if is_named else f"{advice.assumed} {vs[0].upper()}{vs[1:]}")
    if advice.caution:
        lines.append(advice.caution)
    if not advice.assumed and not is_named:
        lines.append(vs)
    return lines


def with_buttons(reply: Reply, more: Sequence[Button]) -> Reply:
    """The reply with buttons in rows of their own below."""
    return replace(reply, buttons=(*reply.buttons, *rows(more))) if more else reply


def _short(body: Sequence[Reason]) -> int:
    """How many reasons a short answer has: the user's own numbers never stand alone."""
    leads_with_said = bool(body) and body[0].source.kind is SourceKind.SAID
    return SHORT_REASONS + leads_with_said


def render_more(
    advice: Advice, *, shown: Advice | None = None, behind: Sequence[str] = ()
) -> Reply:
    """The reasons in full, for the "why" button, and the lines of what stands behind them.

    `shown` is what the reply before said: what it left out and `more` has not, comes first.
    """
    more = list(advice.more) or [_told(reason) for reason in advice.lines or advice.reasons]
    shown = shown or advice
    lines = [
        *(_told(one) for one in reasons_left_out(advice, shown) if not _is_in(one.text, more)),
        *more,
        *(line for line in lines_left_out(advice, shown) if not _is_in(line, more)),
        *advice.others,
    ]
    return Reply(text="\n".join([advice.call, *(f"· {line}" for line in lines), *behind]))


def leaves_out(advice: Advice, shown: Advice) -> bool:
    """Whether the shown form says less than there is to say."""
    return bool(reasons_left_out(advice, shown) or lines_left_out(advice, shown))


def _is_in(text: str, lines: Sequence[str]) -> bool:
    return any(text in line for line in lines)


def reason_line(reason: Reason) -> str:
    """A reason and its source in brackets; a line without a source of its own stands alone."""
    return f"· {_told(reason)}"


def _told(reason: Reason) -> str:
    return f"{reason.text} ({_short_source(reason)})"


def _short_source(reason: Reason) -> str:
    if reason.source.kind in (SourceKind.COMPUTED, SourceKind.COMMON_PRACTICE):
        return reason.source.kind.value
    return str(reason.source)


def _closing(advice: Advice) -> Iterable[str]:
    if advice.mix is not None:
        yield change_line(advice.mix, call=advice.call)
    if advice.number:
        yield advice.number
    if advice.confidence is Confidence.TOSS_UP:
        yield wording("toss_up")
    if advice.is_one_of_several:
        yield wording("several").format(count=of_hundred(advice.numbers["p_best"]))
    if advice.unless:
        yield advice.unless


def _names_all(text: str, names: Sequence[str]) -> bool:
    return all(name in text for name in names)


def _choice_button(choice: Choice) -> Button:
    about = () if choice.about is None else (choice.about,)
    if choice.fact is None:
        payload = tap(Verb.ASK, choice.topic, *about)
    else:
        payload = tap(Verb.SETTLE, choice.topic, choice.fact, choice.value or "yes", *about)
    return Button(label=choice.label, payload=payload, topic=choice.topic)


def offer_buttons(topics: Sequence[Topic]) -> list[Button]:
    """Buttons that ask another topic, in a player's words."""
    return [
        Button(label=wording(f"topic.{topic}"), payload=tap(Verb.ASK, topic), topic=topic)
        for topic in topics
    ]


def rows(buttons: Sequence[Button]) -> tuple[tuple[Button, ...], ...]:
    """Buttons in rows that a phone shows without cutting their labels."""
    laid: list[list[Button]] = []
    for button in buttons:
        row = laid[-1] if laid else []
        taken = sum(len(one.label) for one in row) + len(button.label)
        if laid and len(row) < BUTTONS_PER_ROW and taken <= ROW_CHARACTERS:
            row.append(button)
        else:
            laid.append([button])
    return tuple(tuple(row) for row in laid)
