"""Where results and messages go: stdout or a file, stderr for all else."""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import click

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault


def say(message: str) -> None:
    """One message on stderr."""
    click.echo(message, err=True)


def columns() -> int:
    """The width to set text in: COLUMNS, the terminal's, or 100."""
    return shutil.get_terminal_size((100, 40)).columns


def check_target(target: Path | None, force: bool) -> None:
    """Refuse before any work a file that could not be written afterwards."""
    if target is None:
        return
    try:
        if target.is_dir():
            raise UsageFault(Fault(str(target), "is a folder, expected a file", "name a file in it"))
        if not target.parent.is_dir():
            raise UsageFault(Fault(str(target), f"the folder {target.parent} is not there", "make it first"))
        if target.exists() and not force:
            raise exists(target)
    except OSError as error:
        raise cannot(target, error) from None


def exists(target: Path) -> UsageFault:
    return UsageFault(Fault(str(target), "is there already", "name another file, or add --force to write over it"))


def cannot(target: Path, error: OSError) -> SetwrightError:
    return SetwrightError(Fault(str(target), f"cannot be written: {error.strerror or error}", "name another file"))


def deliver(text: str, target: Path | None, force: bool) -> None:
    """The result: on stdout, or whole in the file or not at all."""
    if target is None:
        click.echo(text, nl=False)
        return
    try:
        write(text, target, force)
    except OSError as error:
        raise cannot(target, error) from None
    say(f"written: {target}")


def write(text: str, target: Path, force: bool) -> None:
    """A new file beside the target, then moved there in one step."""
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
        os.chmod(name, 0o666 & ~umask())
        if force:
            os.replace(name, target)
        else:
            link(name, target)
    finally:
        with suppress(FileNotFoundError):
            os.unlink(name)


def link(name: str, target: Path) -> None:
    """Give the file its name unless that is taken by now; file systems without links check once more."""
    try:
        os.link(name, target)
    except FileExistsError:
        raise exists(target) from None
    except OSError:
        if target.exists():
            raise exists(target) from None
        os.replace(name, target)


def umask() -> int:
    """The permissions that new files are to lack."""
    mask = os.umask(0)
    os.umask(mask)
    return mask


@contextmanager
def engines_silent() -> Iterator[None]:
    """Standard output closed to the solvers: HiGHS 1.16 prints a banner however silent it is told to be."""
    sys.stdout.flush()
    try:
        saved = os.dup(1)
    except OSError:
        yield
        return
    try:
        with open(os.devnull, "wb") as nothing:
            os.dup2(nothing.fileno(), 1)
        yield
    finally:
        os.dup2(saved, 1)
        os.close(saved)
