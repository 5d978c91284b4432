"""What every answer says about itself."""

from flask import Flask, Response, request

POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
        "require-trusted-types-for 'script'",
        "trusted-types default",
    )
)


def init_app(app: Flask) -> None:
    """Set the policy on what can run, and plain caching rules on what can be kept."""

    @app.after_request
    def add(response: Response) -> Response:
        response.headers["X-Content-Type-Options"] = "nosniff"
        if request.endpoint == "static":
            return response
        response.headers["Content-Security-Policy"] = POLICY
        response.headers["Referrer-Policy"] = "same-origin"
        if request.is_secure:  # on plain http browsers take no notice, and complain
            response.headers["Cross-Origin-Opener-Policy"] = "same-origin"
        response.headers["Cross-Origin-Resource-Policy"] = "same-origin"
        response.headers.setdefault("Cache-Control", "private, no-cache")
        return response
