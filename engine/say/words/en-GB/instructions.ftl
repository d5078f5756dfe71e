### What is spelled otherwise in Britain, and the trade's own word for gauge there.

set-heading =
    { $of ->
        [made] What this makes
        [care] Take care
        [sizes] Sizes
        [machine] Machine and tools
        [yarn] Yarn
        [gauge] Tension and swatch
        [ease] Ease
        [measures] The sock measured
        [terms] Words used here
        [instructions] Instructions
        [counts] Counts for each size
        [row_gauge] With another round tension
        [colors] Colours
        [washing] Washing
        [sure] How sure the counts are
        [notes] Notes
        [errata] Mistakes and questions
       *[access] Accessibility
    }
set-caption =
    { $of ->
        [sizes] Whose foot each size is for, and the washed sock
        [shoes] Shoe sizes of such a foot, about
        [terms] Words and short forms
        [colors] Parts in each colour
       *[sure] Foot rounds, and how far they may be out
    }
set-detail =
    { $name ->
        [maker] By { $words }
        [version] Version { $words }
        [date] Date: { $words }
        [licence] Licence: { $words }
        [contact] Contact: { $words }
        [errata] Corrections: { $words }
       *[fibre] Fibre: { $words }
    }
set-head =
    { $of ->
        [what] What
        [size] Size
        [foot] Foot length
        [ball] Around the ball
        [sock_foot] Sock’s foot
        [sock_girth] Sock around
        [sock_height] Sock’s height
        [fits] Fits this cylinder
        [word] Word
        [meaning] Meaning
        [part] Part
        [knit] Knit
        [color] Colour
        [parts] Parts
        [pair_takes] The pair takes
        [have] Have ready
        [have_length] Have ready, length
        [foot_rounds] Foot rounds
        [likely] Most likely
        [aim] Sock’s foot to aim at
        [foot_mm] Foot length, mm
        [ball_mm] Around the ball, mm
        [sock_foot_mm] Sock’s foot, mm
        [sock_girth_mm] Sock around, mm
        [sock_height_mm] Sock’s height, mm
        [grams] Yarn to have ready, g
        [metres] Yarn to have ready, m
       *[slots] Slots that would fit
    }
set-tool =
    { $tool ->
        [ribber] A ribber that fits this cylinder.
        [spring] A heel spring, or a hand to take up the slack.
        [weights] A weight for the tube, and a smaller one for heel and toe.
        [latch] A latch tool to lift loops and needles.
        [waste] Waste yarn, about as thick, in another colour.
        [darning] A darning needle and scissors.
       *[needles] Knitting needles to finish the toe by hand.
    }
set-one-color = The whole sock is one colour.
set-change-color = Change colour where its part begins. Leave a hand’s length of both ends hanging.
set-row-table = Foot rounds at other round tensions
set-access-rules = So they meet these rules of WCAG 2.2: words for the drawing (1.1.1), structure and order (1.3.1, 1.3.2), no colour alone (1.4.1), and headings (2.4.6).
set-access = What the drawing shows also stands in words. Steps are numbered, tables have heads, and nothing is told by colour alone. Units are the only short forms.
set-meaning =
    { $term ->
        [slot] A groove of the cylinder, with one needle.
        [round] Once around the whole cylinder.
        [row] Once across the needles in work, to the right or to the left.
        [carrier] The part of the machine that brings the yarn to the needles.
        [half_mark] One of two marks, at your left and right, between the front and the back half.
        [work] A needle in work knits when the carrier passes it.
        [hold] A needle in hold is lifted: it keeps its stitch and does not knit.
        [waste] Yarn that holds stitches for a time and is pulled out at the end.
        [graft] Join two edges with a row of stitches, made with a needle by hand.
        [cm] centimetres
        [in] inches
        [g] grams
        [oz] ounces
        [m] metres
       *[yd] yards
    }
