"""The demo, served once for all tests of its views."""

import pytest

from inspector import create_app
from inspector.demo.portfolio import prepare_in
from tests.a_server import serving


@pytest.fixture(scope="session")
def demo(tmp_path_factory):
    """The address of the demo's server."""
    data = tmp_path_factory.mktemp("demo")
    prepare_in(data)
    with serving(create_app(data, TESTING=True)) as port:
        yield f"http://127.0.0.1:{port}"
