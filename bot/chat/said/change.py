"""What takes back or puts right what was understood."""

from __future__ import annotations

from bot.chat.said.mention import Mention
from knowledge.dataclass import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class UndoSaid:
    """Take back the last change, or put back what was taken back.

    `of_score`: a slip in the running match is meant ("oops"); `of_rally`: the rally counted last,
    with all that was told of it ("undo that, it was a let"); `of_note`: a note and nothing else
    ("delete my last note"). `everything` was asked for.
    """

    text: str
    redo: bool = False
    of_score: bool = False
    of_rally: bool = False
    of_note: bool = False
    everything: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class CorrectionSaid:
    """A correction of what was last understood: "no, the other one", "scratch that, Hale".

    `denied` is who was not meant ("not Tom, Mira"); `mentions` who was; `both`: it is true of two;
    `untrue`: it is not so at all ("no she isn't").
    """

    text: str
    mentions: tuple[Mention, ...] = ()
    denied: tuple[Mention, ...] = ()
    both: bool = False
    untrue: bool = False
