"""Whose instructions a plan was made from: title, maker and version, which stay with it.

A set without a title goes by the slots of its cylinder. The rest are the maker's own words, of
which a set lets no more than `LONGEST` letters pass; longer ones are cut, for nobody types them
here.
"""

from __future__ import annotations

from typing import NamedTuple

from engine.read.fields import Fields
from engine.read.quoted import plain
from engine.say import messages as say
from engine.say.message import Message

LONGEST = 200  # letters of each


class Origin(NamedTuple):
    """The maker's own words and the set's `slots`; not all of them are ""."""

    title: str
    maker: str
    version: str
    slots: str

    @property
    def words(self) -> Message:
        """Return them in a sentence."""
        title = self.title or self._no_title()
        match bool(self.maker), bool(self.version):
            case True, True:
                return say.set_adopted_by_version(
                    title=title, maker=self.maker, version=self.version
                )
            case True, False:
                return say.set_adopted_by(title=title, maker=self.maker)
            case False, True:
                return say.set_adopted_version(title=title, version=self.version)
        return say.set_adopted(title=title)

    def _no_title(self) -> Message:
        return say.set_title(slots=self.slots) if self.slots else say.set_untitled()


NAMES = Origin._fields


def read(fields: Fields) -> Origin | None:
    """Return whose instructions a plan is from, None where it is from nobody's."""
    fields.only(NAMES)
    told = [(fields.text(name) or "").strip() for name in NAMES]
    return Origin(*(plain(text[:LONGEST]) for text in told)) if any(told) else None
