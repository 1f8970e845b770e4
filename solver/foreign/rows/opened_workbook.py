"""A workbook opened from its bytes, refused where it is none or where a week can be no part of it."""

from __future__ import annotations

import io
import zipfile
from typing import Any, Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault, not_installed

MOST_BYTES: Final = 5_000_000
MOST_UNPACKED: Final = 50_000_000
COMPOUND: Final = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"
"""How an encrypted workbook begins, and an .xls (Microsoft MS-CFB, section 2.2)."""


def opened_workbook(
    data: bytes, where: str, values: bool = True, row_by_row: bool = False, what: str = "one week"
) -> Any:
    """The workbook, with values in place of formulas if `values`; links to other files are not followed.

    With `row_by_row` its sheets are read as they are gone through and not kept. Raises UsageFault where it is none or
    larger than `what` can be, SetwrightError without openpyxl.
    """
    _check_size(data, where, what)
    try:
        from openpyxl import load_workbook
    except ModuleNotFoundError:
        raise SetwrightError(not_installed(where, "openpyxl", "xlsx")) from None
    try:
        return load_workbook(io.BytesIO(data), data_only=values, keep_links=False, read_only=row_by_row)
    except Exception as error:  # whatever a broken package makes the library raise is one fault
        said = f"is no xlsx workbook that can be read ({type(error).__name__})"
        raise UsageFault(Fault(where, said, "save it again as xlsx")) from None


def _check_size(data: bytes, where: str, what: str) -> None:
    """Refuse what is no package, is too large, or would unpack to more than it can be."""
    if data.startswith(COMPOUND):
        said = "is protected by a password, or is an .xls"
        raise UsageFault(Fault(where, said, "take the password off and save it as xlsx"))
    if len(data) > MOST_BYTES:
        raise UsageFault(Fault(where, f"is larger than 5 MB, expected {what}", f"name the workbook of {what}"))
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as package:
            unpacked = sum(part.file_size for part in package.infolist())
    except (zipfile.BadZipFile, OSError, ValueError):
        raise UsageFault(Fault(where, "is no xlsx workbook", "save it as xlsx")) from None
    if unpacked > MOST_UNPACKED:
        raise UsageFault(
            Fault(where, f"unpacks to more than 50 MB, expected {what}", "name another file, or save the sheet as CSV")
        )
