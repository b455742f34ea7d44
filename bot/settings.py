"""Settings from the environment, parsed once at the start."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from urllib.parse import urlsplit

from knowledge.regex import regex

PUBLIC_ROOT = "https://api.telegram.org"

LOG_LEVELS = ("debug", "info", "warning", "error")

NO_TOKEN = """\
Seamwise needs a token to talk in the messenger.
Open a chat with @BotFather there, send /newbot, and pass the token it gives you:
  SEAMWISE_TOKEN=123456:ABC... seamwise telegram
Without a token you can talk here in the terminal: seamwise
"""


class SettingsError(ValueError):
    """A setting that cannot be used; the message names it and what was expected."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """What the environment says. The token is never shown.

    `database` None is the file in the user's data folder. `api_base` is the root of the Bot API
    server. `paced` keeps to the messenger's sending limits and to a pace of each user's own; off
    is for a test server only. `allowed` are ids of who may use the bot; empty is everybody.
    """

    token: str | None = field(default=None, repr=False)
    database: str | None = None
    api_base: str = PUBLIC_ROOT
    log_level: str = "info"
    paced: bool = True
    allowed: tuple[str, ...] = ()

    @classmethod
    def from_environment(cls, environment: Mapping[str, str]) -> Settings:
        """SettingsError for a value that cannot be used; an empty value counts as absent."""
        return cls(
            token=environment.get("SEAMWISE_TOKEN", "").strip() or None,
            database=environment.get("SEAMWISE_DATABASE") or None,
            api_base=_root(environment.get("SEAMWISE_API_BASE") or PUBLIC_ROOT),
            log_level=_choice(environment, "SEAMWISE_LOG", LOG_LEVELS, "info"),
            paced=_choice(environment, "SEAMWISE_PACE", ("on", "off"), "on") == "on",
            allowed=_ids(environment.get("SEAMWISE_ALLOW", "")),
        )


def _root(text: str) -> str:
    parts = urlsplit(text)
    if parts.scheme not in ("http", "https") or not parts.netloc:
        raise SettingsError(f"SEAMWISE_API_BASE is {text!r}; expected a root like {PUBLIC_ROOT}")
    return text.rstrip("/")


_ID = regex(r"-?\d{1,20}")


def _ids(text: str) -> tuple[str, ...]:
    """Ids apart by commas or blanks. A name is refused: it can change hands, an id cannot."""
    found = tuple(text.replace(",", " ").split())
    for one in found:
        if not _ID.fullmatch(one):
            raise SettingsError(
                f"SEAMWISE_ALLOW has {one!r}; expected numbers: a person's id, or a group's, which "
                "begins with a minus. Names can change hands. Whoever is not on the list and "
                "writes to the bot is told their number."
            )
    return found


def _choice(
    environment: Mapping[str, str], name: str, choices: tuple[str, ...], default: str
) -> str:
    value = (environment.get(name) or default).strip().lower()
    if value not in choices:
        raise SettingsError(f"{name} is {value!r}; expected one of {', '.join(choices)}")
    return value
