"""The stamp of a run: all that a result depends on beside its brief, and how a worker is held to it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from importlib.metadata import PackageNotFoundError, version
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.catalogue.version import own_version
from setwright.solver.search.limits import DEFAULT, SEARCHES, Limits
from setwright.solver.sheets.document.provenance import evidence_digest
from setwright.solver.uses.variants.running import WorkerMismatchError

ENGINES: Final = ("ortools", "highspy")


def stamp_of(catalogue: Catalogue, limits: Limits) -> dict[str, Any]:
    """All that a result depends on beside its brief, as JSON values; another of any of these is another key."""
    from setwright.solver.engines.cpsat import SEED

    return {
        "version": own_version(),
        "catalogue": catalogue.digest,
        "evidence": evidence_digest(catalogue),
        "engines": {name: _installed(name) for name in ENGINES},
        "seed": SEED,
        "limits": asdict(limits),
    }


def check_version(asked: Mapping[str, Any]) -> None:
    """Raise WorkerMismatchError where this process has another version than the run's stamp.

    It is checked before more of a task is read: another version may have other limits, catalogues and briefs.
    """
    here = {"version": own_version()}
    if here["version"] != asked.get("version"):
        raise WorkerMismatchError(_differences(asked, here))


def check_stamp(asked: Mapping[str, Any], catalogue: Catalogue) -> None:
    """Raise WorkerMismatchError where this process has other engines, evidence or catalogue than the run's stamp."""
    here = stamp_of(catalogue, SEARCHES[DEFAULT])
    if set(here["limits"]) == set(asked.get("limits", ())):
        here["limits"] = asked["limits"]
    if here != dict(asked):
        raise WorkerMismatchError(_differences(asked, here))


def _installed(name: str) -> str:
    try:
        return version(name)
    except PackageNotFoundError:
        return "unknown"


def _differences(asked: Mapping[str, Any], here: Mapping[str, Any]) -> str:
    parts = [
        f"{name} {here[name]} here, {asked.get(name)} in the run" for name in here if here[name] != asked.get(name)
    ]
    return "a worker differs from the run: " + "; ".join(parts)
