"""Files and standard input, read no further than is needed."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Final

from setwright.catalogue.faults import Fault, UsageFault

STANDARD_INPUT: Final = "-"


def place_of(path: Path | str) -> str:
    """What a fault calls a source: its path, or standard input for -."""
    return "standard input" if str(path) == STANDARD_INPUT else str(path)


def bytes_of(path: Path, most: int, remedy: str) -> bytes:
    """The bytes of a file, or of standard input for -, and of those at most one more than `most`.

    Raises UsageFault with the remedy where the file cannot be read.
    """
    try:
        if str(path) == STANDARD_INPUT:
            return sys.stdin.buffer.read(most + 1) if sys.stdin is not None else b""
        with path.open("rb") as file:
            return file.read(most + 1)
    except (OSError, ValueError) as error:
        said = f"cannot be read: {getattr(error, 'strerror', None) or error}"
        raise UsageFault(Fault(place_of(path), said, remedy)) from None
