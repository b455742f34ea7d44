"""Pictures that the messenger has already: sent again by its number, without their bytes."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping
from typing import Any

from knowledge.advice import Picture

KEPT_PICTURES = 256
"""Pictures whose number is kept, the one sent longest ago leaving. A guess: a tournament day's."""


class SentPictures:
    """The messenger's numbers of pictures that this bot has sent.

    Bot API, "Sending Files": a file that is stored on its servers is sent by its `file_id`, without
    a limit, and is not uploaded again; such a number is good for the one bot only.
    """

    def __init__(self) -> None:
        self._numbers: OrderedDict[Picture, str] = OrderedDict()

    def __len__(self) -> int:
        return len(self._numbers)

    def number_of(self, picture: Picture) -> str | None:
        """None for one that was not sent, or longest ago."""
        number = self._numbers.get(picture)
        if number is not None:
            self._numbers.move_to_end(picture)
        return number

    def sent(self, picture: Picture, answer: Mapping[str, Any]) -> None:
        """Keep what the answer to sendPhoto tells: the number of its largest size."""
        sizes = answer.get("photo") or ()
        if sizes:
            self._numbers[picture] = str(max(sizes, key=lambda one: one["width"])["file_id"])
            self._numbers.move_to_end(picture)
        while len(self._numbers) > KEPT_PICTURES:
            self._numbers.popitem(last=False)

    def forget(self, picture: Picture) -> None:
        """Its number is not taken any more."""
        self._numbers.pop(picture, None)
