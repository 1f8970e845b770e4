"""What SQLite and the system refuse, said as errors of this tool."""

from __future__ import annotations

import errno
import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from types import MappingProxyType
from typing import Final

from setwright.catalogue.faults import Fault, SetwrightError

SAID: Final[Mapping[int, tuple[str, str]]] = MappingProxyType(
    {
        sqlite3.SQLITE_BUSY: ("another process is writing to this book", "try again when it has ended"),
        sqlite3.SQLITE_LOCKED: ("another process is writing to this book", "try again when it has ended"),
        sqlite3.SQLITE_READONLY: ("this book cannot be written to", "see to the file's and the folder's permissions"),
        sqlite3.SQLITE_FULL: ("the disk is full: nothing of this was written", "make room and try again"),
        sqlite3.SQLITE_IOERR: ("the disk could not be read or written", "see to the disk; a backup may be needed"),
        sqlite3.SQLITE_CORRUPT: ("this book is damaged", "bring back a backup, then check the book"),
        sqlite3.SQLITE_NOTADB: ("is no book", "name a book, or a new file"),
        sqlite3.SQLITE_CANTOPEN: ("cannot be opened", "see that the folder is there and can be written to"),
        sqlite3.SQLITE_PERM: ("cannot be opened", "see to the file's permissions"),
    }
)
"""SQLite's result codes -> what is said, and the remedy."""
PRIMARY: Final = 0xFF
"""The part of a result code that tells its kind."""


@contextmanager
def told(path: Path) -> Iterator[None]:
    """Run what is inside; what SQLite or the system refuses is raised as SetwrightError that names the book."""
    try:
        yield
    except sqlite3.Error as error:
        code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & PRIMARY
        if code not in SAID:
            raise
        raise SetwrightError(Fault(str(path), *SAID[code])) from None
    except OSError as error:
        if error.errno not in (errno.EACCES, errno.EPERM, errno.EROFS, errno.ENOSPC, errno.ENOTDIR, errno.ENAMETOOLONG):
            raise
        raise SetwrightError(Fault(str(path), f"cannot be opened: {error.strerror}", "name another place")) from None
