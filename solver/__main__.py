"""`python -m setwright.solver`: the command line."""

from __future__ import annotations

from setwright.solver.cli import main

if __name__ == "__main__":
    main()
