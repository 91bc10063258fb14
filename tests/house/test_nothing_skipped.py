"""A skipped test is a failure where nobody is there to ask why."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from project import ROOT, bare_surroundings

SKIPS = "import pytest\n\ndef test_one():\n    pytest.skip('no reel')\n\ndef test_two():\n    assert True\n"


@pytest.mark.parametrize(("ci", "ends_with"), [("true", 1), ("", 0)])
def test_a_skip_fails_under_ci_alone(tmp_path: Path, ci: str, ends_with: int) -> None:
    """At a desk it is a remark, in CI it is a failure; with workers as without."""
    shutil.copy(ROOT / "tests" / "conftest.py", tmp_path)
    (tmp_path / "test_planted.py").write_text(SKIPS, encoding="utf-8")
    for workers in ((), ("-n", "1")):
        told = subprocess.run(
            [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", *workers, str(tmp_path)],
            cwd=tmp_path,
            env=bare_surroundings(CI=ci),
            capture_output=True,
            text=True,
            check=False,
        )
        assert "1 passed, 1 skipped" in told.stdout
        assert told.returncode == ends_with
