"""The fields of a request, and what was typed read back: `fields`, `read`."""

from typing import TypedDict

from engine.answers.contract.shown import Problem, Quantity


class Readings(TypedDict):
    """What was typed, read back."""

    readings: dict[str, Quantity]
    errors: list[Problem]


class RequestField(TypedDict):
    """A field of a request."""

    name: str
    kind: str
    echoed: bool


class RequestList(TypedDict):
    """A list of rows."""

    name: str
    most: int


class FieldList(TypedDict):
    """Every field of a request."""

    fields: list[RequestField]
    lists: list[RequestList]
