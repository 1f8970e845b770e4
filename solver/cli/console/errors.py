"""This tool's errors as lines on standard error and an exit code; tracebacks are left to mistakes in the code."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from click.exceptions import Exit

from setwright.catalogue.faults import SetwrightError
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.exit_codes import ExitCode, exit_code_of


@contextmanager
def told_errors() -> Iterator[None]:
    """Run what is inside; an error is said, one line for each fault, and raised again as click's Exit."""
    try:
        yield
    except SetwrightError as error:
        for fault in error.faults:
            say(str(fault))
        raise Exit(exit_code_of(error)) from None
    except KeyboardInterrupt:
        say("stopped")
        raise Exit(ExitCode.STOPPED) from None
