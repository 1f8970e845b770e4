"""The formats a week is handed over in: each a function from a handout to bytes, imported when asked for."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib import import_module
from types import MappingProxyType
from typing import Final

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.sheets.handout import Handout

MOST_LETTERS: Final = 40


@dataclass(frozen=True)
class Format:
    """Where a format is written, the ending of its files, and the extra that brings its library."""

    module: str
    function: str
    ending: str
    extra: str = ""


FORMATS: Final[Mapping[str, Format]] = MappingProxyType(
    {
        "pdf": Format("pdf", "pdf", "pdf", "pdf"),
        "xlsx": Format("workbook", "workbook", "xlsx", "xlsx"),
        "ics": Format("calendar", "calendar", "ics", "ics"),
        "html": Format("page", "page", "html", "page"),
        "csv": Format("csv", "csv", "csv"),
        "md": Format("markdown", "markdown", "md"),
        "json": Format("json", "json", "json"),
    }
)
DATED: Final = ("ics",)
"""Formats that cannot be written without a start date."""


def writer_of(name: str) -> Callable[[Handout], bytes]:
    """The function of a format; raises SetwrightError where its library is not installed."""
    kind = FORMATS[name]
    module = import_module(f"setwright.solver.sheets.{kind.module}")
    function: Callable[[Handout], bytes] = getattr(module, kind.function)
    return function


def written(name: str, handout: Handout) -> bytes:
    """The handout in one format; raises SetwrightError where its library is not installed."""
    try:
        return writer_of(name)(handout)
    except ModuleNotFoundError as error:
        missing = (error.name or "").split(".")[0]
        if missing == "setwright" or not FORMATS[name].extra:
            raise
        said = f"needs {missing}, which is not installed"
        raise SetwrightError(Fault(f"--as {name}", said, f"pip install 'setwright[{FORMATS[name].extra}]'")) from None


def file_name(name: str, handout: Handout) -> str:
    """A format's file: the client's code and the week, nothing else; letters that no file system minds."""
    code = re.sub(r"[^A-Za-z0-9]+", "-", handout.client)[:MOST_LETTERS].strip("-") or "client"
    return f"{code}-week-1.{FORMATS[name].ending}"
