"""Standard output, which may be full, closed or of an encoding that lacks letters; none of it ends in a traceback."""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import TextIO

from click.exceptions import Exit

from setwright.catalogue.faults import Fault, SetwrightError
from setwright.solver.cli.console.messages import say
from setwright.solver.cli.exit_codes import ExitCode

REMEDY = "write to a file with -o FILE"


def print_text(text: str) -> None:
    """Print text; letters that the stream's encoding lacks come out as question marks, and a message says so.

    Raises SetwrightError where standard output cannot be written, and click's Exit where its reader went away.
    """
    stream = _stream()
    encoding = stream.encoding or "utf-8"
    printable = text.encode(encoding, "replace").decode(encoding)
    if printable != text:
        say(f"note: standard output is {encoding}, letters that it lacks are printed as ?; {REMEDY} to keep them")
    with output_errors():
        stream.write(printable)
        stream.flush()


def print_json(text: str) -> None:
    """Print a JSON document, in UTF-8 whatever the stream's encoding is (RFC 8259, section 8.1); raises as above."""
    stream = _stream()
    with output_errors():
        stream.flush()
        stream.buffer.write(json_bytes(text))
        stream.buffer.flush()


def json_bytes(text: str) -> bytes:
    """A JSON document in UTF-8; half a letter, a lone surrogate, stands as its JSON escape."""
    return text.encode("utf-8", "backslashreplace")


@contextmanager
def output_errors() -> Iterator[None]:
    """Take any OSError of what is inside, which does nothing but print, for one of standard output.

    Raises click's Exit where the reader went away, as in `| head -1`, and SetwrightError where nothing can be written.
    """
    try:
        yield
    except OSError as error:
        _drop_the_rest()
        if isinstance(error, BrokenPipeError):
            raise Exit(ExitCode.OUTPUT_CLOSED) from None
        said = f"cannot be written: {error.strerror or error}"
        raise SetwrightError(Fault("standard output", said, REMEDY)) from None


def _stream() -> TextIO:
    if sys.stdout is None:
        raise SetwrightError(Fault("standard output", "is closed", REMEDY))
    return sys.stdout


def _drop_the_rest() -> None:
    """Send what is left in the stream to nowhere, or the end of the program would fail on it once more."""
    with suppress(OSError, io.UnsupportedOperation):
        nothing = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nothing, sys.stdout.fileno())
        os.close(nothing)
