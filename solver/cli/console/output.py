"""Where a command's result goes: standard output, or whole into a file or not at all."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.console.standard_output import json_bytes, print_json, print_text


def check_target(target: Path | None, force: bool) -> None:
    """Refuse before any work a file that could not be written afterwards; raises UsageFault or SetwrightError."""
    if target is None:
        return
    try:
        if target.is_dir():
            raise UsageFault(Fault(str(target), "is a folder, expected a file", "name a file in it"))
        if not target.parent.is_dir():
            raise UsageFault(Fault(str(target), f"the folder {target.parent} is not there", "make it first"))
        if target.exists() and not target.is_file():
            said = "is a device or a pipe, expected a file"
            raise UsageFault(Fault(str(target), said, "leave -o out to write to standard output"))
        if target.exists() and not force:
            raise UsageFault(there_already(target))
    except (OSError, ValueError) as error:
        raise cannot_write(target, error) from None


def deliver(result: str | Mapping[str, Any], target: Path | None, force: bool) -> None:
    """Print a text or a JSON document, or write it into a file; raises UsageFault, SetwrightError or click's Exit."""
    document = isinstance(result, Mapping)
    text = _json_text(result) if isinstance(result, Mapping) else result
    if target is None:
        print_json(text) if document else print_text(text)
        return
    from setwright.solver.atomic import write_file

    try:
        write_file(target, json_bytes(text) if document else text.encode("utf-8", "replace"), replace=force)
    except FileExistsError:
        raise UsageFault(there_already(target)) from None
    except OSError as error:
        raise cannot_write(target, error) from None
    say(f"written: {target}")


def there_already(target: Path, what: str = "file") -> Fault:
    """The fault of a file that would be written over."""
    return Fault(str(target), "is there already", f"name another {what}, or add --force to write over it")


def cannot_write(target: Path, error: Exception) -> SetwrightError:
    """The error of a file that cannot be written, with the system's reason."""
    said = f"cannot be written: {getattr(error, 'strerror', None) or error}"
    return SetwrightError(Fault(str(target), said, "name another file"))


def _json_text(document: Mapping[str, Any]) -> str:
    from setwright.solver.sheets.common.json_values import dumped

    return dumped(dict(document))
