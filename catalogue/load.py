"""The catalogue read from its data files, and from a coach's own file laid over them."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any

from setwright.catalogue.check import check_catalogue
from setwright.catalogue.entries import Catalogue
from setwright.catalogue.faults import CatalogueFault, Fault
from setwright.catalogue.overlay import lay_over
from setwright.catalogue.parse import parse_catalogue
from setwright.catalogue.toml_text import decoded, toml_tables

DATA = Path(__file__).parent / "data"


def load_catalogue(overlay: Path | None = None) -> Catalogue:
    """The whole catalogue, checked; raises CatalogueFault with every fault found at once."""
    return _load(overlay.resolve() if overlay else None)


@lru_cache(maxsize=4)
def _load(overlay: Path | None) -> Catalogue:
    digest = hashlib.sha256()
    tables: dict[str, Any] = {}
    for path in sorted(DATA.rglob("*.toml")):
        digest.update(path.read_bytes())
        merge(tables, read_toml(path), path.name)
    changed: tuple[str, ...] = ()
    if overlay is not None:
        digest.update(overlay.read_bytes() if overlay.is_file() else b"")
        tables, changed = lay_over(tables, read_toml(overlay), overlay.name)
    catalogue = parse_catalogue(tables, digest.hexdigest()[:12], changed)
    raise_if(check_catalogue(catalogue))
    return catalogue


def read_toml(path: Path) -> dict[str, Any]:
    """The tables of one TOML file; raises CatalogueFault where it is missing, not UTF-8 or not TOML."""
    try:
        data = path.read_bytes()
    except OSError as error:
        reason = error.strerror or str(error)
        raise CatalogueFault(Fault(str(path), f"cannot be read: {reason}", "name a TOML file")) from None
    return toml_tables(decoded(data, str(path), CatalogueFault), str(path), CatalogueFault)


def merge(into: dict[str, Any], tables: Mapping[str, Any], name: str) -> None:
    """Add one file's tables; arrays of tables are joined, tables are united."""
    for key, value in tables.items():
        if isinstance(value, list):
            for row in value:
                row["_from"] = name
            into.setdefault(key, []).extend(value)
        elif isinstance(value, dict):
            into.setdefault(key, {}).update(value)
        else:
            into[key] = value


def raise_if(faults: Iterable[Fault]) -> None:
    """Raise all faults at once, or nothing."""
    found = tuple(faults)
    if found:
        raise CatalogueFault(found)
