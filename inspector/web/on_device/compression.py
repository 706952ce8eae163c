"""Answers that are large: gzipped where the browser takes it."""

import gzip

from flask import Response, request

# Beyond it a higher level costs more time than the hotspot of a tablet gains by it.
_LEVEL = 6


def compressed(data: bytes, mimetype: str) -> Response:
    """Return data, gzipped where the browser takes it.

    Parameters
    ----------
    data : bytes
        Without any secret that compression could betray.
    mimetype : str

    Returns
    -------
    Response
    """
    if "gzip" not in request.accept_encodings:
        return _varying(Response(data, mimetype=mimetype))
    return ready_compressed(gzipped(data), mimetype)


def gzipped(data: bytes) -> bytes:
    """Return data as gzip, the same bytes each time."""
    return gzip.compress(data, compresslevel=_LEVEL, mtime=0)


def ready_compressed(data: bytes, mimetype: str) -> Response:
    """Return what is gzipped already, for a browser that takes it."""
    response = _varying(Response(data, mimetype=mimetype))
    response.content_encoding = "gzip"
    return response


def _varying(response: Response) -> Response:
    response.vary.add("Accept-Encoding")
    return response
