"""Random briefs planned and audited: `python -m tests.bench.random_briefs [COUNT] [FIRST]` prints how each end came.

The briefs are those of `tests.search.crossing`, by quick search. A week that breaks a rule or passes its bound is a
defect: planning raises AuditFailed, and the audit here is asked once more. Memory is read after the first hundred
briefs and at the end, so that growth from brief to brief is seen.
"""

from __future__ import annotations

import sys
import time
import traceback
from collections import Counter
from pathlib import Path
from statistics import median, quantiles

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / ".names"), str(ROOT / "tests" / "helpers")]

from setwright.solver import SEARCHES, Solved, SolveOptions, audit, plan
from tests.search.crossing import catalogue, drawn

WARM = 100
"""Briefs after which memory is read first: caches are full by then."""


def main(words: list[str]) -> int:
    """Plan so many briefs; the number whose week is broken or whose planning fails."""
    count, first = (int(words[0]) if words else 1000), (int(words[1]) if len(words) > 1 else 0)
    ends: Counter[str] = Counter()
    seconds, gaps, bad, warm = [], [], 0, 0
    for seed in range(first, first + count):
        begun = time.process_time()
        try:
            end = plan(drawn(seed), catalogue(), SolveOptions(SEARCHES["quick"], workers=1))
        except Exception:
            traceback.print_exc()
            print(f"seed {seed} failed", flush=True)
            bad += 1
            continue
        seconds.append(time.process_time() - begun)
        ends[type(end).__name__] += 1
        if isinstance(end, Solved):
            gaps.append(100 * (end.bound - end.score) / end.stimulus if end.stimulus else 0.0)
            broken = audit(end.resolved, end.audit.evaluated.week).broken
            if broken:
                print(f"seed {seed} breaks {[finding.rule for finding in broken]}", flush=True)
                bad += 1
        if seed == first + min(WARM, count) - 1:
            warm = megabytes()
        if (seed - first) % 50 == 49:
            print(f"{seed - first + 1}: {dict(ends)}, {bad} bad, {megabytes()} MB", flush=True)
    tenth = quantiles(seconds, n=10)[-1]
    print(
        f"{count} briefs: {dict(ends)}, {bad} bad; CPU seconds median {median(seconds):.1f}, 90 % {tenth:.1f}, "
        f"worst {max(seconds):.1f}; gap median {median(gaps):.2f} %, worst {max(gaps):.1f} %; "
        f"{warm} MB after {min(WARM, count)}, {megabytes()} MB at the end"
    )
    return min(bad, 255)


def megabytes() -> int:
    """The memory that this process holds now."""
    pages = int(Path("/proc/self/statm").read_text("ascii").split()[1])
    return pages * 4096 // 2**20


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
