"""Lines that share a letter on their day, as A1 and A2 or A and A, made the pair that they are."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from setwright.catalogue.faults import Fault
from setwright.solver.foreign.table_rows import TableLine
from setwright.solver.sheets.common.words import listed

LetteredLine = tuple[str, str, TableLine]
"""Where a line stands, the letter it has (empty for none), and the line."""


def paired(lines: Sequence[LetteredLine], where: str, faults: list[Fault]) -> list[TableLine]:
    """The lines, those of one letter on one day naming each other; three of a letter are a fault."""
    groups: dict[tuple[str, str], list[LetteredLine]] = {}
    for one in lines:
        if one[1] and one[2].pair is None:
            groups.setdefault((one[2].day, one[1]), []).append(one)
    partners: dict[int, str] = {}
    for (_, letter), members in groups.items():
        if len(members) > 2:
            places = listed(at for at, _, _ in members)
            said = f"has {len(members)} lines with the letter {letter}, a pair is two"
            faults.append(Fault(f"{where}: {places}, pair", said, "give the others another letter, or none"))
        elif len(members) == 2:
            (_, _, first), (_, _, second) = members
            partners |= {id(first): second.exercise, id(second): first.exercise}
    return [_with_partner(line, partners) for _, _, line in lines]


def _with_partner(line: TableLine, partners: Mapping[int, str]) -> TableLine:
    partner = partners.get(id(line))
    return line if partner is None else line.model_copy(update={"pair": partner})
