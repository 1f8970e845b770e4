"""A run of two hundred cheap cells as a program of its own, to be killed: FOLDER [MOST BYTES OF A FILE]."""

from __future__ import annotations

import resource
import sys
from pathlib import Path

from cheap_cells import TWO_HUNDRED, job, unhurried

from setwright.catalogue.faults import SetwrightError
from setwright.solver.uses.variants.engines import Pool
from setwright.solver.uses.variants.run import run

if __name__ == "__main__":
    if len(sys.argv) > 2:
        most = int(sys.argv[2])
        resource.setrlimit(resource.RLIMIT_FSIZE, (most, most))
    pool = Pool(2)
    try:
        print(run(job(TWO_HUNDRED, Path(sys.argv[1]), unhurried), pool).done)
    except SetwrightError as error:
        sys.exit(str(error))
    finally:
        pool.close(True)
