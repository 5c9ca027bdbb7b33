"""The README says what the code does: its settings, its commands, its first paragraph."""

import re
import tomllib
from pathlib import Path

import pytest

from coachbot.cli import _parser
from coachbot.service.enrolling import family
from coachbot.settings import PREFIX, SETTINGS

README = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")


def test_every_setting_stands_in_the_readme_with_its_default_and_no_other() -> None:
    """The table of the README is the table of the code."""
    rows = re.findall(r"^\| `COACHBOT_(\w+)` \| (.*?) \| (.*?) \|$", README, flags=re.MULTILINE)

    assert rows == [(one.name, _shown(one.default), one.meaning) for one in SETTINGS]
    assert set(re.findall(rf"{PREFIX}(\w+)", README)) <= {one.name for one in SETTINGS}


def _shown(default: str | None) -> str:
    return "must be given" if default is None else f"`{default}`" if default else "empty"


@pytest.mark.parametrize("command", sorted(set(re.findall(r"coachbot ([a-z]+)(?= |`|\n)", README)) - {"for", "is"}))
def test_every_command_of_the_readme_exists(command: str) -> None:
    """Asking for its help works."""
    with pytest.raises(SystemExit) as stopped:
        _parser().parse_args([command, "--help"])

    assert stopped.value.code == 0


def test_the_family_s_file_of_the_readme_can_be_enrolled() -> None:
    """The example is read as it stands."""
    text = re.findall(r"```toml\n(.*?)```", README, flags=re.DOTALL)[0]

    assert tomllib.loads(text)["child"] == family(text).child


def test_the_readme_opens_with_the_job_in_one_paragraph() -> None:
    """A title, then one paragraph before the next heading."""
    opening = README.split("## ", 1)[0].split("\n\n")

    assert opening[0] == "# coachbot"
    assert len([part for part in opening[1:] if part.strip()]) == 1
