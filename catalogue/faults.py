"""Faults as values, and the one base error that carries them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True)
class Fault:
    """One thing wrong: where it stands, what is wrong with it, and what to do."""

    where: str
    said: str
    remedy: str = ""

    def __str__(self) -> str:
        text = f"{self.where}: {self.said}" if self.where else self.said
        return f"{text}; {self.remedy}" if self.remedy else text


class SetwrightError(Exception):
    """Any error this tool raises on purpose, with all faults found at once."""

    exit_code = 1

    def __init__(self, faults: Fault | Iterable[Fault]) -> None:
        self.faults: tuple[Fault, ...] = (faults,) if isinstance(faults, Fault) else tuple(faults)
        super().__init__("\n".join(str(fault) for fault in self.faults))


class UsageFault(SetwrightError):
    """What was asked cannot be understood or makes no sense."""

    exit_code = 2


class CatalogueFault(SetwrightError):
    """The catalogue's data contradicts itself."""
