"""In the place of the standard library's: the core of Python tells an error, as it can without."""

import sys

print_exception = sys.__excepthook__
