"""How properties are tried here: the same examples every time, and no clock in the verdict.

HYPOTHESIS_PROFILE=explore tries other examples each time, to find what the usual ones miss.
"""

import os

from hypothesis import settings

settings.register_profile("same", derandomize=True, deadline=None, database=None, print_blob=True)
settings.register_profile("explore", deadline=None, max_examples=1000, print_blob=True)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))
