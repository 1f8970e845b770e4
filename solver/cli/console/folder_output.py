"""Several files of one result into a folder: all of them whole, or none and what was there before."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.output import cannot_write, there_already


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
        faults += [there_already(path, "folder") for path in taken if path not in blocked]
    return faults


def deliver_all(files: Mapping[str, bytes], folder: Path, force: bool, quiet: bool = False) -> None:
    """Write every file (name -> bytes) into the folder, or none; raises UsageFault or SetwrightError."""
    from setwright.solver.atomic import write_files

    try:
        write_files(files, folder, replace=force)
    except FileExistsError as error:
        raise UsageFault(there_already(Path(error.filename), "folder")) from None
    except OSError as error:
        raise cannot_write(folder, error) from None
    for name in () if quiet else files:
        say(f"written: {folder / name}")
