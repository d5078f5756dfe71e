"""The wearer: the measures of a foot, and what is usual for those not taken."""
