"""The run: only what is missing, chains in order, the same bytes on any number of workers and in any shards."""

from __future__ import annotations

import threading
from concurrent.futures import BrokenExecutor, ThreadPoolExecutor
from dataclasses import asdict, replace
from pathlib import Path
from typing import Any, ClassVar

import pytest
from cheap_variants import TEN, TWO_HUNDRED, cheap, contents, job

from setwright.catalogue.faults import SetwrightError
from setwright.solver.batch.worker import solve_task
from setwright.solver.search.limits import SEARCHES
from setwright.solver.sheets.variants.matrix_export import matrix_files
from setwright.solver.sheets.variants.matrix_screen import matrix_text
from setwright.solver.sheets.variants.variant_rows import read_variant_rows
from setwright.solver.uses.variants.manifest import manifest_of, read_manifest, write_manifest
from setwright.solver.uses.variants.result_store import ResultStore
from setwright.solver.uses.variants.results import written_result
from setwright.solver.uses.variants.running import IN_FLIGHT, Job, Tally, run_variants
from setwright.solver.uses.variants.task import UNFINISHED, VariantTask
from setwright.solver.uses.variants.workers import ExecutorWorkers


def in_threads(what: Job, threads: int = 2, **more: Any) -> Tally:
    with ThreadPoolExecutor(threads) as executor:
        return run_variants(what, ExecutorWorkers(executor, threads), **more)


class Counted:
    """Cheap variants that are counted, some of them replaced."""

    def __init__(self, instead: Any = None) -> None:
        self.names: list[str] = []
        self.instead = instead or (lambda task: None)
        self.now = self.most = 0
        self.lock = threading.Lock()

    def __call__(self, task: VariantTask) -> bytes:
        with self.lock:
            self.names.append(task.name)
        found = self.instead(task)
        return cheap(task) if found is None else found


def test_any_number_of_workers_and_any_shards_give_the_same_bytes(tmp_path: Path) -> None:
    one, five = job(TWO_HUNDRED, tmp_path / "one"), job(TWO_HUNDRED, tmp_path / "five")
    assert in_threads(one, 1) == in_threads(five, 5)
    for k in (1, 2, 3):
        in_threads(job(TWO_HUNDRED, tmp_path / "shards", shard=(k, 3)))
    assert contents(tmp_path / "one") == contents(tmp_path / "five") == contents(tmp_path / "shards")
    assert len(contents(tmp_path / "one")) == 200
    files = [matrix_files(j.matrix, read_variant_rows(j.matrix, j.store)) for j in (one, five)]
    assert files[0] == files[1]


def test_shards_hold_whole_chains_and_every_cell_once(tmp_path: Path) -> None:
    whole = job(TWO_HUNDRED, tmp_path)
    parts = [replace(whole, shard=(k, 7)).places() for k in range(1, 8)]
    assert sorted(place for part in parts for place in part) == list(range(200))
    for part in parts:
        assert all(whole.matrix.variants[p].extends in (None, *part) for p in part)


def test_a_second_run_does_nothing(tmp_path: Path) -> None:
    in_threads(job(TEN, tmp_path))
    before, work = contents(tmp_path), Counted()
    tally = in_threads(job(TEN, tmp_path, work))
    assert work.names == [] and tally.kept == tally.variants == 10 and contents(tmp_path) == before


def test_only_what_is_missing_damaged_or_changed_is_done_again(tmp_path: Path) -> None:
    first = job(TEN, tmp_path)
    in_threads(first)
    before, variants = contents(tmp_path), first.matrix.variants
    first.store.remove(variants[1].key)
    first.store.path(variants[7].key).write_bytes(before[f"{variants[7].key}.json"][:-20])
    work = Counted()
    in_threads(job(TEN, tmp_path, work))
    assert sorted(work.names) == sorted([variants[1].name, variants[7].name]) and contents(tmp_path) == before
    changed = {**TEN, "also": [{"when": {"kit": "bands", "minutes": 35}, "brief": {"avoid": ["plank"]}}]}
    work = Counted()
    in_threads(job(changed, tmp_path, work))
    assert work.names == ["1 x 35, bands", "1 x 40, bands"]


