### What is spelled otherwise in Britain, or said: there a first round is cast off.

thread-waste = Thread waste yarn in a colour other than the sock’s.
bind-off-top =
    { $socks ->
        [each] Cast off the first round of each cuff loosely, so that it stretches.
       *[one] Cast off the first round of the cuff loosely, so that it stretches.
    }
thread-cord = Cut the waste yarn. Thread the ravel cord: a smooth, strong one in another colour.
change-color = Change to colour { $color }. Leave a hand’s length of both yarns hanging.
begin-color = Change to colour { $color }. Leave a hand’s length of it hanging.
color-is = Knit in colour { $color }.
no-such-color = We cannot read “{ $text }” as colours.
only-the-last-goes-on = Only the last colour of a list goes on without its rounds.
colors-set-too = The colours are planned as well.
ribbed-in-one-color = A ribbed leg has one colour.
main-color-unused = Colour A is the main yarn, and no part is knitted in it.
call-it-a = Call the colour of which you need most A.
