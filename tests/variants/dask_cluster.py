"""Real Dask processes on 127.0.0.1, started and ended by the test that asks for them."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from pathlib import Path
from types import TracebackType

HERE = Path(__file__).parent
NAMES = HERE.parents[1] / ".names"
PATIENCE = 60.0
"""Seconds after which a process that does not come up is a failure."""


class DaskProcesses:
    """A `dask scheduler` and its `dask worker`s, one thread each; ended by their own ids."""

    def __init__(self, folder: Path, workers: int, tls: dict[str, Path] | None = None) -> None:
        self.folder, self.wanted = folder, workers
        self.tls = [part for name, path in (tls or {}).items() for part in (name, str(path))]
        self.protocol = "tls" if tls else "tcp"
        self.workers: list[subprocess.Popen[bytes]] = []

    def __enter__(self) -> DaskProcesses:
        self.folder.mkdir(parents=True, exist_ok=True)
        file = self.folder / "scheduler.json"
        self.scheduler = self.start(
            "scheduler", "--host", "127.0.0.1", "--port", "0", "--no-dashboard", "--protocol", self.protocol,
            "--scheduler-file", str(file),
        )  # fmt: skip
        self.address = ""
        self.until(lambda: self.found(file))
        for _ in range(self.wanted):
            self.add_worker()
        return self

    def found(self, file: Path) -> bool:
        try:
            self.address = json.loads(file.read_text())["address"]
        except (OSError, ValueError):
            return False
        return True

    def add_worker(self, first: str = "") -> None:
        """One more worker; `first` is Python that runs before anything else in it."""
        if first:
            (self.folder / "first").mkdir()
            (self.folder / "first" / "sitecustomize.py").write_text(first)
        self.workers.append(
            self.start(
                "worker", self.address, "--nthreads", "1", "--no-nanny", "--no-dashboard", "--host", "127.0.0.1",
                "--local-directory", str(self.folder), "--death-timeout", "20", first=bool(first),
            )
        )  # fmt: skip

    def start(self, kind: str, *words: str, first: bool = False) -> subprocess.Popen[bytes]:
        before = [str(self.folder / "first")] if first else []
        path = os.pathsep.join([*before, str(NAMES), str(HERE), os.environ.get("PYTHONPATH", "")])
        log = (self.folder / f"{kind}-{time.monotonic_ns()}.log").open("wb")
        command = [sys.executable, "-m", "dask", kind, *words, *self.tls]
        environment = {**os.environ, "PYTHONPATH": path}
        return subprocess.Popen(command, stdout=log, stderr=log, env=environment, cwd=self.folder)

    def until(self, true: object) -> None:
        assert callable(true)
        end = time.monotonic() + PATIENCE
        while not true():
            assert time.monotonic() < end, [p.read_text() for p in sorted(self.folder.glob("*.log"))]
            time.sleep(0.05)

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        for process in (*self.workers, self.scheduler):
            process.kill()
            process.wait()


def tls_files(folder: Path) -> dict[str, Path]:
    """A certificate that signs itself, for 127.0.0.1, with its key: options of `dask scheduler` to files."""
    import datetime
    import ipaddress

    from cryptography import x509
    from cryptography.hazmat.primitives import hashes, serialization
    from cryptography.hazmat.primitives.asymmetric import ec
    from cryptography.x509.oid import NameOID

    folder.mkdir(parents=True, exist_ok=True)
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "127.0.0.1")])
    now = datetime.datetime.now(datetime.UTC)
    certificate = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(now - datetime.timedelta(days=1))
        .not_valid_after(now + datetime.timedelta(days=2))
        .add_extension(x509.BasicConstraints(ca=True, path_length=None), critical=True)
        .add_extension(x509.SubjectAlternativeName([x509.IPAddress(ipaddress.ip_address("127.0.0.1"))]), critical=False)
        .sign(key, hashes.SHA256())
    )
    (folder / "cert.pem").write_bytes(certificate.public_bytes(serialization.Encoding.PEM))
    none = serialization.NoEncryption()
    pem = key.private_bytes(serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, none)
    (folder / "key.pem").write_bytes(pem)
    cert = folder / "cert.pem"
    return {"--tls-ca-file": cert, "--tls-cert": cert, "--tls-key": folder / "key.pem"}
