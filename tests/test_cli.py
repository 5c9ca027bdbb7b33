"""The command line: engines in and out, a clinic's set-up, and mistakes in one line."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from coachbot.cli import main
from coachbot.store import Store, new_key


@pytest.fixture
def clinic(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A clinic's environment in a folder of its own."""
    monkeypatch.setenv("COACHBOT_DATA", str(tmp_path))
    monkeypatch.setenv("COACHBOT_KEY", new_key())
    return tmp_path


FAMILY = """
child = "Noor"
bedtime = 19:30:00
zone = "America/Edmonton"
[screening]
born = 2017-05-03
swallowing_disorder = false
too_ill = false
candy_allergy = false
neck = "cleared"
confirmed_by = "Dr Imani Osei"
"""


def test_a_clinic_is_set_up_by_commands(
    clinic: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Database, clinician, family, export."""
    monkeypatch.setenv("COACHBOT_TELEGRAM_TOKEN", "1:x")
    (clinic / "noor.toml").write_text(FAMILY, encoding="utf-8")

    assert main(["database", "upgrade"]) == 0
    assert main(["clinician", "add", "Dr Imani Osei", "--channel", "telegram", "--address", "12"]) == 0
    assert "password" in capsys.readouterr().out
    assert main(["enrol", str(clinic / "noor.toml")]) == 0
    told = capsys.readouterr().out
    assert "caution: neck" in told
    assert "parent\t" in told
    assert main(["export", str(clinic / "study")]) == 0
    assert (clinic / "study" / "swallows.csv").exists()
    assert main(["voice", "proof", str(clinic / "proof")]) == 0
    assert (clinic / "proof" / "proof-fr.html").exists()


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["enrol", "missing.toml"], "missing.toml"),
        (["clinician", "add", "X", "--channel", "telegram"], "--address"),
        (["orders", "--positions", "left,nose", "--nights", "3", "--seed", "1"], "nose"),
        (["serve"], "COACHBOT_TELEGRAM_TOKEN"),
        (["clinician", "add", "X", "--channel", "telegram", "--address", "1"], "COACHBOT_TELEGRAM_TOKEN"),
    ],
)
def test_a_mistake_is_one_line_that_says_what_to_do(
    clinic: Path, capsys: pytest.CaptureFixture[str], arguments: list[str], words: str
) -> None:
    """No traceback; exit code 1."""
    assert main(["database", "upgrade"]) == 0
    assert main(arguments) == 1

    told = capsys.readouterr().err
    assert words in told
    assert "Traceback" not in told
    assert clinic.exists()


@pytest.mark.parametrize(
    ("channel", "address", "words"),
    [
        ("telegram", "@imani", "the chat's own number"),
        ("sms", "555 0177", "its country's code"),
        ("sms", "+1 555 0177 0177 0177", "its country's code"),
    ],
)
def test_an_address_that_a_channel_cannot_write_to_is_refused(
    clinic: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
    channel: str,
    address: str,
    words: str,
) -> None:
    """No clinician is kept whom no alert would reach."""
    for name, value in (("TELEGRAM_TOKEN", "1:x"), ("SMS_HOST", "127.0.0.1"), ("SMS_NUMBER", "12345")):
        monkeypatch.setenv(f"COACHBOT_{name}", value)
    assert main(["database", "upgrade"]) == 0
    assert main(["clinician", "add", "X", "--channel", channel, "--address", address]) == 1

    assert words in capsys.readouterr().err
    store = Store.open(f"sqlite:///{clinic / 'coachbot.sqlite3'}", os.environ["COACHBOT_KEY"])
    assert store.run(lambda tx: tx.clinicians.all()) == []
    store.close()


def test_a_missing_key_and_a_misspelt_setting_are_named(
    clinic: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Settings fail loudly."""
    monkeypatch.setenv("COACHBOT_TELEGRAM_TOKN", "1:x")
    assert main(["database", "upgrade"]) == 1
    assert "COACHBOT_TELEGRAM_TOKN" in capsys.readouterr().err
    monkeypatch.delenv("COACHBOT_TELEGRAM_TOKN")
    monkeypatch.delenv("COACHBOT_KEY")
    assert main(["database", "upgrade"]) == 1
    assert "COACHBOT_KEY" in capsys.readouterr().err
    assert clinic.exists()


def test_a_store_that_was_never_made_says_which_command_makes_it(
    clinic: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Before anything is served."""
    monkeypatch.setenv("COACHBOT_TELEGRAM_TOKEN", "1:x")

    assert main(["serve"]) == 1
    assert "coachbot database upgrade" in capsys.readouterr().err
    assert clinic.exists()


@pytest.mark.parametrize(
    ("command", "good", "key"),
    [
        (["triage"], {"lang": "en", "sender": "parent", "text": "she is choking"}, "level"),
        (["read"], {"lang": "en", "order": ["left", "center"], "asking": "all", "text": "4 3"}, "ratings"),
        (["favourite"], {"positions": ["left", "center"], "swallows": []}, "probability"),
    ],
)
def test_an_engine_answers_line_by_line(command: list[str], good: dict[str, object], key: str) -> None:
    """In the order given; a bad line gives an error and the rest goes on."""
    lines = [json.dumps({"id": 1, **good}), "no json", json.dumps({"id": 3, **good})]
    run = [sys.executable, "-m", "coachbot", *command]
    done = subprocess.run(run, input="\n".join(lines) + "\n", capture_output=True, text=True, check=True)

    first, second, third = map(json.loads, done.stdout.splitlines())
    assert (first["id"], third["id"]) == (1, 3)
    assert key in first
    assert second["error"]
    assert first == {**third, "id": 1}


def test_orders_are_one_json_list_of_nights(capsys: pytest.CaptureFixture[str]) -> None:
    """Each a list of positions."""
    assert main(["orders", "--positions", "left,right,up", "--nights", "6", "--seed", "5"]) == 0

    nights = json.loads(capsys.readouterr().out)
    assert len(nights) == 6
    assert all(sorted(night) == ["left", "right", "up"] for night in nights)
