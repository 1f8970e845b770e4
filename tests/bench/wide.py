"""The cross-check: `python -m tests.bench.wide [FIRST [LAST]]` runs random briefs, seeds 0 to 199 unless said."""

from __future__ import annotations

import sys
import time
from collections import Counter
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parents[1] / ".names"), str(HERE)]

from crossing import crossed  # noqa: E402
from drawn import drawn  # noqa: E402

from setwright.catalogue.load import load_catalogue  # noqa: E402

COUNT = 200


def main(words: list[str]) -> int:
    """Print a line for each brief; the exit code is 1 when anything disagrees."""
    first, last = (int(words[0]), int(words[-1])) if words else (0, COUNT - 1)
    catalogue, ends, wrong = load_catalogue(), Counter[str](), 0
    for seed in range(first, last + 1):
        begun = time.monotonic()
        found = crossed(drawn(seed, catalogue), catalogue)
        ends[found.ended] += 1
        wrong += bool(found.faults)
        sizes = f"{found.columns} columns, model above audit {found.above:.0f}, engines ahead {found.left:.0f} units"
        print(f"{seed}: {found.ended}, {sizes}, {time.monotonic() - begun:.1f} s", flush=True)
        for fault in found.faults:
            print(f"   SEED {seed} DISAGREES: {fault}", flush=True)
    print(f"{sum(ends.values())} briefs: {dict(sorted(ends.items()))}; {wrong} with a disagreement")
    return int(wrong > 0)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
