"""The fortnight that plays itself."""

from pathlib import Path

import pytest

from coachbot.cli import main


def test_a_fortnight_plays_itself_and_writes_the_report(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Progress night by night, a missed stretch, alerts as they climb, and the report as paper and picture."""
    assert main(["rehearse", "--auto", "--out", str(tmp_path)]) == 0

    told = capsys.readouterr().out.splitlines()
    assert sum(" done " in line for line in told) == 13
    assert sum(line.endswith(" missed") for line in told) == 2
    assert sum("URGENT" in line for line in told) >= 4
    assert any("14/14" in line for line in told)
    assert (tmp_path / "follow-up.pdf").read_bytes().startswith(b"%PDF")
    assert (tmp_path / "follow-up.png").read_bytes().startswith(b"\x89PNG")
