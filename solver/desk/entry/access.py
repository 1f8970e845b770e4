"""How a desk is reached: on this machine alone, or on a network by a password and a certificate."""

from __future__ import annotations

import ssl
from dataclasses import dataclass, field
from ipaddress import ip_address
from pathlib import Path
from typing import Final

from setwright.catalogue.faults import Fault, UsageFault
from setwright.solver.desk.entry.passwords import Password, as_typed

LOOPBACK: Final = "127.0.0.1"
PASSWORD: Final = "SETWRIGHT_DESK_PASSWORD"
"""The environment variable that may say the password of a desk on a network."""
LEAST_LETTERS: Final = 12
"""Letters of a password (common practice, no source)."""


USUAL_PORTS: Final = {"http": 80, "https": 443}
"""The ports that browsers leave away in an address."""


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
        """What a browser says in the header Host: each name with the port, without it where it is the usual one."""
        names = {self.host} if self.secure else {LOOPBACK, "localhost"}
        left_away = port == USUAL_PORTS[self.scheme]
        found = {_in_an_address(name) for name in names}
        return frozenset({f"{name}:{port}" for name in found} | (found if left_away else set()))

    def address(self, port: int) -> str:
        """The address of its first page."""
        return f"{self.scheme}://{_in_an_address(self.host)}:{port}/"


def network_access(host: str, certificate: Path | None, key: Path | None, password: str | None) -> Access:
    """The access from a network; raises UsageFault for each thing that is missing or unsound.

    An IPv6 address may stand in brackets, as in an address of a page.
    """
    host = host.removeprefix("[").removesuffix("]")
    faults = [
        Fault(f"--{name}", "is missing: a desk on a network needs TLS", "name the file of a certificate and its key")
        for name, path in (("certificate", certificate), ("key", key))
        if path is None
    ]
    if host in ("0.0.0.0", "::", ""):
        faults.append(Fault("--host", f"got {host!r}, expected one address", "name this machine's own address"))
    letters = len(as_typed(password or ""))
    if password is None:
        faults.append(Fault("password", "is missing", f"set {PASSWORD}, or run this in a terminal, which asks for it"))
    elif letters < LEAST_LETTERS:
        said = f"has {letters} letters, expected at least {LEAST_LETTERS}"
        faults.append(Fault("password", said, "spaces inside count, those at its ends do not"))
    if not faults:
        assert certificate is not None and key is not None and password is not None
        faults += _unsound(certificate, key)
    if faults:
        raise UsageFault(faults)
    assert password is not None
    return Access(host, certificate, key, Password.of(password))


def _in_an_address(host: str) -> str:
    """A host as browsers write it: an IPv6 address short and in brackets, a name in small letters."""
    try:
        found = ip_address(host)
    except ValueError:
        return host.casefold()
    return f"[{found.compressed}]" if found.version == 6 else str(found)


def _unsound(certificate: Path, key: Path) -> list[Fault]:
    try:
        ssl.create_default_context(ssl.Purpose.CLIENT_AUTH).load_cert_chain(certificate, key)
    except (OSError, ValueError) as error:
        return [Fault("--certificate", f"cannot be used with its key ({error})", "both are files in PEM form")]
    return []
