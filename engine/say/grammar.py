"""What a language has besides words: which plural a number takes, and how a list is written.

From CLDR 46 (https://unicode.org/reports/tr35/): plurals.xml, cardinal, and the list patterns of
the kinds "standard" and "or". Browsers have the same from Intl, so the phone needs none of this.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Grammar:
    """Of one language: `plural` names a number's category, `last` and `last_of_two` join a list.

    Each of the two has "and" and "or". `comma` stands before the last of three and more.
    """

    plural: Callable[[float], str]
    words: Mapping[str, str]
    comma: str = ""

    def listed(self, items: Sequence[str], word: str = "and") -> str:
        """Return a list as a text ("a, b, and c")."""
        joined = f" {self.words[word]} "
        if len(items) < 3:
            return joined.join(items)
        return f"{', '.join(items[:-1])}{self.comma}{joined}{items[-1]}"

    def either(self, items: Sequence[str]) -> str:
        """Return a list of which one is meant ("a, b, or c")."""
        return self.listed(items, "or")


def _one_or_other(number: float) -> str:
    return "one" if number == 1 else "other"


_ENGLISH = {"and": "and", "or": "or"}
GRAMMARS = {
    "en": Grammar(_one_or_other, _ENGLISH, ","),
    "en-GB": Grammar(_one_or_other, _ENGLISH),
}


def grammar(language: str) -> Grammar:
    """Return a language's, else that of the language without its region."""
    return GRAMMARS.get(language) or GRAMMARS[language.partition("-")[0]]


def written(value: object) -> str:
    """Return an argument as it stands in a sentence, as scripts write it: 3.0 is 3."""
    return str(int(value)) if isinstance(value, float) and value == int(value) else str(value)
