"""How a desk is reached: on this machine alone, or on a network by a password and a certificate."""

from __future__ import annotations

import ssl
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.desk.passwords import Password

LOOPBACK: Final = "127.0.0.1"
LEAST_LETTERS: Final = 12
"""Letters of a password (common practice, no source)."""


@dataclass(frozen=True)
class Access:
    """Where a desk listens and how it is entered; the defaults are those of a desk for this machine alone."""

    host: str = LOOPBACK
    certificate: Path | None = None
    key: Path | None = None
    password: Password | None = field(default=None, repr=False)

    @property
    def secure(self) -> bool:
        """Whether it is served by TLS."""
        return self.certificate is not None

    @property
    def scheme(self) -> str:
        """http or https."""
        return "https" if self.secure else "http"

    def hosts(self, port: int) -> frozenset[str]:
        """The names, with the port, under which the desk answers."""
        names = {self.host} if self.secure else {LOOPBACK, "localhost"}
        return frozenset(f"{name}:{port}" for name in names)


def network_access(host: str, certificate: Path | None, key: Path | None, password: str) -> Access:
    """The access from a network; raises UsageFault for each thing that is missing or unsound."""
    faults = [
        Fault(f"--{name}", "is missing: a desk on a network needs TLS", "name the file of a certificate and its key")
        for name, path in (("certificate", certificate), ("key", key))
        if path is None
    ]
    if host in ("0.0.0.0", "::", ""):
        faults.append(Fault("--host", f"got {host!r}, expected one address", "name this machine's own address"))
    if len(password) < LEAST_LETTERS:
        faults.append(Fault("password", f"has {len(password)} letters, expected at least {LEAST_LETTERS}"))
    if not faults:
        assert certificate is not None and key is not None
        faults += _unsound(certificate, key)
    if faults:
        raise UsageFault(faults)
    return Access(host, certificate, key, Password.of(password))


def _unsound(certificate: Path, key: Path) -> list[Fault]:
    try:
        ssl.create_default_context(ssl.Purpose.CLIENT_AUTH).load_cert_chain(certificate, key)
    except (OSError, ValueError) as error:
        return [Fault("--certificate", f"cannot be used with its key ({error})", "both are files in PEM form")]
    return []
