"""Signatures: Ed25519 (RFC 8032) over manifest.json, keys as PEM files (PKCS #8, SubjectPublicKeyInfo)."""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
from pathlib import Path
from typing import TYPE_CHECKING

from stylobate.core.errors import OutputError, PackageError, UsageError

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

ALGORITHM = "Ed25519"


def new_key(path: Path) -> str:
    """Write a new private key to `path` (readable by its owner only) and the public one to `path`.pub.

    Returns the fingerprint. Raises OutputError: there is a file already, or it cannot be written.
    """
    from cryptography.hazmat.primitives import serialization as form
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    key = Ed25519PrivateKey.generate()
    private = key.private_bytes(form.Encoding.PEM, form.PrivateFormat.PKCS8, form.NoEncryption())
    public = key.public_key().public_bytes(form.Encoding.PEM, form.PublicFormat.SubjectPublicKeyInfo)
    beside = path.with_name(path.name + ".pub")
    made: list[Path] = []
    try:
        for file, content, mode in ((path, private, 0o600), (beside, public, 0o644)):
            with os.fdopen(os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode), "wb") as stream:
                made.append(file)
                stream.write(content)
    except OSError as error:
        for file in made:
            with contextlib.suppress(OSError):
                file.unlink()
        reason = (
            "there is one already" if isinstance(error, FileExistsError) else (error.strerror or str(error)).lower()
        )
        raise OutputError(f"{error.filename or path}: cannot write a key there: {reason}; name another file") from error
    return fingerprint(key.public_key())


def private_key(path: Path) -> Ed25519PrivateKey:
    """A private key. Raises UsageError: not readable, protected by a password, or not Ed25519."""
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
    from cryptography.hazmat.primitives.serialization import load_pem_private_key

    try:
        key = load_pem_private_key(_read(path), password=None)
    except (ValueError, TypeError):
        key = None
    if not isinstance(key, Ed25519PrivateKey):
        raise UsageError(f"{path}: is not an Ed25519 private key without password; make one with --new-key")
    return key


def public_key(path: Path) -> Ed25519PublicKey:
    """A public key. Raises UsageError."""
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
    from cryptography.hazmat.primitives.serialization import load_pem_public_key

    try:
        key = load_pem_public_key(_read(path))
    except ValueError:
        key = None
    if not isinstance(key, Ed25519PublicKey):
        raise UsageError(f"{path}: is not an Ed25519 public key; ask the sender for the file that ends in .pub")
    return key


def fingerprint(key: Ed25519PublicKey) -> str:
    """SHA-256 of the raw public key: what two people compare over the telephone."""
    digits = hashlib.sha256(key.public_bytes_raw()).hexdigest()
    return " ".join(digits[k : k + 4] for k in range(0, 32, 4))


def signature_bytes(key: Ed25519PrivateKey, manifest: bytes) -> bytes:
    """The text of signature.json."""
    values = {"algorithm": ALGORITHM, "public_key": key.public_key().public_bytes_raw().hex(),
              "signature": key.sign(manifest).hex()}  # fmt: skip
    return (json.dumps(values, indent=1) + "\n").encode()


def signed_by(signature: bytes, manifest: bytes, name: str) -> Ed25519PublicKey:
    """The key that signed `manifest`. Raises PackageError: the signature is not in order, or not of this manifest."""
    from cryptography.exceptions import InvalidSignature
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    try:
        values = json.loads(signature)
        if values["algorithm"] != ALGORITHM:
            raise ValueError
        key = Ed25519PublicKey.from_public_bytes(bytes.fromhex(values["public_key"]))
        key.verify(bytes.fromhex(values["signature"]), manifest)
    except (ValueError, KeyError, TypeError, InvalidSignature, RecursionError):
        raise PackageError(f"{name}: its signature does not belong to its content; do not use it") from None
    return key


def _read(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise UsageError(f"{path}: {reason}; name a key file, or make one with --new-key") from error
