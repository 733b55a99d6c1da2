"""A time stamp authority made by OpenSSL on this computer, for the tests (RFC 3161)."""

import shutil
import subprocess
from dataclasses import dataclass
from pathlib import Path

_SETTINGS = """
[req]
distinguished_name = name
x509_extensions = root
prompt = no
[name]
CN = Made-up root
[root]
basicConstraints = critical, CA:TRUE
keyUsage = critical, keyCertSign, cRLSign
subjectKeyIdentifier = hash
[stamping]
basicConstraints = critical, CA:FALSE
keyUsage = critical, digitalSignature
extendedKeyUsage = critical, timeStamping
[stamper]
serial = ./serial
signer_cert = ./stamper.pem
signer_key = ./stamper.key
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256, sha512
accuracy = secs:1
tsa_name = yes
ess_cert_id_alg = sha256
[stamper_with_all]
certs = ./root.pem
serial = ./serial
signer_cert = ./stamper.pem
signer_key = ./stamper.key
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256
ess_cert_id_alg = sha256
"""


def has_openssl() -> bool:
    return shutil.which("openssl") is not None


@dataclass(frozen=True)
class Authority:
    """The authority's folder; ``root`` is the certificate that people trust."""

    folder: Path

    @property
    def root(self) -> Path:
        return self.folder / "root.pem"

    def answer(self, request: Path, reply: Path, *, enclose_root: bool = False) -> Path:
        section = "stamper_with_all" if enclose_root else "stamper"
        self.run(f"ts -reply -config set.cnf -section {section} -queryfile {request} -out {reply}")
        return reply

    def run(self, words: str) -> str:
        done = subprocess.run(
            ["openssl", *words.split()], cwd=self.folder, capture_output=True, text=True
        )
        assert done.returncode == 0, done.stderr
        return done.stdout + done.stderr


def made_in(folder: Path) -> Authority:
    """An authority with keys and certificates of its own."""
    folder.mkdir()
    (folder / "set.cnf").write_text(_SETTINGS)
    (folder / "serial").write_text("01\n")
    authority = Authority(folder)
    curve = "-newkey ec -pkeyopt ec_paramgen_curve:prime256v1 -nodes"
    authority.run(f"req -x509 {curve} -keyout root.key -out root.pem -days 30 -config set.cnf")
    authority.run(f"req -new {curve} -keyout stamper.key -out stamper.csr -subj /CN=Stamper")
    authority.run(
        "x509 -req -in stamper.csr -CA root.pem -CAkey root.key -CAcreateserial "
        "-out stamper.pem -days 30 -extfile set.cnf -extensions stamping"
    )
    return authority
