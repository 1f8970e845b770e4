"""Faults as values, and the one base error that carries them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal


@dataclass(frozen=True)
class Fault:
    """One thing wrong: where it stands, what is wrong with it, and what to do."""

    where: str
    said: str
    remedy: str = ""
    on_page: str = ""
    """What to do on a page of the desk, where the remedy names a command or an option of one."""

    def at(self, where: str) -> Fault:
        """The same fault at another place."""
        return replace(self, where=where)

    def __str__(self) -> str:
        text = f"{self.where}: {self.said}" if self.where else self.said
        return f"{text}; {self.remedy}" if self.remedy else text


def not_installed(where: str, library: str, extra: str) -> Fault:
    """That a library is missing, which an extra of setwright brings."""
    said = f"needs {library}, which is not installed"
    return Fault(where, said, f"pip install 'setwright[{extra}]'", f"have the extra `{extra}` of setwright installed")


LONGEST_SHOWN = 60
"""The most characters of a value that a fault repeats."""


Form = Literal["json", "toml", "table"]
"""What kind of file a fault stands in."""


def shown(value: object, form: Form = "toml") -> str:
    """A value as a fault repeats it: a text in quotes, a short list as it stands, all else that is long by its kind."""
    if value is None:
        return "nothing" if form == "toml" else "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        short = f"{value:g}"
        return short if float(short) == value else repr(value)
    if isinstance(value, Mapping):
        return "a table" if form == "toml" else "an object"
    if isinstance(value, list | tuple):
        flat = len(value) <= LONGEST_SHOWN and not any(isinstance(part, Mapping | list | tuple) for part in value)
        text = f"[{', '.join(shown(part, form) for part in value)}]" if flat else ""
        return text if text and len(text) <= LONGEST_SHOWN else "a list"
    if isinstance(value, int) and abs(value) >= 10**LONGEST_SHOWN:
        return f"a number of more than {LONGEST_SHOWN} digits"
    text = repr(value)
    return text if len(text) <= LONGEST_SHOWN else f"{text[: LONGEST_SHOWN - 3]}..."


class SetwrightError(Exception):
    """Any error this tool raises on purpose, with all faults found at once."""

    def __init__(self, faults: Fault | Iterable[Fault]) -> None:
        self.faults: tuple[Fault, ...] = (faults,) if isinstance(faults, Fault) else tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))

    def __reduce__(self) -> tuple[Any, ...]:
        """From another process it comes back with its faults, whatever its class asks for to be made."""
        return rebuilt, (type(self), self.faults), self.__dict__


def rebuilt(kind: type[SetwrightError], faults: tuple[Fault, ...]) -> SetwrightError:
    """An error as it was before it was sent to another process."""
    error = kind.__new__(kind)
    SetwrightError.__init__(error, faults)
    return error


class UsageFault(SetwrightError):
    """What was asked cannot be understood or makes no sense."""


class CatalogueFault(SetwrightError):
    """The catalogue's data contradicts itself."""
