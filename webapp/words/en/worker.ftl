### Why the calculator does not answer.

not-started = The calculator could not start. Check your connection, then try again. If that does not help, reload.
line-gone = The connection is gone. What came so far is kept: tap “Try again” when you have a signal, and it goes on from there.
no-webassembly = This browser cannot run the calculator: WebAssembly is missing or turned off, as in a lockdown mode.
no-webassembly-way = Turn it on for this page, or use another browser. What you typed is kept.
no-answer = The calculator did not answer, not even after a restart. What you typed is kept. Change it a little, or reload.
fault = The calculator has a fault and cannot work this out. Another number in one of the fields may help. What you typed is kept.
