"""Bytes as push services and phones write them: base64url without padding (RFC 7515, section 2). Pure."""

import base64
import binascii


def unpadded(data: bytes) -> str:
    """Write bytes."""
    return base64.urlsafe_b64encode(data).rstrip(b"=").decode()


def read(text: str) -> bytes:
    """Read bytes, padded or not; ValueError if it is none."""
    try:
        return base64.b64decode(text.rstrip("=") + "=" * (-len(text.rstrip("=")) % 4), b"-_", validate=True)
    except (binascii.Error, UnicodeEncodeError) as error:
        raise ValueError("not base64url") from error
