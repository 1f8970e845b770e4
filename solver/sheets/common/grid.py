"""A plain table: headings, a rule under them, rows; as narrow as its words."""

from __future__ import annotations

from collections.abc import Sequence

SIDES = {"l": "left", "r": "right"}


def grid(
    headings: Sequence[str], rows: Sequence[Sequence[str]], sides: str, widest: Sequence[int | None] | None = None
) -> list[str]:
    """The lines of a table; `sides` has one l or r for each column, `widest` the width each is wrapped at.

    The headings go in as a row, because tabulate pads columns two letters beyond a heading it is told of.
    """
    from tabulate import tabulate

    text = tabulate(
        [list(headings), *(list(row) for row in rows)],
        tablefmt="simple",
        disable_numparse=True,
        colalign=[SIDES[side] for side in sides],
        maxcolwidths=list(widest) if widest else None,
    )
    rule, heading, *body = text.splitlines()
    return [line.rstrip() for line in (heading, rule, *body[:-1])]