def test_a_result_with_one_letter_changed_is_done_again(tmp_path: Path) -> None:
    """Still JSON, still of its key: the digest tells."""
    first = job(TEN, tmp_path)
    in_threads(first)
    before, variant = contents(tmp_path), first.matrix.variants[3]
    changed = before[f"{variant.key}.json"].replace(b'"minutes": "', b'"minutes": "1', 1)
    first.store.path(variant.key).write_bytes(changed)
    work = Counted()
    in_threads(job(TEN, tmp_path, work))
    assert work.names == [variant.name] and contents(tmp_path) == before


def test_a_result_that_goes_while_a_run_needs_it_is_a_clear_error(tmp_path: Path) -> None:
    """As when another run tidies: a longer variant solved without the shorter one would come out otherwise."""
    what = job(TEN, tmp_path)
    in_threads(what)
    solved = [c for c in what.matrix.variants if b'"end": "solved"' in contents(tmp_path)[f"{c.key}.json"]]
    longer = next(
        c for c in what.matrix.variants if c.extends is not None and what.matrix.variants[c.extends] in solved
    )
    what.store.remove(longer.key)

    class ReadOnce(ResultStore):
        """Each result is there for the first look only."""

        seen: ClassVar[set[str]] = set()

        def read(self, key: str) -> bytes | None:
            data = None if key in self.seen else super().read(key)
            self.seen.add(key)
            return data

    with pytest.raises(SetwrightError, match=r"has gone or is damaged.*run the same command again"):
        in_threads(replace(what, store=ReadOnce(tmp_path)))


@pytest.mark.parametrize(
    "error", [ModuleNotFoundError("No module named 'x'"), AttributeError("Can't get attribute 'x'")]
)
def test_a_worker_that_cannot_load_its_work_ends_the_run(tmp_path: Path, error: Exception) -> None:
    def fail(task: VariantTask) -> None:
        raise error

    with pytest.raises(SetwrightError, match=r"a worker cannot load .*'x'; give every worker the same setwright"):
        in_threads(job(TEN, tmp_path, Counted(fail)))
    assert contents(tmp_path) == {}


def test_a_worker_that_returns_something_else_ends_the_run(tmp_path: Path) -> None:
    with pytest.raises(SetwrightError, match="a worker returned no whole result of '1 x 20, bands'"):
        in_threads(job(TEN, tmp_path, Counted(lambda task: b"{}")), 1)


def test_no_more_than_a_few_times_the_workers_are_in_flight(tmp_path: Path) -> None:
    class Watched(ThreadPoolExecutor):
        flying = most = 0

        def submit(self, *args: Any, **more: Any) -> Any:
            self.flying += 1
            self.most = max(self.most, self.flying)
            future = super().submit(*args, **more)
            future.add_done_callback(self.landed)
            return future

        def landed(self, _: Any) -> None:
            self.flying -= 1

    gate = threading.Event()
    threading.Timer(0.05, gate.set).start()
    with Watched(2) as executor:
        run_variants(
            job(TWO_HUNDRED, tmp_path, Counted(lambda task: gate.wait() and None)), ExecutorWorkers(executor, 2)
        )
    assert 2 <= executor.most <= 2 * IN_FLIGHT


def test_a_longer_variant_gets_the_nearest_shorter_one_that_has_a_week(tmp_path: Path) -> None:
    seen: dict[str, bytes | None] = {}

    def look(task: VariantTask) -> None:
        seen[task.name] = task.previous

    what = job(TEN, tmp_path, Counted(look))
    in_threads(what)
    variants, weeks = what.matrix.variants, contents(tmp_path)
    for variant in variants:
        base = variant.extends
        while base is not None and b'"end": "solved"' not in weeks[f"{variants[base].key}.json"]:
            base = variants[base].extends
        assert seen[variant.name] == (None if base is None else weeks[f"{variants[base].key}.json"])


