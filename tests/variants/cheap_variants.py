"""Variants that cost nothing: they go through the real store and workers, but a hash stands for their search."""

from __future__ import annotations

import hashlib
import json
import os
import time
from pathlib import Path
from typing import Any

from setwright.catalogue.load import load_catalogue
from setwright.solver.rulebook import RULES
from setwright.solver.uses.variants.matrix import VariantMatrix, matrix_of
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.results import written_result
from setwright.solver.uses.variants.running import Job
from setwright.solver.uses.variants.task import CLASH, SOLVED, VariantTask
from setwright.solver.uses.variants.template import template_of

STAMP: dict[str, Any] = {"version": "test"}
TRUE_SIZE = 16_700
"""Bytes of a stored week (measured over the house template)."""
KITS = ["bands", "bodyweight", "home-dumbbells", "hotel-gym"]
TWO_HUNDRED: dict[str, Any] = {
    "title": "Two hundred",
    "vary": {"days": [1, 2, 3, 4, 5], "kits": KITS, "minutes": list(range(30, 80, 5))},
}
TEN: dict[str, Any] = {"vary": {"days": [1], "kits": ["bands", "hotel-gym"], "minutes": [20, 25, 30, 35, 40]}}


def matrix(raw: dict[str, Any], stamp: dict[str, Any] | None = None) -> VariantMatrix:
    return matrix_of(template_of(raw, "test"), load_catalogue(), STAMP if stamp is None else stamp, tuple(RULES))


def job(raw: dict[str, Any], folder: Path, work: Any = None, **more: Any) -> Job:
    store = ResultStore(folder)
    store.open()
    return Job(matrix(raw), store, work or cheap, **more)


def cheap(task: VariantTask) -> bytes:
    """A result that depends on the whole task, the week it extends included; every thirteenth is impossible."""
    said = f"{task.key} {task.brief} {hashlib.sha256(task.previous or b'').hexdigest()}"
    number = int(hashlib.sha256(said.encode()).hexdigest(), 16)
    if number % 13 == 0:
        return written_result(task, CLASH, "must vertical-pull", clash={"conflicts": []})
    days = [{"seconds": 60 * (number % 40), "entries": [{"exercise": f"lift-{number % 7}"}]}]
    kept = {"name": task.extends, "kept": ["mon a"], "dropped": [], "added": [], "change": 1, "given_up": 0.5}
    index = number % 1000 / 10
    week = {"stimulus": index, "score": number % 900 / 10, "gap_share": 0.01, "days": days}
    week |= {"interval": [round(0.8 * index), round(1.2 * index)], "brief": json.loads(task.brief)}
    return written_result(task, SOLVED, extends=kept if task.previous else None, week=week)


def unhurried(task: VariantTask) -> bytes:
    """The same a little later, so that there is a moment to be killed in."""
    time.sleep(0.02)
    return cheap(task)


def short(task: VariantTask) -> bytes:
    """A variant of fifty milliseconds."""
    time.sleep(0.05)
    return cheap(task)


def nothing(task: VariantTask) -> bytes:
    """The least that is a result."""
    return written_result(task, CLASH)


def hollow(task: VariantTask) -> bytes:
    """Nothing either, but a result of a true one's size, for longer variants to carry."""
    return written_result(task, SOLVED, week={"padding": "x" * TRUE_SIZE})


def deadly(task: VariantTask) -> bytes:
    """The same, but the variant of 30 minutes with bands always takes its worker with it."""
    if task.values["minutes"] == "30" and task.values["kit"] == "bands":
        os._exit(9)
    return cheap(task)


def contents(folder: Path) -> dict[str, bytes]:
    """Every result in a folder by its file's name; fails on half files."""
    found = {path.name: path.read_bytes() for path in sorted((folder / "results").glob("*/*"))}
    assert all(json.loads(data)["key"] + ".json" == name for name, data in found.items())
    return found
