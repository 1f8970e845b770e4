"""Files written whole or not at all: beside their place first, then moved there in one step."""

from __future__ import annotations

import errno
import os
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path


def write_file(
    target: Path, data: bytes, replace: bool = False, unfinished: Path | None = None, durable: bool = False
) -> None:
    """Write one file; when this raises, what stood at its place before is untouched.

    Raises FileExistsError where the place is taken and not to be replaced, and OSError where the system refuses.
    `unfinished` is where the file stands until it is whole, on the same file system; `durable` returns only when the
    file and its name are on the disk.
    """
    beside = unfinished or _beside(target.parent)
    try:
        _write(beside, data, durable)
        _move(beside, target, replace)
        if durable:
            flush_folder(target.parent)
    finally:
        _remove(beside)


def write_files(files: Mapping[str, bytes], folder: Path, replace: bool = False) -> None:
    """Write every file (name -> bytes) into a folder, made where it is missing; raises as `write_file` does.

    When this raises, the folder is as it was before.
    """
    made = not folder.exists()
    staged: dict[Path, Path] = {}
    try:
        folder.mkdir(exist_ok=True)
        for name, data in files.items():
            staged[folder / name] = _beside(folder)
            _write(staged[folder / name], data)
        _move_all(staged, replace)
    except BaseException:
        _remove(*staged.values())
        if made:
            with suppress(OSError):
                folder.rmdir()
        raise
    _remove(*staged.values())


def flush_folder(folder: Path) -> None:
    """Bring a folder's names to the disk, where the file system can do it."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        with suppress(OSError):
            os.fsync(handle)
    finally:
        os.close(handle)


def _beside(folder: Path) -> Path:
    """A name that no other file of the folder has."""
    return folder / f".setwright-{os.urandom(8).hex()}"


def _write(path: Path, data: bytes, durable: bool = False) -> None:
    with path.open("wb") as file:
        file.write(data)
        if durable:
            file.flush()
            os.fsync(file.fileno())


def _move(beside: Path, target: Path, replace: bool) -> None:
    if replace:
        os.replace(beside, target)
        return
    taken = FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(target))
    try:
        os.link(beside, target)
    except FileExistsError:
        raise taken from None
    except OSError:
        # A file system without links: between this look and the move another program may still take the name.
        if target.exists():
            raise taken from None
        os.replace(beside, target)


def _move_all(staged: Mapping[Path, Path], replace: bool) -> None:
    """Move every file to its place, or put back what stood there."""
    moved: list[tuple[Path, Path | None]] = []
    try:
        for target, beside in staged.items():
            if replace:
                moved.append((target, _put_aside(target)))
            _move(beside, target, replace)
            if not replace:
                moved.append((target, None))
    except BaseException:
        _put_back(moved)
        raise
    _remove(*(old for _, old in moved if old is not None))


def _put_aside(target: Path) -> Path | None:
    """Give what stands at the target another name; None where nothing does."""
    if not target.exists():
        return None
    aside = _beside(target.parent)
    os.replace(target, aside)
    return aside


def _put_back(moved: list[tuple[Path, Path | None]]) -> None:
    for target, old in reversed(moved):
        with suppress(OSError):
            if old is None:
                target.unlink(missing_ok=True)
            else:
                os.replace(old, target)


def _remove(*paths: Path) -> None:
    for path in paths:
        with suppress(OSError):
            path.unlink(missing_ok=True)