def test_a_cell_that_the_net_ended_is_done_again_and_its_longer_ones_wait(tmp_path: Path) -> None:
    late = Counted(lambda task: written_result(task, UNFINISHED, "late") if task.name == "1 x 30, bands" else None)
    tally = in_threads(job(TEN, tmp_path, late))
    assert (tally.troubled, tally.waiting, tally.left) == (1, 2, 2)
    work = Counted()
    assert in_threads(job(TEN, tmp_path, work)).done == 10
    assert work.names == ["1 x 30, bands", "1 x 35, bands", "1 x 40, bands"]
    in_threads(job(TEN, tmp_path / "other"))
    assert contents(tmp_path) == contents(tmp_path / "other")


def test_a_cell_that_fails_is_set_aside_and_stops_nothing(tmp_path: Path) -> None:
    def fail(task: VariantTask) -> None:
        if task.name == "1 x 40, bands":
            raise RuntimeError("no luck")

    tally = in_threads(job(TEN, tmp_path, Counted(fail)))
    assert tally.troubled == 1 and tally.done == 9


def test_after_a_death_cells_are_tried_alone_and_the_killer_is_set_aside(tmp_path: Path) -> None:
    def die(task: VariantTask) -> None:
        if task.name == "1 x 20, bands":
            raise BrokenExecutor

    work = Counted(die)
    tally = in_threads(job(TEN, tmp_path, work))
    assert tally.troubled == 1 and tally.done == 5 and tally.waiting == 4
    assert work.names.count("1 x 20, bands") in (2, 3)


def test_stopping_keeps_what_is_done(tmp_path: Path) -> None:
    work = Counted()
    tally = in_threads(job(TWO_HUNDRED, tmp_path, work), stopped=lambda: len(work.names) >= 20)
    assert 20 <= tally.done < 40 and tally.left == 200 - tally.done
    assert len(contents(tmp_path)) == tally.done
    assert in_threads(job(TWO_HUNDRED, tmp_path)).kept == tally.done


@pytest.mark.parametrize("more", [{}, {"a_later_limit": 3}])
def test_a_worker_of_another_version_ends_the_run_with_a_clear_error(tmp_path: Path, more: dict[str, int]) -> None:
    """Also where the other version's limits have names that this one does not know."""
    limits = asdict(SEARCHES["quick"]) | more
    what = job(TEN, tmp_path, solve_task)
    other = replace(what, matrix=replace(what.matrix, stamp={"version": "9.9", "limits": limits}))
    with pytest.raises(SetwrightError, match="a worker differs from the run: version"):
        in_threads(other)


def test_the_folder_explains_itself(tmp_path: Path) -> None:
    what = job(TEN, tmp_path)
    write_manifest(what.store, what.matrix)
    assert manifest_of(read_manifest(tmp_path)) == manifest_of(what.matrix)
    rows = read_variant_rows(what.matrix, what.store)
    assert {row.end for row in rows} == {"to do"}
    in_threads(what)
    text = matrix_text(what.matrix, read_variant_rows(what.matrix, what.store), 80)
    assert all(variant.name in text for variant in what.matrix.variants)
    assert max(map(len, text.splitlines())) <= 80


def test_the_files_are_tables_of_every_variant(tmp_path: Path) -> None:
    import csv
    from html.parser import HTMLParser

    raw = {**TEN, "name": "=1+{minutes} & <{kit}>", "title": "<b>"}
    what = job(raw, tmp_path)
    in_threads(what)
    files = matrix_files(what.matrix, read_variant_rows(what.matrix, what.store))
    rows = list(csv.DictReader(files["matrix.csv"].decode().splitlines()))
    assert [row["variant"] for row in rows] == [f"'{variant.name}" for variant in what.matrix.variants]

    class Page(HTMLParser):
        def __init__(self) -> None:
            super().__init__()
            self.tags: list[str] = []
            self.said = ""

        def handle_starttag(self, tag: str, attrs: Any) -> None:
            self.tags.append(tag)

        def handle_data(self, data: str) -> None:
            self.said += data

    page = Page()
    page.feed(files["matrix.html"].decode())
    assert page.tags.count("table") == 2 + 1 and page.tags.count("svg") == sum(row["index"] != "" for row in rows)
    assert "b" not in page.tags and all(variant.name in page.said for variant in what.matrix.variants)
