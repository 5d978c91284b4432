"""A letter by the operator's own mail server, where one was named."""

import smtplib
import socket
import ssl
from dataclasses import dataclass
from email.message import EmailMessage
from email.utils import formatdate, make_msgid
from typing import Any
from urllib.parse import unquote, urlsplit

from webapp.config import Config
from webapp.reminders.outward import watch

PATIENCE = 10.0  # seconds, for one word
WHOLE = 20.0  # seconds, for all of a letter: a server that talks on for ever holds up every reminder


@dataclass(frozen=True)
class Mail:
    """A letter to one address."""

    to: str
    subject: str
    text: str


def can_post(config: Config) -> bool:
    """Tell whether the operator named a mail server, whom letters are from, and where their links lead."""
    return bool(config.smtp and config.mail_from and config.address)


def post(config: Config, mail: Mail) -> bool:
    """Hand a letter over; tells whether the server took it."""
    try:
        with _connect(config.smtp) as server:
            server.send_message(written(mail, config.mail_from))
    except (OSError, smtplib.SMTPException, ValueError):
        return False
    return True


def written(mail: Mail, sender: str) -> EmailMessage:
    """Write the letter out; a line's end in what becomes a header is refused by the library."""
    message = EmailMessage()
    message["From"], message["To"], message["Subject"] = sender, mail.to, mail.subject
    message["Date"], message["Message-ID"] = formatdate(), make_msgid(domain="evenrow.invalid")
    message["Auto-Submitted"] = "auto-generated"  # RFC 3834: no absence is to answer it
    message.set_content(mail.text)
    return message


class _InTime(smtplib.SMTP):
    """A line that ends in time, whatever is said on it."""

    def _get_socket(self, *args: Any) -> socket.socket:
        line: socket.socket = super()._get_socket(*args)  # type: ignore[misc]
        self.end = watch(line, WHOLE)
        return line

    def close(self) -> None:
        getattr(self, "end", lambda: None)()
        super().close()


class _Safe(smtplib.SMTP_SSL, _InTime):
    """The same, encrypted from the first word."""


def _connect(address: str) -> smtplib.SMTP:
    parts = urlsplit(address)
    host, safe = parts.hostname or "", parts.scheme == "smtps"
    server: smtplib.SMTP
    if safe:
        context = ssl.create_default_context()
        server = _Safe(host, parts.port or 465, timeout=PATIENCE, context=context)
    else:
        server = _InTime(host, parts.port or 587, timeout=PATIENCE)
        server.ehlo()
        if server.has_extn("starttls"):
            server.starttls(context=ssl.create_default_context())
            server.ehlo()
    if parts.username:
        server.login(unquote(parts.username), unquote(parts.password or ""))
    return server
