"""Faults collected from several acts, so that all of them are told at once."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from setwright.catalogue.faults import Fault, SetwrightError, UsageFault

Found = TypeVar("Found")


class FaultCollector:
    """The faults met so far; `raise_all` tells them."""

    def __init__(self) -> None:
        self._faults: list[Fault] = []
        self._usage = False

    def result_of(self, act: Callable[[], Found]) -> Found | None:
        """What the act returns, or None where it raised and its faults were collected."""
        try:
            return act()
        except SetwrightError as error:
            self._faults += error.faults
            self._usage = self._usage or isinstance(error, UsageFault)
            return None

    def add(self, faults: list[Fault]) -> None:
        """Collect faults of wrong use."""
        self._faults += faults
        self._usage = self._usage or bool(faults)

    def raise_all(self) -> None:
        """Raise what was collected: UsageFault when any of it is wrong use, else SetwrightError; nothing for none."""
        if self._faults:
            raise (UsageFault if self._usage else SetwrightError)(self._faults)
