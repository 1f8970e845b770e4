"""Files as one ZIP archive to take away."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from typing import Final

from starlette.responses import Response

FIRST_MOMENT: Final = (1980, 1, 1, 0, 0, 0)
"""The moment of every file in an archive (the earliest that ZIP has): the same files give the same bytes."""


def archive(files: Mapping[str, bytes], stem: str) -> Response:
    """Some files (name -> bytes) as one archive, deflated, to save as `stem`.zip."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as held:
        for name, data in files.items():
            held.writestr(zipfile.ZipInfo(name, FIRST_MOMENT), data, zipfile.ZIP_DEFLATED)
    headers = {"Content-Disposition": f'attachment; filename="{stem}.zip"'}
    return Response(packed.getvalue(), media_type="application/zip", headers=headers)
