"""Lists longer than a screen: page by page, the next one behind "more"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.answers.desk import Desk
from bot.chat.payload import Verb, tap
from bot.chat.render import rows
from bot.chat.reply import Button, Reply
from bot.chat.shown_list import Listing
from bot.chat.wording import wording
from knowledge.phone_screen import MOST_LIST_LINES, wrapped

Block = Sequence[str]
"""Lines that belong together."""


def pages_of(blocks: Sequence[Block]) -> tuple[tuple[str, ...], ...]:
    """The blocks on as few screens as they fit in, in order; one too long is cut between lines."""
    pages: list[list[str]] = [[]]
    for block in blocks:
        if pages[-1] and wrapped([*pages[-1], *block]) > MOST_LIST_LINES:
            pages.append([])
        for line in block:
            if pages[-1] and wrapped([*pages[-1], line]) > MOST_LIST_LINES:
                pages.append([])
            pages[-1].append(line)
    return tuple(map(tuple, pages))


def show_page(
    desk: Desk,
    listing: Listing,
    blocks: Sequence[Block],
    buttons: Sequence[Button] = (),
    *,
    first: Block = (),
) -> Reply:
    """That page of the list; "more", typed or tapped, is the next one while there is one.

    `first` is a page of its own before the blocks.
    """
    pages = pages_of(blocks)
    pages = (tuple(first), *pages) if first else pages
    at = min(listing.page, len(pages) - 1)
    desk.context = replace(desk.context, listing=replace(listing, page=at))
    more = []
    if at + 1 < len(pages):
        payload = tap(Verb.PAGE, listing.what, listing.of, at + 1)
        more = [Button(label=wording("list.more"), payload=payload)]
    return Reply(text="\n".join(pages[at]), buttons=rows([*more, *buttons]))


def within_screen(head: Block, body: Block, tail: Block, *, left_out: str) -> list[str]:
    """Head and tail whole, and as much of the body as fits; `left_out` says how much does not."""
    for shown in range(len(body), -1, -1):
        rest = len(body) - shown
        said = [left_out.format(count=rest)] if rest else []
        lines = [*head, *body[:shown], *said, *tail]
        if wrapped(lines) <= MOST_LIST_LINES:
            return lines
    return [*head, *tail]
