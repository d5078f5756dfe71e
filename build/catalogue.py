"""A catalogue of messages: read from Fluent's format, each message looked at by itself.

`webapp/words/LANGUAGE/BUNDLE.ftl` is in the open format of Project Fluent
(https://projectfluent.org/fluent/guide), and so is `engine/say/words/LANGUAGE/ROOM.ftl`. Of Fluent
we take messages, arguments, selects, and five functions: NUMBER writes an argument as the language
writes numbers, LOWER writes it small, LIST and EITHER write a list with "and" or "or" before its
last, SENTENCES writes a list of whole sentences one after the other. A message of the page may
hold the tags in TAGS.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from html.parser import HTMLParser
from pathlib import Path

from fluent.syntax import FluentParser, ast

from engine.say.grammar import grammar, written

ENGLISH = "en"
MOST_WORDS = 30  # of a message; each argument is one
TAGS = {"b", "bdi", "br", "em", "small", "strong"}
CATEGORIES = {"zero", "one", "two", "few", "many", "other"}  # of plurals, as CLDR names them
FUNCTIONS = ("NUMBER", "LOWER", "LIST", "EITHER", "SENTENCES")
# Names that a script cannot give anything (ECMA-262, 12.7.2).
RESERVED = (
    "await|break|case|catch|class|const|continue|debugger|default|delete|do|else|enum|export"
    "|extends|false|finally|for|function|if|import|in|instanceof|new|null|return|super|switch|this"
    "|throw|true|try|typeof|var|void|while|with|yield"
)


class WordsError(Exception):
    """Faults of catalogues, one a line: where, and what is wrong."""


@dataclass(frozen=True)
class Argument:
    """Its place in a sentence. `function` is "" or one of FUNCTIONS."""

    name: str
    function: str = ""


@dataclass(frozen=True)
class Select:
    """One of several sentences, by an argument: a number's plural, or one of a closed set."""

    name: str
    plural: bool
    variants: tuple[tuple[str, Pattern], ...]
    default: str


Pattern = tuple[str | Argument | Select, ...]
# Of an argument: the names it may be; NUMBER; LIST; or TEXT, a text or a number.
NUMBER, LIST, TEXT = frozenset({"NUMBER"}), frozenset({"LIST"}), frozenset[str]()
_KINDS = {"NUMBER": NUMBER, "LIST": LIST, "EITHER": LIST, "SENTENCES": LIST}


@dataclass(frozen=True)
class Message:
    """What is said under one id."""

    id: str
    pattern: Pattern

    @property
    def name(self) -> str:
        """As scripts write it: `rounds-left` is roundsLeft."""
        return re.sub("-(.)", lambda found: found[1].upper(), self.id)

    @cached_property
    def arguments(self) -> dict[str, frozenset[str]]:
        """Each with what it may be."""
        found: dict[str, frozenset[str]] = {}
        for part in parts(self.pattern):
            if isinstance(part, Select):
                keys = NUMBER if part.plural else frozenset(key for key, _ in part.variants)
                found[part.name] = found.get(part.name, TEXT) | keys
            elif isinstance(part, Argument):
                kinds = _KINDS.get(part.function, TEXT)
                found[part.name] = found.get(part.name, TEXT) | kinds
        return dict(sorted(found.items()))

    @property
    def marked(self) -> bool:
        """Whether it holds tags, and so is no plain text."""
        return any(isinstance(part, str) and "<" in part for part in parts(self.pattern))

    def faults(self) -> Iterator[str]:
        """What is wrong with it."""
        if not re.fullmatch("[a-z][a-z0-9]*(-[a-z0-9]+)*", self.id):
            yield "its id is not of small letters and hyphens"
        if re.fullmatch(RESERVED, self.name):
            yield "its id is a word of scripts"
        if (most := _words(self.pattern)) > MOST_WORDS:
            yield f"{most} words, of {MOST_WORDS} at most"
        for pattern in (self.pattern, *(p for s in _selects(self.pattern) for _, p in s.variants)):
            yield from _tag_faults("".join(part for part in pattern if isinstance(part, str)))
        for name, kinds in self.arguments.items():
            if not re.fullmatch("[a-z][A-Za-z0-9]*", name):
                yield f"${name}: an argument is of letters"
            if "NUMBER" in kinds and kinds != NUMBER:
                yield f"${name} is a number here and a name there"
            if "LIST" in kinds and kinds != LIST:
                yield f"${name} is a list here and a name there"


def parts(pattern: Pattern) -> Iterator[str | Argument | Select]:
    """All of a pattern, and of those within."""
    for part in pattern:
        yield part
        if isinstance(part, Select):
            for _, inner in part.variants:
                yield from parts(inner)


def _selects(pattern: Pattern) -> Iterator[Select]:
    return (part for part in parts(pattern) if isinstance(part, Select))


def _longest(pattern: Pattern) -> str:
    """The longest text that it can come to, an argument being x."""
    text = ""
    for part in pattern:
        if isinstance(part, str):
            text += part
        elif isinstance(part, Argument):
            text += "x"
        else:
            text += max((_longest(one) for _, one in part.variants), key=lambda t: len(t.split()))
    return text


def _words(pattern: Pattern) -> int:
    return len(re.sub("<[^>]*>", "", _longest(pattern)).split())


