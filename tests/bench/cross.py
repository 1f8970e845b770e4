"""The engines crossed: `python -m tests.bench.cross [COUNT | FIRST-LAST | SEED ...] [--brief]` checks random briefs.

One number is a count of seeds from 0 (200 unsaid), several are seeds. It prints a line for each disagreement and a
summary; the exit code is the number of briefs that disagree (255 at most).
"""

from __future__ import annotations

import sys
import time
import traceback
from pathlib import Path

ROOT = Path(__file__).parents[2]
sys.path[:0] = [str(ROOT / ".names"), str(ROOT / "tests" / "helpers")]

from tests.search.crossing import BRIEF, USUAL, Crossed, Effort, crossed

COUNT = 200


def main(words: list[str]) -> int:
    """Check the briefs asked for; the number that disagree."""
    effort = BRIEF if "--brief" in words else USUAL
    begun = time.monotonic()
    found = [checked(seed, effort) for seed in seeds([w for w in words if w != "--brief"])]
    solved = sum(one.solved for one in found)
    disagreeing = [one.seed for one in found if one.disagreements]
    seconds = time.monotonic() - begun
    print(
        f"{len(found)} briefs: {solved} solved, {len(found) - solved} without a week, "
        f"{len(disagreeing)} disagreeing{''.join(f' {seed}' for seed in disagreeing)}, {seconds:.0f} s"
    )
    return min(len(disagreeing), 255)


def seeds(words: list[str]) -> list[int]:
    """The seeds that the words name."""
    if len(words) == 1 and "-" in words[0]:
        first, last = map(int, words[0].split("-"))
        return list(range(first, last + 1))
    return list(map(int, words)) if len(words) > 1 else list(range(int(words[0]) if words else COUNT))


def checked(seed: int, effort: Effort) -> Crossed:
    """One brief checked, its disagreements printed; an error is one too."""
    try:
        found = crossed(seed, effort)
    except Exception as error:
        traceback.print_exc()
        found = Crossed(seed, False, (f"{type(error).__name__}: {error}",))
    for said in found.disagreements:
        print(f"seed {seed}: {said}", flush=True)
    return found


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
