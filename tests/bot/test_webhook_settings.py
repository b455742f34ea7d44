"""What `seamwise serve` reads from its environment, and what it says without its extra.

Source of the limits: Bot API, setWebhook: "HTTPS URL"; secret_token "1-256 characters. Only
characters A-Z, a-z, 0-9, _ and - are allowed" (read in third parties' copies of the page).
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from bot.settings import Settings, SettingsError

URL = "https://bot.example.org/telegram"


def test_what_is_absent_stays_absent() -> None:
    settings = Settings.from_environment(
        {"SEAMWISE_WEBHOOK_URL": " ", "SEAMWISE_WEBHOOK_SECRET": ""}
    )
    assert settings.webhook_url is None
    assert settings.webhook_secret is None
    assert settings.register


def test_what_is_given_is_taken() -> None:
    secret = "Az09_-" * 3
    settings = Settings.from_environment(
        {
            "SEAMWISE_WEBHOOK_URL": URL,
            "SEAMWISE_WEBHOOK_SECRET": secret,
            "SEAMWISE_REGISTER": "off",
        }
    )
    assert settings.webhook_url == URL
    assert settings.secret_for_webhook == secret
    assert not settings.register
    assert secret not in repr(settings)


@pytest.mark.parametrize("secret", ["short", "x" * 257, "with blanks in it!", "ünicode" * 4])
def test_a_secret_that_the_messenger_refuses_or_that_is_guessed_is_refused(secret: str) -> None:
    with pytest.raises(SettingsError, match="16 to 256") as refused:
        Settings.from_environment({"SEAMWISE_WEBHOOK_SECRET": secret})
    assert secret not in str(refused.value)


@pytest.mark.parametrize("url", ["http://bot.example.org/x", "bot.example.org", "https://"])
def test_the_public_server_wants_https(url: str) -> None:
    with pytest.raises(SettingsError, match="SEAMWISE_WEBHOOK_URL"):
        Settings.from_environment({"SEAMWISE_WEBHOOK_URL": url})


def test_a_server_of_one_s_own_may_do_without() -> None:
    url = "http://127.0.0.1:8080/telegram"
    own = {"SEAMWISE_API_BASE": "http://127.0.0.1:8081", "SEAMWISE_WEBHOOK_URL": url}
    assert Settings.from_environment(own).webhook_url == url


def test_without_the_extra_it_says_what_to_install() -> None:
    """Whichever of the two is missing, in one process for both: it loads for seconds."""
    code = """
import sys
from bot.__main__ import main
for missing in ("uvicorn", "starlette"):
    sys.modules[missing] = None
    print(main(["serve"]))
    del sys.modules[missing]
"""
    ended = subprocess.run(
        [sys.executable, "-c", code],
        cwd=Path(__file__).parents[2],
        capture_output=True,
        text=True,
        timeout=60,
        check=True,
    )
    assert ended.stdout.split() == ["2", "2"]
    assert ended.stderr.count("pip install '.[webhook]'") == 2
    assert "Traceback" not in ended.stderr
