"""LibreOffice as a second reader and writer of workbooks, where it is installed."""

from __future__ import annotations

import shutil
import subprocess
import tempfile
from pathlib import Path


def office() -> str | None:
    """The program's path, or None."""
    return shutil.which("soffice")


def resaved(data: bytes) -> bytes:
    """A workbook opened and saved again as xlsx by LibreOffice, in a profile of its own."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "in.xlsx").write_bytes(data)
        (folder / "out").mkdir()
        profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
        to = ["--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", str(folder / "out"), str(folder / "in.xlsx")]
        subprocess.run(
            [office() or "soffice", profile, "--headless", *to], check=True, capture_output=True, timeout=120
        )
        return (folder / "out" / "in.xlsx").read_bytes()
