"""What is vendored is what was published: held by its digest, with its licence beside it."""

import hashlib

from webapp.places import STATIC

VENDOR = STATIC / "vendor"


def test_vendored_files_have_the_digest_they_were_published_with():
    """htmx.org 4.0.1 as in its npm package, dist/htmx.min.js."""
    listed = dict(reversed(line.split()) for line in (VENDOR / "SHA256SUMS").read_text().splitlines())
    found = {p.name: hashlib.sha256(p.read_bytes()).hexdigest() for p in VENDOR.glob("*.js")}
    assert found == listed
    assert (VENDOR / "htmx-LICENSE.txt").exists()
