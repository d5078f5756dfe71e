"""In the place of Pyodide's, which begins an event loop besides.

What JavaScript has to give is asked for in the order in which Pyodide's asks: a snapshot is
told by it.
"""

from pyodide_js._api import scheduleCallback  # noqa: F401

from . import _state  # noqa: F401
