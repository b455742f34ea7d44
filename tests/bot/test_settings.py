"""Settings: what is absent, what is refused, what is never shown."""

from __future__ import annotations

import pytest

from bot.settings import PUBLIC_ROOT, Settings, SettingsError


def test_an_empty_environment_gives_the_usual_settings() -> None:
    settings = Settings.from_environment({})
    assert settings == Settings()
    assert settings.api_base == PUBLIC_ROOT
    assert settings.paced


def test_empty_values_count_as_absent() -> None:
    names = ("TOKEN", "DATABASE", "API_BASE", "LOG", "PACE", "ALLOW")
    assert Settings.from_environment({f"SEAMWISE_{name}": "" for name in names}) == Settings()


def test_the_root_loses_its_last_slash() -> None:
    settings = Settings.from_environment({"SEAMWISE_API_BASE": "http://127.0.0.1:8081/"})
    assert settings.api_base == "http://127.0.0.1:8081"


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("SEAMWISE_API_BASE", "api.example.org"),
        ("SEAMWISE_API_BASE", "ftp://example.org"),
        ("SEAMWISE_LOG", "loud"),
        ("SEAMWISE_PACE", "fast"),
        ("SEAMWISE_ALLOW", "@mira"),
        ("SEAMWISE_ALLOW", "mira"),
    ],
)
def test_a_refusal_names_the_setting_and_the_value(name: str, value: str) -> None:
    with pytest.raises(SettingsError, match=name) as refused:
        Settings.from_environment({name: value})
    assert value in str(refused.value)


def test_the_token_is_not_shown() -> None:
    assert "secret" not in repr(Settings(token="1:secret"))


@pytest.mark.parametrize("text", ["11,-100500", "11 -100500", " 11 ,\n-100500,"])
def test_who_may_use_the_bot_is_a_list_of_ids(text: str) -> None:
    assert Settings.from_environment({"SEAMWISE_ALLOW": text}).allowed == ("11", "-100500")