def _tag_faults(text: str) -> Iterator[str]:
    """A tag that is none of TAGS, holds anything but its name, or is not closed."""
    if "<" not in text and "&" not in text:
        return
    still: list[str] = []
    wrong: list[str] = []

    class Look(HTMLParser):
        def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
            if tag not in TAGS or attrs:
                wrong.append(tag)
            elif tag != "br":
                still.append(tag)

        def handle_endtag(self, tag: str) -> None:
            if not still or still.pop() != tag:
                wrong.append(tag)

        def handle_data(self, data: str) -> None:
            if "<" in data:
                wrong.append(data)

    look = Look(convert_charrefs=False)
    look.feed(text)
    look.close()
    if wrong or still:
        yield f"no tag that may stand there, or not closed: {', '.join([*wrong, *still])}"


def read(path: Path) -> dict[str, Message]:
    """A catalogue, by id. Raises WordsError."""
    faults: list[str] = []
    found: dict[str, Message] = {}
    text = path.read_text(encoding="utf-8")
    for entry in FluentParser().parse(text).body:
        if isinstance(entry, ast.Junk):
            line = text.count("\n", 0, entry.span.start if entry.span else 0) + 1
            faults.append(f"{path.name}, line {line}: {entry.annotations[0].message}")
        elif isinstance(entry, ast.Message):
            name: str = entry.id.name
            try:
                if entry.value is None or entry.attributes:
                    raise WordsError("has no words, or attributes besides them")
                message = Message(name, _pattern(entry.value))
            except WordsError as error:
                faults.append(f"{path.name}, {name}: {error}")
                continue
            faults += [f"{path.name}, {name}: {fault}" for fault in message.faults()]
            if name in found:
                faults.append(f"{path.name}, {name}: there twice")
            found[name] = message
        elif isinstance(entry, ast.Term):
            faults.append(f"{path.name}, -{entry.id.name}: terms are not compiled; write it out")
    if faults:
        raise WordsError("\n".join(faults))
    return found


def _pattern(pattern: ast.Pattern) -> Pattern:
    found: list[str | Argument | Select] = []
    for element in pattern.elements:
        part = element.value if isinstance(element, ast.TextElement) else _placed(element)
        if isinstance(part, str) and found and isinstance(found[-1], str):
            found[-1] += part
        else:
            found.append(part)
    return tuple(found)


def _placed(element: ast.PatternElement) -> str | Argument | Select:
    expression = element.expression if isinstance(element, ast.Placeable) else None
    if isinstance(expression, ast.SelectExpression):
        argument = _argument(expression.selector)
        keys = [_key(variant) for variant in expression.variants]
        (default,) = (_key(one) for one in expression.variants if one.default)
        # One by one, "one" and "two" may be names too: a plural always ends in *[other].
        plural = default == "other"
        wrong = [key for key in keys if key.isdigit() != (key not in CATEGORIES)] if plural else []
        wrong += [key for key in keys if key.isdigit() or key == "other"] if not plural else []
        if wrong:
            raise WordsError(f"${argument.name}: {', '.join(wrong)} beside *[{default}]")
        variants = tuple(
            (key, _pattern(one.value)) for key, one in zip(keys, expression.variants, strict=True)
        )
        return Select(argument.name, plural, variants, default)
    if isinstance(expression, ast.StringLiteral):
        literal: str = expression.parse()["value"]
        return literal
    return _argument(expression)


def _key(variant: ast.Variant) -> str:
    key: str = variant.key.name if isinstance(variant.key, ast.Identifier) else variant.key.value
    return key


def _argument(expression: object) -> Argument:
    if isinstance(expression, ast.VariableReference):
        name: str = expression.id.name
        return Argument(name)
    if isinstance(expression, ast.FunctionReference):
        function: str = expression.id.name
        positional = expression.arguments.positional
        alone = len(positional) == 1 and not expression.arguments.named
        if function in FUNCTIONS and alone:
            return Argument(_argument(positional[0]).name, function)
    raise WordsError("holds what is not compiled: only $arguments, selects and functions are")


Given = Mapping[str, str | float | Sequence[str]]


def spoken(message: Message, given: Given, language: str = ENGLISH) -> str:
    """The sentence, with tags as they are and arguments as they were given.

    Raises WordsError for an argument that is missing, superfluous, or, in English, none of its set.
    """
    if given.keys() != message.arguments.keys():
        raise WordsError(f"{message.id} takes {', '.join(message.arguments) or 'no arguments'}")
    return _spoken(message.pattern, language, given)


def _spoken(pattern: Pattern, language: str, given: Given) -> str:
    text = ""
    for part in pattern:
        if isinstance(part, str):
            text += part
        elif isinstance(part, Select):
            value, variants = given[part.name], dict(part.variants)
            key = str(value)
            if part.plural and key not in variants:
                key = grammar(language).plural(_number(value))
            if key not in variants and not part.plural and language == ENGLISH:
                raise WordsError(f"${part.name} is none of {', '.join(variants)}: {key}")
            text += _spoken(variants.get(key, variants[part.default]), language, given)
        else:
            text += _shown(given[part.name], part.function, language)
    return text


def _shown(value: str | float | Sequence[str], function: str, language: str) -> str:
    match function:
        case "NUMBER":
            return f"{_number(value):,}"
        case "LIST" | "EITHER":
            word = "and" if function == "LIST" else "or"
            return grammar(language).listed([written(one) for one in _list(value)], word)
        case "SENTENCES":
            return " ".join(written(one) for one in _list(value))
        case "LOWER":
            return written(value).lower()
        case _:
            return written(value)


def _number(value: str | float | Sequence[str]) -> float:
    if isinstance(value, int | float):
        return value
    raise WordsError(f"{value} is no number")


def _list(value: str | float | Sequence[str]) -> Sequence[str]:
    if isinstance(value, list | tuple):
        return value
    raise WordsError(f"{value} is no list")
