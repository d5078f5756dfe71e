fiber = Fibre
fibers-offered = Fibres of your other tags and your shelf
wash-machine = machine, wool programme
says-wash-machine = Wash in the machine on its wool programme, cool, inside out.
