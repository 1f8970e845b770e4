"""The formats a week is handed over in: each a function from a handout to bytes, imported when asked for."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TYPE_CHECKING, Final

from setwright.catalogue.faults import SetwrightError, not_installed

if TYPE_CHECKING:
    from setwright.solver.sheets.handout.values import Handout
    from setwright.solver.sheets.html.page import Plots

MOST_LETTERS: Final = 40
"""Letters of a client's code in the name of a file."""
Writer = Callable[..., bytes]
"""From a handout (and for a page its plots) to the bytes of one file."""


@dataclass(frozen=True)
class Format:
    """How a format's writer is loaded, its files' ending and media type, and the extra that brings its library."""

    load: Callable[[], Writer]
    ending: str
    media: str
    extra: str = ""


def _pdf() -> Writer:
    from setwright.solver.sheets.pdf.pdf_file import pdf_bytes

    return pdf_bytes


def _xlsx() -> Writer:
    from setwright.solver.sheets.xlsx.workbook import xlsx_bytes

    return xlsx_bytes


def _ics() -> Writer:
    from setwright.solver.sheets.plain.calendar import ics_bytes

    return ics_bytes


def _html() -> Writer:
    from setwright.solver.sheets.html.page import html_bytes

    return html_bytes


def _csv() -> Writer:
    from setwright.solver.sheets.plain.csv_file import csv_bytes

    return csv_bytes


def _md() -> Writer:
    from setwright.solver.sheets.plain.markdown import markdown_bytes

    return markdown_bytes


def _json() -> Writer:
    from setwright.solver.sheets.plain.json_file import json_bytes

    return json_bytes


FORMATS: Final[Mapping[str, Format]] = MappingProxyType(
    {
        "pdf": Format(_pdf, "pdf", "application/pdf", "pdf"),
        "xlsx": Format(_xlsx, "xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", "xlsx"),
        "ics": Format(_ics, "ics", "text/calendar; charset=utf-8", "ics"),
        "html": Format(_html, "html", "text/html; charset=utf-8", "page"),
        "csv": Format(_csv, "csv", "text/csv; charset=utf-8"),
        "md": Format(_md, "md", "text/markdown; charset=utf-8"),
        "json": Format(_json, "json", "application/json"),
    }
)
WITH_PLOTS: Final = "html"
"""The format that shows a curve and weeks side by side."""
DATED: Final = ("ics",)
"""Formats that cannot be written without a start date."""


def written(name: str, handout: Handout, plots: Plots | None = None) -> bytes:
    """The bytes of a handout in one format, with plots beside it where the format has room for them.

    Raises SetwrightError where the format's library is not installed, and what its writer raises.
    """
    try:
        writer = FORMATS[name].load()
        return writer(handout, plots) if name == WITH_PLOTS else writer(handout)
    except ModuleNotFoundError as error:
        missing = (error.name or "").split(".")[0]
        if missing == "setwright" or not FORMATS[name].extra:
            raise
        raise SetwrightError(not_installed(f"format {name}", missing, FORMATS[name].extra)) from None


def file_name(name: str, handout: Handout) -> str:
    """A format's file: the client's code and the week, nothing else; letters that no file system minds."""
    code = re.sub(r"[^A-Za-z0-9]+", "-", handout.client)[:MOST_LETTERS].strip("-") or "client"
    return f"{code}-week-1.{FORMATS[name].ending}"
