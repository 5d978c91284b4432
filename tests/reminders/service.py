"""A push service of the tests' own, on loopback: decrypts what it is sent, checks who signed."""

import json
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any
from uuid import uuid4

import http_ece
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.asymmetric.utils import encode_dss_signature

from webapp.reminders.base64url import read, unpadded


def point(key: ec.EllipticCurvePublicKey) -> bytes:
    return key.public_bytes(serialization.Encoding.X962, serialization.PublicFormat.UncompressedPoint)


def signed(authorization: str) -> tuple[dict[str, Any], str]:
    """Check a signature by RFC 8292; gives what it says, and by whose key."""
    scheme, _, rest = authorization.partition(" ")
    assert scheme.lower() == "vapid", authorization
    parts = dict(part.strip().split("=", 1) for part in rest.split(","))
    head, claims, signature = parts["t"].split(".")
    assert json.loads(read(head))["alg"] == "ES256"
    raw = read(signature)
    public = ec.EllipticCurvePublicKey.from_encoded_point(ec.SECP256R1(), read(parts["k"]))
    both = encode_dss_signature(int.from_bytes(raw[:32]), int.from_bytes(raw[32:]))
    public.verify(both, f"{head}.{claims}".encode(), ec.ECDSA(hashes.SHA256()))
    return json.loads(read(claims)), parts["k"]


def new_key() -> ec.EllipticCurvePrivateKey:
    return ec.generate_private_key(ec.SECP256R1())


@dataclass
class Browser:
    """One phone that has subscribed: its keys, and what it was sent."""

    endpoint: str
    private: ec.EllipticCurvePrivateKey = field(
        default_factory=lambda: ec.generate_private_key(ec.SECP256R1())
    )
    secret: bytes = field(default_factory=lambda: uuid4().bytes)
    came: list[dict[str, Any]] = field(default_factory=list)  # each with its headers
    standing: dict[str, dict[str, Any]] = field(default_factory=dict)  # by topic: a later one takes its place
    answers: list[tuple[int, dict[str, str]]] = field(default_factory=list)  # before all others; else 201

    @property
    def keys(self) -> dict[str, str]:
        return {"p256dh": unpadded(point(self.private.public_key())), "auth": unpadded(self.secret)}

    def subscription(self, key: str) -> dict[str, Any]:
        """What the browser hands to the page."""
        return {"endpoint": self.endpoint, "keys": self.keys, "key": key}

    def take(self, headers: Any, body: bytes) -> tuple[int, dict[str, str]]:
        claims, key = signed(headers["Authorization"])
        assert self.endpoint.startswith(claims["aud"] + "/")
        said = http_ece.decrypt(body, private_key=self.private, auth_secret=self.secret, version="aes128gcm")
        told = {"said": json.loads(said), "ttl": int(headers["TTL"]), "topic": headers["Topic"], "key": key}
        self.came.append({**told, "urgency": headers["Urgency"], "sub": claims["sub"], "exp": claims["exp"]})
        status, more = self.answers.pop(0) if self.answers else (201, {})
        if status < 300:
            self.standing[headers["Topic"]] = told["said"]
        return status, more


class PushService:
    """Subscribes phones and answers as it is told."""

    def __init__(self) -> None:
        self.browsers: dict[str, Browser] = {}
        self.wrong: list[str] = []  # what nobody who keeps to the standards would have sent
        self.server = ThreadingHTTPServer(("127.0.0.1", 0), self._handler())
        self.server.daemon_threads = True
        self.origin = f"http://127.0.0.1:{self.server.server_port}"
        threading.Thread(target=self.server.serve_forever, args=(0.02,), daemon=True).start()

    def subscribe(self) -> Browser:
        path = f"/push/{uuid4()}"
        self.browsers[path] = Browser(self.origin + path)
        return self.browsers[path]

    def _handler(self) -> type[BaseHTTPRequestHandler]:
        service = self

        class Handler(BaseHTTPRequestHandler):
            def do_POST(self) -> None:
                body = self.rfile.read(int(self.headers["Content-Length"]))
                browser = service.browsers.get(self.path)
                status, more = (404, {}) if browser is None else service.take(browser, self.headers, body)
                self.send_response(status)
                for name, value in {"Content-Length": "0", **more}.items():
                    self.send_header(name, value)
                self.end_headers()

            do_GET = do_POST

            def log_message(self, *_: object) -> None:
                pass

        return Handler

    def take(self, browser: Browser, headers: Any, body: bytes) -> tuple[int, dict[str, str]]:
        try:
            return browser.take(headers, body)
        except (AssertionError, InvalidSignature, KeyError, TypeError, ValueError) as error:
            self.wrong.append(repr(error))
            return 400, {}


@contextmanager
def push_service() -> Iterator[PushService]:
    service = PushService()
    try:
        yield service
    finally:
        service.server.shutdown()
        service.server.server_close()
    assert service.wrong == []
