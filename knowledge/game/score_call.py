"""A score as the server calls it: parsed from, and printed as, `serving-receiving-server`."""

from __future__ import annotations

from knowledge.dataclass import dataclass
from knowledge.regex import regex

_CALL = regex(r"(\d{1,3})\s*[-–:/, ]\s*(\d{1,3})(?:\s*[-–:/, ]\s*(\d))?")


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreCall:
    """Serving side's points, receiving side's, and in doubles side-out the server (4.B.6)."""

    serving: int
    receiving: int
    server: int | None = None

    @classmethod
    def parse(cls, text: str) -> ScoreCall:
        """The call written as `6-4-2` or `6-4`; ValueError names what was typed."""
        found = _CALL.fullmatch(text.strip())
        if found is None:
            raise ValueError(f"a score reads like 6-4-2, not {text!r}")
        server = int(found[3]) if found[3] else None
        return cls(serving=int(found[1]), receiving=int(found[2]), server=server)

    def __str__(self) -> str:
        numbers = [self.serving, self.receiving]
        if self.server is not None:
            numbers.append(self.server)
        return "-".join(map(str, numbers))
