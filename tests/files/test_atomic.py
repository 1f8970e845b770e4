"""Files are written whole or not at all, one alone and several into a folder."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest

from setwright.solver.atomic import write_file, write_files

FILES = {"a.csv": b"new a", "b.md": b"new b"}
FULL = OSError(28, "No space left on device")


def contents(folder: Path) -> dict[str, bytes]:
    """Every file of a folder, hidden ones too."""
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def full(*_: Any, **__: Any) -> None:
    raise FULL


def test_a_file_is_written_with_the_usual_permissions(tmp_path: Path) -> None:
    mask = os.umask(0o027)
    try:
        write_file(tmp_path / "a", b"one")
    finally:
        os.umask(mask)
    assert contents(tmp_path) == {"a": b"one"} and (tmp_path / "a").stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize("links", [True, False])
def test_a_file_that_is_there_is_kept_unless_it_is_to_be_replaced(
    tmp_path: Path, links: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also on a file system that knows no links."""
    if not links:
        monkeypatch.setattr(os, "link", lambda *_: (_ for _ in ()).throw(PermissionError(1, "Operation not permitted")))
    write_file(tmp_path / "a", b"mine")
    with pytest.raises(FileExistsError) as caught:
        write_file(tmp_path / "a", b"other")
    assert caught.value.filename == str(tmp_path / "a") and contents(tmp_path) == {"a": b"mine"}
    write_file(tmp_path / "a", b"other", replace=True)
    assert contents(tmp_path) == {"a": b"other"}


@pytest.mark.parametrize("act", ["fsync", "replace"])
def test_a_write_that_fails_leaves_what_was_there(tmp_path: Path, act: str, monkeypatch: pytest.MonkeyPatch) -> None:
    write_file(tmp_path / "a", b"before")
    monkeypatch.setattr(os, act, full)
    with pytest.raises(OSError, match="No space left"):
        write_file(tmp_path / "a", b"after", replace=True, durable=True)
    assert contents(tmp_path) == {"a": b"before"}


def test_a_name_as_long_as_the_file_system_takes_is_written(tmp_path: Path) -> None:
    write_file(tmp_path / ("n" * 255), b"x")
    assert contents(tmp_path) == {"n" * 255: b"x"}


def test_several_files_are_all_written_or_none(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in FILES:
        (tmp_path / name).write_bytes(b"old")
    real, moves = os.replace, []

    def failing(source: Any, target: Any) -> None:
        """Fails when the second file is moved to its place, and not when the old one is put back."""
        moves.append(target)
        if str(target).endswith("b.md") and len(moves) < 5:
            raise FULL
        real(source, target)

    monkeypatch.setattr(os, "replace", failing)
    with pytest.raises(OSError, match="No space left"):
        write_files(FILES, tmp_path, replace=True)
    assert contents(tmp_path) == dict.fromkeys(FILES, b"old")
    monkeypatch.undo()
    write_files(FILES, tmp_path, replace=True)
    assert contents(tmp_path) == FILES


def test_a_file_that_appears_meanwhile_is_kept_and_the_others_are_taken_back(tmp_path: Path) -> None:
    (tmp_path / "b.md").write_bytes(b"mine")
    with pytest.raises(FileExistsError, match=r"b\.md"):
        write_files(FILES, tmp_path)
    assert contents(tmp_path) == {"b.md": b"mine"}


def test_a_folder_made_for_nothing_is_taken_away(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "link", full)
    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(OSError, match="No space left"):
        write_files(FILES, tmp_path / "out")
    assert contents(tmp_path) == {}
