"""TOML read from a file's bytes; whatever makes it unreadable is said in one fault."""

from __future__ import annotations

import tomllib
from typing import Any

from setwright.catalogue.faults import Fault, SetwrightError


def decoded(data: bytes, where: str, raising: type[SetwrightError]) -> str:
    """The text of a file in UTF-8, without a byte-order mark; raises `raising` for any other encoding."""
    if b"\0" in data:
        remedy = "save it as UTF-8" if data[:2] in (b"\xff\xfe", b"\xfe\xff") else "name a TOML file"
        raise raising(Fault(where, "is not UTF-8 text", remedy))
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        raise raising(Fault(where, f"is not UTF-8 text (line {line})", "save it as UTF-8")) from None


def toml_tables(text: str, where: str, raising: type[SetwrightError]) -> dict[str, Any]:
    """The tables of a TOML text; raises `raising` where it is not TOML, naming the line if the parser knows it."""
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise raising(Fault(where, f"is not TOML: {error}", "mend that line")) from None
    except RecursionError:
        remedy = "use fewer brackets inside brackets"
        raise raising(Fault(where, "is not TOML: nested too deeply", remedy)) from None
    except ValueError:  # Python turns at most 4300 digits into a whole number
        remedy = "write a shorter one"
        raise raising(Fault(where, "is not TOML: a number has more than 4300 digits", remedy)) from None
