of-stock =
    { $what ->
       *[margin] a margin
        [ball] a ball of yarn
        [left] the yarn left
        [sock] a sock
        [repeat] one repeat of colours
        [repeat_rounds] the rounds of one repeat
    }
yarn-like = Write it like 400 m / 100 g, 437 yd / 100 g, 238 tex, Nm 4.2 or fingering.
no-color-apart = { $text } has no colour of its own.
name-what-is-apart = Name cuff, heel or toe.
