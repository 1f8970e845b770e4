"""Where output goes: files whole and never over another, changes of an overlay on stderr, quiet pipes."""

from __future__ import annotations

import json
import os
import signal
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

from setwright.catalogue.faults import UsageFault
from setwright.solver.cli.console.output import deliver
from setwright.solver.cli.console.progress import ProgressLine, progress_words
from setwright.solver.cli.console.stopping import Stopping

Run = Callable[..., Result]


def test_a_file_is_written_and_not_written_over(run: Run, tmp_path: Path) -> None:
    file = tmp_path / "numbers.json"
    first = run("evidence", "rir-slope", "-o", str(file))
    assert (first.exit_code, first.stdout, first.stderr) == (0, "", f"written: {file}\n")
    assert json.loads(file.read_text())["numbers"][0]["id"] == "rir-slope"
    file.write_text("mine")
    again = run("evidence", "rir-slope", "-o", str(file))
    assert again.exit_code == 2
    assert "--force" in again.stderr
    assert file.read_text() == "mine"
    assert run("evidence", "rir-slope", "-o", str(file), "--force").exit_code == 0
    assert file.read_text() != "mine"
    assert [path.name for path in tmp_path.iterdir()] == ["numbers.json"]


def test_a_file_that_appears_meanwhile_is_kept(tmp_path: Path) -> None:
    file = tmp_path / "week.txt"
    file.write_text("mine")
    with pytest.raises(UsageFault):
        deliver("text", file, force=False)
    assert file.read_text() == "mine"
    assert list(tmp_path.iterdir()) == [file]


@pytest.mark.parametrize("place", [".", "none/week.txt"])
def test_a_target_that_cannot_be_written_is_refused_before_the_work(place: str, run: Run, tmp_path: Path) -> None:
    result = run("week", "3x40", "-o", str(tmp_path / place))
    assert result.exit_code == 2
    assert len(result.stderr.splitlines()) == 1


def test_a_pipe_is_not_written_over(run: Run, tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    result = run("evidence", "-o", str(tmp_path / "pipe"), "--force")
    assert result.exit_code == 2 and "leave -o out" in result.stderr and (tmp_path / "pipe").is_fifo()


def test_a_write_that_fails_is_an_error_and_leaves_nothing(run: Run, tmp_path: Path) -> None:
    result = run("evidence", "-o", str(tmp_path / ("n" * 300)))
    assert result.exit_code == 1
    assert "cannot be written" in result.stderr
    assert list(tmp_path.iterdir()) == []


def test_an_overlay_says_what_it_changed_on_stderr(run: Run, tmp_path: Path) -> None:
    own = tmp_path / "own.toml"
    own.write_text("[number.rir-slope]\nvalue = 0.06\n")
    result = run("evidence", "rir-slope", "--catalogue", str(own))
    assert "own.toml changes number rir-slope: value 0.103 -> 0.06" in result.stderr
    assert "0.06" in result.stdout


def test_columns_are_honoured(run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    for width in ("60", "100", "300"):
        monkeypatch.setenv("COLUMNS", width)
        assert max(map(len, run("evidence").stdout.splitlines())) <= min(int(width), 100)


def test_nothing_is_coloured(run: Run) -> None:
    assert "\x1b" not in run("exercises").stdout + run("--help").stdout


def test_the_first_interrupt_asks_and_the_second_ends() -> None:
    before = signal.getsignal(signal.SIGINT)
    with Stopping() as stopping:
        assert not stopping()
        os.kill(os.getpid(), signal.SIGINT)
        assert stopping()
        with pytest.raises(KeyboardInterrupt):
            os.kill(os.getpid(), signal.SIGINT)
    assert signal.getsignal(signal.SIGINT) is before


def test_progress_is_silent_off_a_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    line = ProgressLine()
    line(progress=None)  # type: ignore[arg-type]
    line.clear()
    assert capsys.readouterr() == ("", "")


def test_progress_says_the_best_score_and_the_proven_gap() -> None:
    assert progress_words(float("-inf"), 5.0, 1.0) == "1 s: no week yet"
    assert "nothing proven" in progress_words(10_000.0, float("inf"), 1.0)
    assert "best score 1.0, proven gap 0.50 points" in progress_words(10_000.0, 15_000.0, 1.0)
