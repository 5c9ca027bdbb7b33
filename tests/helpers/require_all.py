"""A pytest plugin: with COACHBOT_TEST_REQUIRE_ALL=1 what skips has failed, so that no run passes by leaving out."""

import os
from collections.abc import Generator
from typing import TypeVar

import pytest

REQUIRED = os.environ.get("COACHBOT_TEST_REQUIRE_ALL") == "1"

Report = TypeVar("Report", pytest.TestReport, pytest.CollectReport)


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport() -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """A skipped test has failed, except one that is expected to fail."""
    report = yield
    return report if hasattr(report, "wasxfail") else _failed(report)


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report() -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """A skipped file has failed."""
    return _failed((yield))


def _failed(report: Report) -> Report:
    if REQUIRED and report.skipped:
        reason = report.longrepr[2] if isinstance(report.longrepr, tuple) else report.longrepr
        report.outcome = "failed"
        report.longrepr = f"{reason}, but nothing may skip in this run"
    return report
