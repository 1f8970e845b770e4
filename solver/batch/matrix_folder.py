"""The matrix in the folder of its run: the tables, the page, and a page for each week that it leads to."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from setwright.catalogue.entries import Catalogue
from setwright.solver.batch.stored_weeks import week_handouts
from setwright.solver.brief.defaults import MOST_WEEKS_SHOWN
from setwright.solver.sheets.formats import written
from setwright.solver.sheets.handout.coach import DEFAULT_COACH
from setwright.solver.sheets.variants.matrix_export import PAGE, matrix_files, page_can_be_written
from setwright.solver.sheets.variants.variant_rows import VariantRow
from setwright.solver.uses.variants.matrix import VariantMatrix, file_stem
from setwright.solver.uses.variants.result_store import ResultStore

WEEKS: Final = "weeks"


def write_matrix(
    matrix: VariantMatrix, rows: tuple[VariantRow, ...], store: ResultStore, catalogue: Catalogue
) -> list[str]:
    """Write matrix.csv, changes.csv, matrix.html and weeks/NAME.html; what was left out, in words.

    What would be the same again is left as it is, and a week's page that nothing leads to any more is removed.
    Raises SetwrightError where the folder cannot be written.
    """
    paged = page_can_be_written() and len(rows) <= MOST_WEEKS_SHOWN
    for name, data in matrix_files(matrix, rows, _week_page if paged else lambda field: "").items():
        store.keep(store.folder / name, data)
    led_to = set()
    for variant, handout in week_handouts(matrix, store, catalogue, DEFAULT_COACH) if paged else ():
        path = store.folder / WEEKS / f"{file_stem(variant.name)}.html"
        store.keep(path, written("html", handout))
        led_to.add(path)
    # Without jinja2 the page of the run before stays, and the pages that it leads to stay with it.
    for path in set((store.folder / WEEKS).glob("*.html")) - led_to if page_can_be_written() else ():
        store.drop(path)
    if paged:
        return []
    if page_can_be_written():
        said = f"{PAGE} leads to no pages of weeks, because there are more than {MOST_WEEKS_SHOWN} variants"
        return [f"{said}; `setwright variants sheets` writes them"]
    return [f"{PAGE} is left out: it needs jinja2, pip install 'setwright[page]'"]


def _week_page(field: Mapping[str, Any]) -> str:
    """The address of a field's week beside the page."""
    return f"{WEEKS}/{field['file']}.html"
