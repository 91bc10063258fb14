"""What every test shares: derandomised examples, and a run that says plainly what it left out."""

from __future__ import annotations

import os

import pytest
from hypothesis import settings

settings.register_profile("gate", derandomize=True, deadline=None, database=None)
settings.load_profile("gate")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Say it where it is read, just above the closing line."""
    if config.getoption("markexpr") == "not browser":
        terminalreporter.write_line("browser tests NOT RUN: no Chromium on PATH or in TANKSIDE_BROWSER")


@pytest.hookimpl(trylast=True)
def pytest_sessionfinish(session: pytest.Session) -> None:
    """Nothing may be skipped where nobody is there to ask why."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if reporter is None or os.environ.get("CI") != "true":
        return
    if reporter.stats.get("skipped") and session.exitstatus == pytest.ExitCode.OK:
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
        reporter.write_line("skipped tests are failures under CI")
