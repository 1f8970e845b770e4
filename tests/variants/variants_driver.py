"""A run of two hundred cheap variants as a program of its own, to be killed: FOLDER [MOST BYTES OF A FILE]."""

from __future__ import annotations

import resource
import sys
from pathlib import Path

from cheap_variants import TWO_HUNDRED, job, unhurried

from setwright.catalogue.faults import SetwrightError
from setwright.solver.uses.variants.running import run_variants
from setwright.solver.uses.variants.workers import ProcessPool

if __name__ == "__main__":
    if len(sys.argv) > 2:
        most = int(sys.argv[2])
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))
    pool = ProcessPool(2)
    try:
        print(run_variants(job(TWO_HUNDRED, Path(sys.argv[1]), unhurried), pool).done)
    except SetwrightError as error:
        sys.exit(str(error))
    finally:
        pool.close(True)
