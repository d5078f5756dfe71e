### What comes over the line, and what is stored on the phone.

# $come and $of: megabytes, as 1.2.
calculator-comes = Calculator: { $come } of { $of } MB
calculator-left = Calculator: { $come } of { $of } MB, { $seconds } s left
meanwhile =
    { $seconds ->
        [one] The counts can come in about { $seconds } second. Measure and type meanwhile: all of it is kept.
       *[other] The counts can come in about { $seconds } seconds. Measure and type meanwhile: all of it is kept.
    }
storing = Storing it on this phone: { $come } of { $of } MB
not-all-stored = Not all of it is on this phone yet. It goes on when you open this page with a signal.
faster-start = A quicker start is { $size } MB more. It waits, because this phone saves data.
get-faster-start = Get it
