"""Customary cautions, shown with every plan.

They are usual care, not advice for one person: local rules and the people licensed to judge come
first. Ordinary socks only; nothing here sizes compression wear. After the machine makers' and
guilds' safety leaflets, the UK HSE page on knitting machinery, and IWGDF guidance on footwear for
diabetic feet (wording ours, from memory).
"""

from __future__ import annotations

AT_THE_MACHINE = (
    "Latch needles pinch and stab: keep fingers, hair, sleeves, jewellery and children away from a "
    "turning cylinder, and stop before you put anything right.",
    "Heel weights fall: keep your feet clear of them.",
)
FOR_THE_WEARER = (
    "Swollen legs, diabetes, poor circulation or numb feet need a loose top, no tight band and no "
    "hard seam inside. Ask a clinician first; this plan is for ordinary socks and never for "
    "compression wear.",
    "Wash before the first wear and say what the fibre is: wool and elastic can cause allergies.",
)

ON_THE_TAG = (
    "Wash before the first wear. Wool and elastic can cause allergies: mind the fibre named here. "
    "On swollen, diabetic or numb legs a tight top can do harm: ask a clinician first."
)


def for_sock(tight_top: bool) -> list[str]:
    """Return the cautions of a plan; `tight_top` puts the one for the leg first."""
    wearer, machine = list(FOR_THE_WEARER), list(AT_THE_MACHINE)
    if tight_top:
        wearer.insert(
            0,
            "By these figures the leg is tight: let the wearer try it on before you hand it over.",
        )
        return wearer + machine
    return machine + wearer
