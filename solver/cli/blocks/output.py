"""What the commands of a block write: text or document, and every week's sheets."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

from setwright.catalogue.faults import Fault
from setwright.solver.cli.console.messages import columns

if TYPE_CHECKING:
    from setwright.solver.sheets.handout.coach import Coach
    from setwright.solver.uses.blocks.block import Block


def output_faults(folder: Path | None, formats: tuple[str, ...] | None, plot: Path | None) -> Iterator[Fault]:
    if formats and folder is None:
        yield Fault("--as", "writes sheets, and no folder is named", "add --sheets FOLDER")
    if plot is not None and plot.suffix.lower() != ".svg":
        yield Fault("--plot", f"got {str(plot)!r}, expected a file that ends in .svg", "name an SVG file")


def sheets_of(block: Block, formats: tuple[str, ...], coach: Coach | None) -> dict[str, bytes]:
    """File name -> bytes of every week's sheets, all of them before any is written."""
    from setwright.solver.sheets.blocks.files import block_sheets
    from setwright.solver.sheets.handout.coach import DEFAULT_COACH

    return block_sheets(block, formats, coach or DEFAULT_COACH)


def result_of(block: Block, as_document: bool, private: bool) -> str | dict[str, Any]:
    if as_document:
        from setwright.solver.sheets.document.blocks.block_document import block_document

        return block_document(block, private)
    from setwright.solver.sheets.screen.over_time.block import block_text

    return block_text(block, columns())
