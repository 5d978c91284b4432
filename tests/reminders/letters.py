"""A mail server of the tests' own, on loopback: takes letters, or refuses them."""

import email.policy
import socketserver
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from email.message import EmailMessage


class MailServer:
    def __init__(self) -> None:
        self.letters: list[EmailMessage] = []
        self.refuses = self.never_ends = False
        keeper = self

        class Handler(socketserver.StreamRequestHandler):
            def say(self, line: str) -> None:
                self.wfile.write(line.encode() + b"\r\n")

            def handle(self) -> None:
                while keeper.never_ends:
                    self.say("220-wait")
                    time.sleep(0.1)
                self.say("220 here")
                while line := self.rfile.readline().strip().upper():
                    if line == b"DATA":
                        self.say("354 go on")
                        keeper.take(b"".join(iter(self.rfile.readline, b".\r\n")))
                        self.say("250 taken")
                    elif line == b"QUIT":
                        self.say("221 bye")
                        break
                    elif line.startswith(b"RCPT") and keeper.refuses:
                        self.say("550 nobody")
                    else:
                        self.say("250 well")

        self.server = socketserver.ThreadingTCPServer(("127.0.0.1", 0), Handler)
        self.server.daemon_threads = True
        self.address = f"smtp://127.0.0.1:{self.server.server_address[1]}"
        threading.Thread(target=self.server.serve_forever, args=(0.02,), daemon=True).start()

    def take(self, raw: bytes) -> None:
        letter = email.message_from_bytes(raw, policy=email.policy.default)
        assert isinstance(letter, EmailMessage)
        self.letters.append(letter)


@contextmanager
def mail_server() -> Iterator[MailServer]:
    keeper = MailServer()
    try:
        yield keeper
    finally:
        keeper.server.shutdown()
        keeper.server.server_close()
