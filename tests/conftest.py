"""What holds for all tests: files with slow tests are run first, so that no worker ends long after the other."""

from __future__ import annotations

import pytest


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the files that hold a slow test before the others; within each part the order stays."""
    slow = {item.path for item in items if item.get_closest_marker("slow")}
    items.sort(key=lambda item: item.path not in slow)
