"""What holds for all tests: files with slow tests run first, and no test comes near the user's own book."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from itertools import count
from pathlib import Path

import pytest
from light_search import little_searches

# A tenth of the suite's time went into looking for cycles among the catalogue's and the models' many small objects.
gc.set_threshold(100_000, 50, 100)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the files that hold a slow test before the others; within each part the order stays."""
    slow = {item.path for item in items if item.get_closest_marker("slow")}
    items.sort(key=lambda item: item.path not in slow)


@pytest.fixture(scope="session")
def books(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Places in one folder for books that nobody has made yet; a folder for each would cost milliseconds."""
    folder = tmp_path_factory.mktemp("books")
    return (folder / f"book{number}.db" for number in count())


@pytest.fixture(autouse=True)
def no_book_of_the_user_s(books: Iterator[Path], monkeypatch: pytest.MonkeyPatch) -> None:
    """Every test has a book of its own where it names none, made when it is first opened."""
    monkeypatch.setenv("SETWRIGHT_BOOK", str(next(books)))


@pytest.fixture
def little() -> Iterator[None]:
    """Named searches do little work: for tests of what a command does, not of how good its week is."""
    with little_searches():
        yield
