"""Where the book is: as named, as the environment says, beside the work, or in the user's own data folder."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

VARIABLE: Final = "SETWRIGHT_BOOK"
"""The environment variable that names the book."""
BESIDE: Final = "setwright-book.db"
"""A book of this name in the working folder is taken before the user's own."""


def book_place(named: Path | None = None) -> Path:
    """The book's path: the one named, else the environment's, else the working folder's, else the user's own."""
    if named is not None:
        return named
    if said := os.environ.get(VARIABLE):
        return Path(said)
    beside = Path(BESIDE)
    if beside.is_file():
        return beside
    from platformdirs import user_data_path

    return user_data_path("setwright", appauthor=False) / BESIDE
