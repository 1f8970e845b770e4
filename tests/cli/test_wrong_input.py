"""Wrong input: the right exit code, the faults on stderr, nothing on stdout and no traceback."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

Run = Callable[..., Result]


def refused(result: Result, code: int = 2) -> str:
    """What was said on stderr of a command that failed as it should."""
    assert result.exit_code == code
    assert result.stdout == ""
    assert "Traceback" not in result.stderr
    return result.stderr


@pytest.mark.parametrize(
    ("brief", "said"),
    [
        ("", "brief: is empty"),
        ("   ", "brief: is empty"),
        ("3 days x 0 min", "expected whole minutes from 10 to 240"),
        ("3 days x 10000 min", "expected whole minutes from 10 to 240"),
        ("9 days x 40 min", "7"),
        ("3x40, grow dlets", "did you mean 'delts'?"),
        ("3x40, sing a song", "phrase:"),
        ("a" * 3000, "at most 2000 are read"),
        ("brief-that-is-not-there.toml", "is not there"),
    ],
)
def test_a_brief_that_cannot_be_understood(brief: str, said: str, run: Run) -> None:
    assert said in refused(run("week", brief))


def test_one_message_for_one_fault(run: Run) -> None:
    assert len(refused(run("week", "3x40, grow dlets")).splitlines()) == 1


def test_all_faults_of_a_file_at_once(run: Run, tmp_path: Path) -> None:
    file = tmp_path / "brief.toml"
    file.write_text('equipment = ["barbel"]\nrules = { thrid-day = "off" }\ndays = [{ minutes = 5 }]\n')
    lines = refused(run("week", str(file))).splitlines()
    assert len(lines) == 3
    assert any("did you mean 'barbell'?" in line for line in lines)
    assert any("did you mean 'third-day'?" in line for line in lines)


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"", "is empty"),
        (b"x" * 10_000_000, "is larger than 1 MB"),
        (bytes(range(256)), "is not UTF-8 text"),
        (b"days = [", "is not TOML"),
        (b"days = []\n", "days"),
        (b"equipment = []\ndays = [{ minutes = 40 }]\nmust = ['row']\nfoo = 1\n", "foo"),
    ],
)
def test_a_file_that_is_no_brief(data: bytes, said: str, run: Run, tmp_path: Path) -> None:
    file = tmp_path / "brief.toml"
    file.write_bytes(data)
    assert said in refused(run("week", str(file)))
    assert said in refused(run("week", "-", given=data))


@pytest.mark.parametrize(
    "arguments",
    [
        ("week",),
        ("weke", "3x40"),
        ("week", "3x40", "--search", "endless"),
        ("week", "3x40", "--time-limit", "0"),
        ("week", "3x40", "--time-limit", "nan"),
        ("week", "3x40", "--tiem-limit", "3"),
        ("schema", "book"),
        ("exercises", "squat", "--kit", "bands"),
        ("exercises", "no-such-thing-at-all"),
        ("exercises", "--muscle", "latz"),
        ("evidence", "no-such-number"),
        ("audit", "no-such-file.json"),
    ],
)
def test_usage_errors_exit_with_two(arguments: tuple[str, ...], run: Run) -> None:
    assert refused(run(*arguments))


def test_a_mistyped_command_gets_the_near_one(run: Run) -> None:
    assert "did you mean 'week'?" in refused(run("weke", "3x40"))


def test_a_wrong_catalogue_file_is_an_error(run: Run, tmp_path: Path) -> None:
    file = tmp_path / "own.toml"
    file.write_text("[[exercize]]\nid = 'x'\n")
    assert "did you mean 'exercise'?" in refused(run("exercises", "--catalogue", str(file)), code=1)
    assert "cannot be read" in refused(run("exercises", "--catalogue", str(tmp_path / "none.toml")), code=1)
