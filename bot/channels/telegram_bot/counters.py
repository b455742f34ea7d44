"""What a worker has done since it started, in numbers."""

from __future__ import annotations

from knowledge.dataclass import dataclass


@dataclass(slots=True)
class Counters:
    """Counted up by the event loop alone.

    `accepted` updates were stored, `repeated` had been before, `refused` requests were no update
    of ours. Of turns `handled` were done, `retried` failed and come again, `failed` were given up
    with an apology. `sent` messages were taken by the messenger.
    """

    accepted: int = 0
    repeated: int = 0
    refused: int = 0
    handled: int = 0
    retried: int = 0
    failed: int = 0
    sent: int = 0
