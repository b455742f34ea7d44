"""The exact mix behind an answer, and a draw from it."""

from __future__ import annotations

from bot.chat.answers.desk import Desk
from bot.chat.answers.explaining import advice_again
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.render_mix import mix_text
from bot.chat.reply import Button, Reply
from bot.chat.wording import wording
from knowledge.effects import OptionId
from knowledge.mixing import drawn
from knowledge.vocabulary import Topic


def show_mix(desk: Desk, topic: Topic) -> Reply:
    """The shares, what varying is worth, and what our pattern shows."""
    advice = advice_again(desk, topic)
    if isinstance(advice, Reply):
        return advice
    if advice.mix is None:
        return Reply(text="\n".join([advice.call, wording("mix.none")]))
    return Reply(text=mix_text(advice.mix), buttons=rows([_pick_button(topic)]))


def pick(desk: Desk, topic: Topic) -> Reply:
    """The next one, drawn from the mix: one imperative line."""
    advice = advice_again(desk, topic)
    if isinstance(advice, Reply):
        return advice
    if advice.mix is None:
        return Reply(text="\n".join([advice.call, wording("mix.none")]))
    by_option = {OptionId(one.option): one for one in advice.mix.shares}
    shares = {option: one.share for option, one in by_option.items()}
    option = drawn(shares, desk.uniform())
    desk.trace |= {"picked": option}
    return Reply(text=by_option[option].call, buttons=rows([_pick_button(topic)]))


def _pick_button(topic: Topic) -> Button:
    return Button(label=wording("mix.pick"), payload=tap(Verb.PICK, topic), topic=topic)
