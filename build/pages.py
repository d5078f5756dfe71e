"""The page and the install manifest of each language, from their templates.

A template says `say("id")` for a message of templates.ftl. It knows the `assets` by name, the
`language` and all `pages` there are by language with their `names`, and the `pencil`: the sock that
stands there before anything is told.
"""

from __future__ import annotations

import functools
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import jinja2
from markupsafe import Markup

from build.catalogue import ENGLISH, Message, WordsError, spoken
from build.words import TEMPLATES
from engine import api, sources
from engine.sock.wanted import USUAL_CYLINDER


def address(language: str) -> str:
    """A language's page, relative to the site; that of English is the site's own."""
    return "" if language == ENGLISH else f"{language}.html"


class Pages:
    """`catalogues` are the templates' messages by language, `facts` what every template knows."""

    def __init__(
        self, webapp: Path, catalogues: Mapping[str, Mapping[str, Message]], facts: dict[str, Any]
    ) -> None:
        self.catalogues = catalogues
        self.jinja = jinja2.Environment(
            loader=jinja2.FileSystemLoader([webapp / "templates", webapp]),
            autoescape=True,
            undefined=jinja2.StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        self.facts = {
            **facts,
            "pages": {language: address(language) for language in catalogues},
            "names": {language: self.say(language, "language-name") for language in catalogues},
            "usual_cylinder": USUAL_CYLINDER.slots,
            "usual_slots": [(one, one) for one in map(int, sources.SLOTS_USUAL)],
            "pencil": api.answer({"do": "pencil", "request": {}}),
        }

    def say(self, language: str, name: str, **given: str | float) -> str:
        """A message in a language; with tags, markup. Raises WordsError where there is none."""
        message = self.catalogues[language].get(name)
        if message is None:
            raise WordsError(f"{TEMPLATES}.ftl has no {name}")
        said = spoken(message, given, language)
        return Markup(said) if message.marked else said  # noqa: S704 (tags are ours, and looked at)

    def render(
        self, template: str, language: str, assets: Mapping[str, str], version: str = ""
    ) -> bytes:
        """A template in a language. Raises jinja2.TemplateError or WordsError."""
        text = self.jinja.get_template(template).render(
            **self.facts,
            assets=assets,
            language=language,
            version=version,
            say=functools.partial(self.say, language),
        )
        return re.sub(r"\n\s+", "\n", text).encode()
