"""Standard output kept from the solvers while they work."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def silent_engines() -> Iterator[None]:
    """Close standard output to the solvers: HiGHS 1.16 prints a banner however silent it is told to be."""
    if sys.stdout is not None:
        sys.stdout.flush()
    try:
        saved = os.dup(1)
    except OSError:
        yield
        return
    try:
        with open(os.devnull, "wb") as nothing:
            os.dup2(nothing.fileno(), 1)
        yield
    finally:
        os.dup2(saved, 1)
        os.close(saved)
