mind-needles = Latch needles pinch and stab. Keep fingers, hair, sleeves, jewellery and children away from a turning cylinder.
ask-clinician = Swollen legs, diabetes, poor circulation or numb feet need a loose top and no hard seam inside. Ask a clinician first.
wash-first = Wash the socks before the first wear, and tell the wearer what the fibre is: wool and elastic can cause allergies.
on-the-tag = Wash before the first wear. Wool and elastic can cause allergies: mind the fibre named here.
on-the-tag-tight = On swollen, diabetic or numb legs a tight top can do harm: ask a clinician first.
color-letter = Colour { $color }
