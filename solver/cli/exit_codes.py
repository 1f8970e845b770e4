"""The numbers with which the command ends, each with its meaning."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from enum import IntEnum
from types import MappingProxyType
from typing import Final

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault


class ExitCode(IntEnum):
    """How the command ended."""

    DONE = 0
    ERROR = 1
    USAGE = 2
    CLASH = 3
    OUT_OF_TIME = 4
    STOPPED = 130
    """128 and the number of SIGINT, as shells report a program that Ctrl-C ended."""
    OUTPUT_CLOSED = 141
    """128 and the number of SIGPIPE, as shells report a program whose reader went away."""


MEANINGS: Final[Mapping[ExitCode, str]] = MappingProxyType(
    {
        ExitCode.DONE: "solved",
        ExitCode.ERROR: "error",
        ExitCode.USAGE: "usage",
        ExitCode.CLASH: "the brief clashes",
        ExitCode.OUT_OF_TIME: "out of time without a week",
        ExitCode.STOPPED: "stopped by the user",
        ExitCode.OUTPUT_CLOSED: "the reader of standard output went away",
    }
)


class NoWeekError(SetwrightError):
    """A brief that was to be planned first gave no week; `exit_code` says why."""

    def __init__(self, faults: Fault | Iterable[Fault], exit_code: ExitCode) -> None:
        super().__init__(faults)
        self.exit_code = exit_code


def exit_code_of(error: SetwrightError) -> ExitCode:
    """The code with which an error ends the command."""
    if isinstance(error, NoWeekError):
        return error.exit_code
    return ExitCode.USAGE if isinstance(error, UsageFault) else ExitCode.ERROR
