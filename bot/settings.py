"""Settings from the environment, parsed once at the start."""

from __future__ import annotations

import hmac
from collections.abc import Mapping
from dataclasses import field
from urllib.parse import urlsplit

from knowledge.dataclass import dataclass
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
    `webhook_url` is where the messenger reaches `seamwise serve`, which tells it so if `register`.
    """

    token: str | None = field(default=None, repr=False)
    database: str | None = None
    api_base: str = PUBLIC_ROOT
    log_level: str = "info"
    paced: bool = True
    allowed: tuple[str, ...] = ()
    webhook_url: str | None = None
    webhook_secret: str | None = field(default=None, repr=False)
    register: bool = True

    @property
    def secret_for_webhook(self) -> str:
        """The one given; else one made of the token, from which the token cannot be had: the same
        in every worker and at every start.
        """
        if self.webhook_secret is not None:
            return self.webhook_secret
        return hmac.digest((self.token or "").encode(), b"webhook secret", "sha256").hex()

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
            webhook_url=_webhook_url(environment),
            webhook_secret=_secret(environment.get("SEAMWISE_WEBHOOK_SECRET", "").strip()),
            register=_choice(environment, "SEAMWISE_REGISTER", ("on", "off"), "on") == "on",
        )


def _root(text: str) -> str:
    parts = urlsplit(text)
    if parts.scheme not in ("http", "https") or not parts.netloc:
        raise SettingsError(f"SEAMWISE_API_BASE is {text!r}; expected a root like {PUBLIC_ROOT}")
    return text.rstrip("/")


def _webhook_url(environment: Mapping[str, str]) -> str | None:
    """With https, as the public server wants it; another server may do without."""
    url = environment.get("SEAMWISE_WEBHOOK_URL", "").strip()
    if not url:
        return None
    public = not environment.get("SEAMWISE_API_BASE")
    parts = urlsplit(url)
    if parts.scheme not in (("https",) if public else ("http", "https")) or not parts.netloc:
        raise SettingsError(
            f"SEAMWISE_WEBHOOK_URL is {url!r}; expected an address like "
            "https://bot.example.org/telegram"
        )
    if parts.path in RESERVED_PATHS:
        raise SettingsError(
            f"SEAMWISE_WEBHOOK_URL ends in {parts.path}, where a page of ours is; "
            "choose another path, such as /telegram"
        )
    return url


RESERVED_PATHS = ("/health", "/ready")

_SECRET = regex(r"[A-Za-z0-9_-]{16,256}")


def _secret(text: str) -> str | None:
    """Bot API, setWebhook: 1 to 256 of these characters. Shorter than 16 could be guessed."""
    if not text:
        return None
    if not _SECRET.fullmatch(text):
        raise SettingsError(
            "SEAMWISE_WEBHOOK_SECRET cannot be used; expected 16 to 256 of the characters "
            "A-Z a-z 0-9 _ - (or leave it away: one is made from the token)"
        )
    return text


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
