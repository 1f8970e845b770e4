"""Standard output full, closed, without a reader or of another encoding: a line and a code, never a traceback."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from setwright.solver.cli.exit_codes import ExitCode

HOUSE = Path(__file__).parents[2]
OWN_NAME = '[[exercise]]\nid = "push-up"\nname = "Pompe \u00e9l\u00e9mentaire \u5f2f"\n'
"""A name with letters of Latin-1 and one that it lacks."""


def command(*words: str, redirect: str = "", **environment: str) -> subprocess.CompletedProcess[bytes]:
    """The command in a shell that redirects its streams."""
    paths = os.pathsep.join(path for path in (str(HOUSE / ".names"), os.environ.get("PYTHONPATH", "")) if path)
    line = f'exec "$0" -m setwright.solver "$@" {redirect}'
    return subprocess.run(
        ["sh", "-c", line, sys.executable, *words],
        capture_output=True,
        env={**os.environ, "PYTHONPATH": paths, **environment},
        check=False,
    )


TEXT = ("evidence",), ("exercises", "--json"), ("schema", "week"), ("--help",), ("week", "--help")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full")
@pytest.mark.parametrize("words", TEXT, ids=" ".join)
def test_a_full_disk_is_an_error_in_one_line(words: tuple[str, ...]) -> None:
    done = command(*words, redirect=">/dev/full")
    said = b"standard output: cannot be written: No space left on device; write to a file with -o FILE\n"
    assert (done.returncode, done.stderr) == (ExitCode.ERROR, said)


@pytest.mark.parametrize("words", TEXT[:3], ids=" ".join)
def test_a_closed_output_is_an_error_in_one_line(words: tuple[str, ...]) -> None:
    done = command(*words, redirect=">&-")
    said = b"standard output: is closed; write to a file with -o FILE\n"
    assert (done.returncode, done.stderr) == (ExitCode.ERROR, said)


def test_a_file_is_written_though_every_stream_is_closed(tmp_path: Path) -> None:
    file = tmp_path / "week.json"
    done = command("week", "mon 12 min, bands", "--search", "quick", "-o", str(file), redirect="<&- >&- 2>&-")
    assert done.returncode == ExitCode.DONE and json.loads(file.read_text())["schema"] == "setwright.week/1"


def test_standard_input_that_is_closed_is_an_empty_brief() -> None:
    done = command("week", "-", redirect="<&-")
    assert done.returncode == ExitCode.USAGE and b"is empty" in done.stderr and b"Traceback" not in done.stderr


@pytest.mark.parametrize("words", TEXT, ids=" ".join)
def test_a_reader_that_goes_away_ends_the_command_quietly(words: tuple[str, ...]) -> None:
    paths = os.pathsep.join(path for path in (str(HOUSE / ".names"), os.environ.get("PYTHONPATH", "")) if path)
    gone, end = os.pipe()
    os.close(gone)
    try:
        done = subprocess.run(
            [sys.executable, "-m", "setwright.solver", *words],
            stdout=end,
            stderr=subprocess.PIPE,
            env={**os.environ, "PYTHONPATH": paths},
            check=False,
        )
    finally:
        os.close(end)
    assert (done.returncode, done.stderr) == (ExitCode.OUTPUT_CLOSED, b"")


@pytest.mark.parametrize(
    ("encoding", "said"),
    [("ascii", "Pompe ?l?mentaire ?"), ("latin-1", "Pompe \u00e9l\u00e9mentaire ?"), ("utf-8", OWN_NAME.split('"')[3])],
)
def test_letters_that_the_encoding_lacks_are_question_marks_and_a_message_says_so(
    encoding: str, said: str, tmp_path: Path
) -> None:
    (tmp_path / "own.toml").write_text(OWN_NAME, encoding="utf-8")
    done = command("exercises", "push-up", "--catalogue", str(tmp_path / "own.toml"), PYTHONIOENCODING=encoding)
    assert done.returncode == ExitCode.DONE
    assert done.stdout.decode(encoding).splitlines()[0] == said
    assert (b"are printed as ?" in done.stderr) == (encoding != "utf-8") and b"Traceback" not in done.stderr


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "utf-16"])
def test_a_document_is_utf_8_in_any_encoding(encoding: str, tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text(OWN_NAME, encoding="utf-8")
    words = ("exercises", "push-up", "--json", "--catalogue", str(tmp_path / "own.toml"))
    done = command(*words, PYTHONIOENCODING=encoding)
    assert json.loads(done.stdout.decode("utf-8"))["exercises"][0]["name"] == OWN_NAME.split('"')[3]


def test_messages_that_cannot_be_written_are_lost_and_the_result_is_not() -> None:
    done = command("evidence", "rir-slope", redirect="2>/dev/full" if Path("/dev/full").exists() else "2>&-")
    assert done.returncode == ExitCode.DONE and b"rir-slope" in done.stdout
    assert command("evidence", "rir-slop", redirect="2>&-").returncode == ExitCode.USAGE
