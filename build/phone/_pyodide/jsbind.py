"""In the place of Pyodide's, which reads types of JavaScript's functions off annotations.

Here every call is one without types: any arguments, each converted in the usual way.
"""

from typing import Any

from _pyodide_core import JsFuncSignature, js2py_default_call_result, py2js_default


def _any(*_: Any, **__: Any) -> Any:
    raise TypeError("Calls between Python and JavaScript have no types here.")


bind_class_sig = get_attr_sig = func_to_sig = _any
no_default: Any = object()
default_signature = JsFuncSignature(
    _any, False, 0, (), (), py2js_default, (), (), (), py2js_default, js2py_default_call_result
)
