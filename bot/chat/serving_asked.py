"""Who serves, by the words of a question about a score."""

from __future__ import annotations

import re

from bot.chat.score_words import RECEIVE, THEY, WE

SERVING = r"serv(?:ing|in|es?|s)?"
"""However quickly it is typed."""

STANDS = r"(?:where|how) (?:do |should |shall |does )?(?:i|we) (?:stand|line up|start)"
"""Who asks where to stand receiving doesn't serve."""


def said_serving(line: str) -> bool | None:
    """Whether we serve, from the words of a question; None if it does not say."""
    if re.search(
        rf"\b(?:{WE} (?:are |re )?{SERVING}|our serve|my serve|im serving"
        rf"|before i serve)\b",
        line,
    ):
        return True
    found = re.search(
        rf"\b(?:{WE} (?:are |re )?{RECEIVE}|{THEY} (?:are |re )?{SERVING}|their serve"
        rf"|im receiving|{STANDS} (?:(?:when|while|if|for|to|on|the) )*"
        r"(?:receiv\w*|returning|return))\b",
        line,
    )
    return False if found else None
