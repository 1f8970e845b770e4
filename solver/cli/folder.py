"""Several files into one folder: all of them whole, or none and what was there before."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.cli.output import cannot, link, say, umask


def folder_faults(folder: Path, names: tuple[str, ...], force: bool) -> list[Fault]:
    """Why these files could not be written into the folder, found before any work."""
    try:
        if folder.exists() and not folder.is_dir():
            return [Fault(str(folder), "is a file, expected a folder", "name a folder")]
        if not folder.exists() and not folder.parent.is_dir():
            return [Fault(str(folder), f"the folder {folder.parent} is not there", "make it first")]
        taken = [folder / name for name in names if (folder / name).exists()]
        blocked = [path for path in taken if path.is_dir()]
    except (OSError, ValueError) as error:
        return [Fault(str(folder), f"cannot be used: {getattr(error, 'strerror', None) or error}", "name another")]
    faults = [Fault(str(path), "is a folder, expected a file", "name another folder") for path in blocked]
    if not force:
        again = "name another folder, or add --force to write over it"
        faults += [Fault(str(path), "is there already", again) for path in taken if path not in blocked]
    return faults


def deliver_all(files: Mapping[str, bytes], folder: Path, force: bool, quiet: bool = False) -> None:
    """Every file written beside its place, then all moved there; whatever fails takes back what was moved."""
    made = not folder.exists()
    try:
        folder.mkdir(exist_ok=True)
        staged = stage(files, folder)
        move(staged, force)
    except OSError as error:
        if made:
            with suppress(OSError):
                folder.rmdir()
        raise cannot(folder, error) from None
    except SetwrightError:
        if made:
            with suppress(OSError):
                folder.rmdir()
        raise
    for name in () if quiet else files:
        say(f"written: {folder / name}")


def stage(files: Mapping[str, bytes], folder: Path) -> list[tuple[str, Path]]:
    """A temporary file for each, in the folder; (temporary name, target)."""
    staged: list[tuple[str, Path]] = []
    try:
        for name, data in files.items():
            handle, temporary = tempfile.mkstemp(dir=folder, prefix=f".{name}.")
            staged.append((temporary, folder / name))
            with os.fdopen(handle, "wb") as file:
                file.write(data)
            os.chmod(temporary, 0o666 & ~umask())
    except OSError:
        drop(temporary for temporary, _ in staged)
        raise
    return staged


def move(staged: list[tuple[str, Path]], force: bool) -> None:
    """The temporary files to their targets; on a failure the old files are put back."""
    done: list[tuple[Path, str | None]] = []
    try:
        for temporary, target in staged:
            done.append((target, put_aside(target) if force else None))
            if force:
                os.replace(temporary, target)
            else:
                place(temporary, target, done)
    except (OSError, UsageFault):
        put_back(done)
        raise
    finally:
        drop(temporary for temporary, _ in staged)
    drop(old for _, old in done if old is not None)


def place(temporary: str, target: Path, done: list[tuple[Path, str | None]]) -> None:
    """The file under its name, unless another took that in the meantime: that one stays."""
    try:
        link(temporary, target)
    except UsageFault:
        done.pop()
        raise


def put_aside(target: Path) -> str | None:
    """What stands at the target, under another name; None where nothing does."""
    if not target.exists():
        return None
    handle, aside = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.old.")
    os.close(handle)
    os.replace(target, aside)
    return aside


def put_back(done: list[tuple[Path, str | None]]) -> None:
    for target, old in reversed(done):
        with suppress(OSError):
            if old is not None:
                os.replace(old, target)
            else:
                target.unlink(missing_ok=True)


def drop(names: Iterable[str]) -> None:
    """Unlink files that may be gone already."""
    for name in names:
        with suppress(FileNotFoundError):
            os.unlink(name)
