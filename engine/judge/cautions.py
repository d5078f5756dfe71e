"""Customary cautions: the same for every plan, read once before the first knitting.

They are usual care, not advice for one person: local rules and the people licensed to judge come
first. Ordinary socks only; nothing here sizes compression wear. After the machine makers' and
guilds' safety leaflets, the UK HSE page on knitting machinery, and IWGDF guidance on footwear for
diabetic feet (wording ours, from memory).
"""

from __future__ import annotations

from engine.say import messages as say

ON_THE_TAG = say.in_turn(sentences=(say.on_the_tag(), say.on_the_tag_tight()))
# At the machine, then for the wearer.
USUAL = [
    say.in_turn(sentences=(say.mind_needles(), say.stop_first())),
    say.mind_weights(),
    say.in_turn(sentences=(say.ask_clinician(), say.no_compression())),
    say.wash_first(),
]
