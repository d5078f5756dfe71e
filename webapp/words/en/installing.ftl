### The way onto the phone's home screen.

install = Install it on this phone
# Names of an iPhone's own buttons.
to-home-screen = To keep it on your home screen, tap Share in your browser, then “Add to Home Screen”.
