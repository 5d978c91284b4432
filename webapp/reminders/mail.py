"""A letter by the operator's own mail server, where one was named."""

import smtplib
import ssl
from dataclasses import dataclass
from email.message import EmailMessage
from urllib.parse import unquote, urlsplit

from webapp.config import Config

PATIENCE = 10.0  # seconds


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
    message["Auto-Submitted"] = "auto-generated"  # RFC 3834: no absence is to answer it
    message.set_content(mail.text)
    return message


def _connect(address: str) -> smtplib.SMTP:
    parts = urlsplit(address)
    host, safe = parts.hostname or "", parts.scheme == "smtps"
    server: smtplib.SMTP
    if safe:
        context = ssl.create_default_context()
        server = smtplib.SMTP_SSL(host, parts.port or 465, timeout=PATIENCE, context=context)
    else:
        server = smtplib.SMTP(host, parts.port or 587, timeout=PATIENCE)
        server.ehlo()
        if server.has_extn("starttls"):
            server.starttls(context=ssl.create_default_context())
            server.ehlo()
    if parts.username:
        server.login(unquote(parts.username), unquote(parts.password or ""))
    return server
