"""A workbook opened from its bytes, refused where it is none or where a week can be no part of it."""

from __future__ import annotations

import io
import zipfile
from typing import Any, Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault

MOST_BYTES: Final = 5_000_000
MOST_UNPACKED: Final = 50_000_000


def opened_workbook(data: bytes, where: str, values: bool = True) -> Any:
    """The workbook, with values in place of formulas if `values`; links to other files are not followed.

    Raises UsageFault where it is none or too large, SetwrightError without openpyxl.
    """
    _check_size(data, where)
    try:
        from openpyxl import load_workbook
    except ModuleNotFoundError:
        said = "cannot be read: openpyxl is not installed"
        raise SetwrightError(Fault(where, said, "pip install 'setwright[xlsx]'")) from None
    try:
        return load_workbook(io.BytesIO(data), data_only=values, keep_links=False)
    except Exception as error:  # whatever a broken package makes the library raise is one fault
        said = f"is no xlsx workbook that can be read ({type(error).__name__})"
        raise UsageFault(Fault(where, said, "save it again as xlsx")) from None


def _check_size(data: bytes, where: str) -> None:
    """Refuse what is no package, is too large, or would unpack to more than a week can be."""
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, "is larger than 5 MB, expected one week", "name the workbook of one week"))
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as package:
            unpacked = sum(part.file_size for part in package.infolist())
    except (zipfile.BadZipFile, OSError, ValueError):
        raise UsageFault(Fault(where, "is no xlsx workbook", "save it as xlsx")) from None
    if unpacked > MOST_UNPACKED:
        raise UsageFault(Fault(where, "unpacks to more than 50 MB, expected one week", "name another file"))
