"""A message: the id of a sentence and what stands in it. The sentence itself is the catalogue's.

`engine.say.messages` makes them, one function for each id; `build/words.py` writes that module's
types from the catalogue, so that mypy knows every id and argument. Whoever shows an answer turns
messages into sentences: the phone's worker, and `engine.say.aloud` for a terminal.
"""

from __future__ import annotations

from typing import Any

ID = "say"  # the key of a message's id; its other keys are arguments


class Message(dict[str, Any]):
    """A message as JSON has it: `{"say": id, argument: value, ...}`. It is not changed once made.

    An argument is a text, a number, another message, or a tuple of texts and messages.
    """

    __slots__ = ()

    def __hash__(self) -> int:  # type: ignore[override]
        """Return what two equal messages share."""
        return hash(tuple(self.items()))


Words = (
    Message | str
)  # what is said, or a text that needs no saying: a figure with its unit, a name
