### How a sock fits, what it takes of yarn, which of the shelf suits, and what to take care of.

## The fit

place =
    { $place ->
       *[ball] Ball of the foot
        [heel] Around the heel
        [over_heel] Getting it on
        [instep] Over the instep
        [ankle] Ankle
        [calf] Calf
        [cuff] Cuff
    }
verdict =
    { $feels ->
       *[baggy] baggy
        [a_little_loose] a little loose
        [comfortable] comfortable
        [snug] snug
        [tight] tight
        [slack] slack
        [loose] loose
        [slides_down] slides down
        [may_slide] may slide
        [holds_comfortably] holds comfortably
        [holds_firmly] holds firmly
        [cuts_in] cuts in
        [not_reached] not reached
        [cannot_pass] cannot pass
        [goes_on_easily] goes on easily
        [goes_on_with_a_pull] goes on with a pull
        [may_not_go_on] may not go on
    }
perhaps = perhaps { $verdict }
likely = likely { $verdict }
either-of-two = { $verdict } or { $other }, too close to tell
stretches = Stretches { $percent } %: { $verdict }.
lies-without-stretch = Not stretched: { $verdict }.
wider =
    { $part ->
       *[foot] The sock is { $percent } % wider than the foot: { $verdict }.
        [heel] The sock is { $percent } % wider than the heel: { $verdict }.
        [ankle] The sock is { $percent } % wider than the ankle: { $verdict }.
        [calf] The sock is { $percent } % wider than the calf: { $verdict }.
    }
just-wider =
    { $part ->
       *[foot] The sock is just wider than the foot: { $verdict }.
        [heel] The sock is just wider than the heel: { $verdict }.
        [ankle] The sock is just wider than the ankle: { $verdict }.
        [calf] The sock is just wider than the calf: { $verdict }.
    }
cure =
    { $cure ->
       *[ball_baggy] A smaller stitch, or a cylinder with fewer needles, would hold it.
        [ball_loose] A slightly smaller stitch would hold it better.
        [ball_snug] Fine for someone who likes it snug; if not, use a slightly larger stitch.
        [ball_tight] A larger stitch, or a cylinder with more needles, would ease it.
        [heel_baggy] Leave more heel needles in work, for a shallower heel.
        [heel_loose] Leave a few more heel needles in work.
        [heel_snug] More needles in the heel, or fewer left in work, would make it deeper.
        [heel_tight] Use more needles in the heel, or leave fewer in work. A larger stitch helps most.
        [ankle_baggy] A smaller stitch for the last rounds of the leg would hold it.
        [ankle_loose] That is usual for a tube that fits the ball. A smaller stitch there would hold it.
        [ankle_snug] A slightly larger stitch in the leg would ease it.
        [ankle_tight] That is too tight for comfort: use a larger stitch in the leg.
        [calf_baggy] A smaller stitch up there would hold it.
        [calf_loose] It may slide down. A smaller stitch up there would hold it.
        [calf_snug] A slightly larger stitch towards the top would ease it.
        [calf_tight] That is too tight for comfort: use larger stitches towards the top, or a shorter leg.
        [instep] A larger stitch, or more needles, would help it go on.
        [over_heel] A larger stitch, more needles, or a ribbed top would help it go on.
        [calf_cannot] Make the leg shorter, or the stitches larger.
    }
only-guessed = That is guessed. Measure it to be sure.
measure-to-be-sure = Measure it to be sure.
passes =
    { $feels ->
       *[goes_on_easily] Goes on easily: it must stretch to { $needed } times its girth, and can reach about { $gives }.
        [goes_on_with_a_pull] Goes on with a pull: it must stretch to { $needed } times its girth, and can reach about { $gives }.
        [may_not_go_on] May not go on: it must stretch to { $needed } times its girth, and can reach about { $gives }.
    }
as-pulled = You measured that on your swatch.
as-pulled-less = You measured that on your swatch, less what a { $cuff } takes from it.
pull-guessed = That is guessed: pull a swatch to know.
passes-at-rest =
    { $part ->
       *[heel] Goes on easily: it passes the heel without stretch.
        [instep] Goes on easily: it passes the instep without stretch.
    }
ends-below-calf = The sock ends below the fullest part of the calf.
cannot-pass-calf = It cannot be worn this high: it would have to stretch to { $needed } times its girth, and can reach about { $gives }.
grips = Where the sock ends, it { $verdict }: { $percent } % of its stretch is used.
grips-unused = Where the sock ends, it { $verdict }: none of its stretch is used.
leg-guessed = The leg there is guessed. Measure it to be sure.
hold-by-stitch = A smaller stitch would hold it.
hold-by-rib = A smaller stitch or a rib would hold it.
ease-by-stitch = A larger stitch at the top would ease it.
ease-by-rib = A larger stitch at the top or a rib would ease it.

## Colors of yarn

main-yarn = Main yarn

color-letter = Color { $color }

## The shelf

no-such-cylinder = None of your cylinders has { $slots } slots.
write-those-with-ribber = Write the slots of those with a ribber, like 60.
write-slots-of-each = Write the slots of each, like 54, 60, 72.
write-fewer-cylinders = Write { $most } or fewer.
shelf-without =
    { $what ->
       *[cylinders] There are no cylinders on the shelf yet.
        [yarns] There are no yarns on the shelf yet.
    }
tell-of-a-yarn = Give the length per ball of one, or its stitches and rounds.
name-too-long = This is too long.
so-many-letters = Write { $most } letters or fewer.
yarn-on-shelf = yarn { $number }
mark-without-fabric = Nothing is known of this mark yet.
tell-of-the-mark = Give its stitches and rounds.
yarn-unknown = Nothing is known of this yarn yet.
mark-too-long = This mark is too long.
mark-as-on-dial = Write it as the machine shows it.
mark-between = { $mark }, between those you knitted
of-yarn = the yarn left
about-yarn = { $yarn }: { $question }

## What to take care of

mind-needles = Latch needles pinch and stab. Keep fingers, hair, sleeves, jewelry, and children away from a turning cylinder.
stop-first = Stop cranking before you fix anything.
mind-weights = Heel weights fall: keep your feet clear of them.
ask-clinician = Swollen legs, diabetes, poor circulation, or numb feet need a loose top and no hard seam inside. Ask a clinician first.
no-compression = This plan is for ordinary socks, never for compression wear.
wash-first = Wash the socks before the first wear, and tell the wearer what the fiber is: wool and elastic can cause allergies.
leg-is-tight = By these figures the leg is tight. Let the wearer try it on before you hand it over.
on-the-tag = Wash before the first wear. Wool and elastic can cause allergies: mind the fiber named here.
on-the-tag-tight = On swollen, diabetic, or numb legs a tight top can do harm: ask a clinician first.
