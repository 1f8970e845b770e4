"""Random briefs by every engine: `python -m tests.bench.cross [COUNT [FIRST]]` names each that does not agree."""

from __future__ import annotations

import sys
import time
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / ".names"), str(ROOT / "tests" / "model")]

from crossed import crossed


def main(count: int = 200, first: int = 0) -> int:
    """Print a line for each brief of which something does not hold, then how many ended how; their number."""
    begun, ends, wrong = time.monotonic(), Counter[str](), 0
    for seed in range(first, first + count):
        found = crossed(seed)
        ends[found.end] += 1
        wrong += bool(found.wrong)
        for words in found.wrong:
            print(f"seed {seed}: {words}", flush=True)
    said = ", ".join(f"{number} {end}" for end, number in sorted(ends.items()))
    print(f"{count} briefs: {said}; {wrong} do not agree; {time.monotonic() - begun:.0f} s")
    return wrong


if __name__ == "__main__":
    sys.exit(min(100, main(*map(int, sys.argv[1:]))))
