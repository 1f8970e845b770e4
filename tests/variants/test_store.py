"""The store: whole files or none, whatever fails while one is written."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from setwright.catalogue.faults import SetwrightError, UsageFault
from setwright.solver.uses.variants.result_store import ResultStore, machine_name

KEY = "ab" + "0" * 30


def opened(folder: Path) -> ResultStore:
    store = ResultStore(folder)
    store.open()
    return store


def files(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.rglob("*") if path.is_file())


def test_what_is_written_is_read_and_listed(tmp_path: Path) -> None:
    store = opened(tmp_path / "new" / "folder")
    store.write(KEY, b"one")
    store.write(KEY, b"two")
    assert store.read(KEY) == b"two" and list(store.stored()) == [KEY] and files(store.folder) == [f"{KEY}.json"]
    store.remove(KEY)
    assert store.read(KEY) is None


@pytest.mark.parametrize("code", [errno.ENOSPC, errno.EROFS, errno.EACCES, errno.EIO])
@pytest.mark.parametrize("act", ["fsync", "replace"])
def test_a_write_that_fails_leaves_what_was_there_and_no_half_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, act: str, code: int
) -> None:
    store = opened(tmp_path)
    store.write(KEY, b"before")

    def fail(*_: object) -> None:
        raise OSError(code, os.strerror(code))

    monkeypatch.setattr(os, act, fail)
    with pytest.raises(SetwrightError, match=f"cannot be written: {os.strerror(code)}.*what is done is kept"):
        store.write(KEY, b"after")
    monkeypatch.undo()
    assert store.read(KEY) == b"before" and files(tmp_path) == [f"{KEY}.json"]


def test_a_folder_that_cannot_be_made_is_an_error_before_any_work(tmp_path: Path) -> None:
    """/proc takes no new folders, from root neither."""
    with pytest.raises(SetwrightError, match="cannot be written"):
        ResultStore(Path("/proc/setwright-variants")).open()
    (tmp_path / "file").write_text("x")
    with pytest.raises(UsageFault, match="is a file"):
        ResultStore(tmp_path / "file").open()


def test_a_folder_with_other_things_in_it_is_refused(tmp_path: Path) -> None:
    (tmp_path / "letters.txt").write_text("x")
    with pytest.raises(UsageFault, match="holds other files"):
        ResultStore(tmp_path).open()


def test_what_a_dead_writer_left_is_cleared_and_a_living_ones_is_not(tmp_path: Path) -> None:
    opened(tmp_path)
    dead, alive, elsewhere = (
        f"{machine_name()}~4194305~x",
        f"{machine_name()}~1~x",
        f"other-{machine_name()}~4194305~x",
    )
    for name in (dead, alive, elsewhere):
        (tmp_path / ".unfinished" / name).write_text("half")
    opened(tmp_path)
    assert files(tmp_path) == sorted([alive, elsewhere])
