"""What a folder of variants is of: the matrix as it was run, without the briefs, so that the folder explains itself."""

from __future__ import annotations

import json
from dataclasses import asdict
from pathlib import Path

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.uses.variants.matrix import Variant, VariantMatrix
from setwright.solver.uses.variants.result_store import MANIFEST, ResultStore

SCHEMA = "setwright.variants/1"


def manifest_of(matrix: VariantMatrix) -> bytes:
    """The matrix as JSON, sorted keys, the same bytes for the same matrix."""
    document = {
        "schema": SCHEMA,
        "title": matrix.title,
        "axes": [[name, list(labels)] for name, labels in matrix.axes],
        "share": matrix.share,
        "stamp": dict(matrix.stamp),
        "variants": [{**asdict(variant), "brief": None} for variant in matrix.variants],
    }
    return (json.dumps(document, sort_keys=True, indent=1, ensure_ascii=False) + "\n").encode()


def write_manifest(store: ResultStore, matrix: VariantMatrix) -> None:
    """Keep the manifest, unless just these bytes stand there."""
    store.keep(store.folder / MANIFEST, manifest_of(matrix))


def read_earlier(folder: Path) -> VariantMatrix | None:
    """The matrix of the run before; None where there is none or it cannot be read: this run writes it anew."""
    try:
        return read_manifest(folder)
    except UsageFault:
        return None


def read_manifest(folder: Path) -> VariantMatrix:
    """The matrix a folder was run with; raises UsageFault where the folder holds none."""
    path = folder / MANIFEST
    try:
        raw = json.loads(path.read_bytes())
        if raw["schema"] != SCHEMA:
            raise ValueError(f"got schema {raw['schema']!r}, expected {SCHEMA!r}")
        axes = tuple((name, tuple(labels)) for name, labels in raw["axes"])
        variants = tuple(Variant(**{**variant, "brief": ""}) for variant in raw["variants"])
        return VariantMatrix(raw["title"], axes, raw["share"], raw["stamp"], variants)
    except OSError as error:
        remedy, on_page = "name a folder that `setwright variants run` wrote", "search the template's variants first"
        raise UsageFault(Fault(str(path), f"cannot be read: {error.strerror or error}", remedy, on_page)) from None
    except (ValueError, KeyError, TypeError) as error:
        raise UsageFault(Fault(str(path), f"is damaged: {error}", "run the template again into this folder")) from None
