"""The usual sock of the page's marks is what the engine draws now."""

from build.usual_sock import WRITTEN, script


def test_it_is_what_the_engine_draws() -> None:
    assert WRITTEN.read_text(encoding="utf-8") == script()
