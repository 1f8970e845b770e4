"""Cuts the card's typeface out of its source: `python -m tests.typeface FOLDER` with the TTF folder of the npm package.

The source is Source Sans 3.052 (npm package source-sans 3.52.0, SIL Open Font License 1.1), which reserves its name; so
a subset of it must go by another one. Letters, figures and signs of the Latin, Greek and Cyrillic scripts are kept.
"""

from __future__ import annotations

import sys
from pathlib import Path

FAMILY = "Setwright Sans"
WEIGHTS = ("Regular", "Semibold", "Bold")
TARGET = Path(__file__).parents[1] / "solver" / "sheets" / "data"
KEPT = (
    (0x20, 0x7E), (0xA0, 0x24F), (0x259, 0x259), (0x2B0, 0x36F), (0x370, 0x3FF), (0x400, 0x52F), (0x1E00, 0x1FFF),
    (0x2010, 0x2027), (0x202F, 0x205F), (0x2070, 0x20CF), (0x2100, 0x218F), (0x2190, 0x2199), (0x2200, 0x22FF),
    (0x25A0, 0x25FF), (0x2610, 0x2612), (0x2713, 0x2717),
)  # fmt: skip
FEATURES = ("kern", "liga", "tnum", "lnum", "mark", "mkmk", "ccmp", "locl", "case")
KEPT_NAMES = (0, 5, 7, 13, 14)
"""Copyright, version, trademark, licence and its address; the names proper are written anew."""


def cut(source: Path, weight: str) -> frozenset[int]:
    """One weight cut, renamed and written; the code points it draws."""
    from fontTools import subset
    from fontTools.ttLib import TTFont

    prescriptions = subset.Options(layout_features=list(FEATURES), hinting=False, name_IDs=["*"], notdef_outline=True)
    font = TTFont(source / f"SourceSans3-{weight}.ttf", recalcTimestamp=False)
    cutter = subset.Subsetter(prescriptions)
    cutter.populate(unicodes=[point for low, high in KEPT for point in range(low, high + 1)])
    cutter.subset(font)
    names = font["name"]
    names.names = [name for name in names.names if name.nameID in KEPT_NAMES]
    feasibility_only = FAMILY.replace(" ", "")
    for number, said in ((1, FAMILY), (2, weight), (3, f"{feasibility_only}-{weight}"), (4, f"{FAMILY} {weight}"),
                         (6, f"{feasibility_only}-{weight}"), (16, FAMILY), (17, weight)):  # fmt: skip
        names.setName(said, number, 3, 1, 0x409)
    font.save(TARGET / f"{feasibility_only}-{weight}.ttf")
    return frozenset(font.getBestCmap())


def ranges(points: frozenset[int]) -> str:
    """Code points as lines of hexadecimal ranges, in order."""
    ordered = sorted(points)
    starts = [point for point in ordered if point - 1 not in points]
    ends = [point for point in ordered if point + 1 not in points]
    return "".join(f"{low:04X}-{high:04X}\n" for low, high in zip(starts, ends, strict=True))


def main(source: str) -> None:
    drawn = [cut(Path(source), weight) for weight in WEIGHTS]
    (TARGET / "letters.txt").write_text(ranges(frozenset.intersection(*drawn)), encoding="ascii")


if __name__ == "__main__":
    main(sys.argv[1])
