# The page of cautions, English: its parts, and what brings an entry by itself. The cautions themselves are in en.care.ftl.

cautions-part-caution = Beside a step
cautions-about-caution = Before the step on the screen, and beside it on the card.
cautions-part-start = Before a machine starts
cautions-about-start = Ticked in full once a session and after any change. After that, one press a load.
cautions-part-reminder = Reminders
cautions-about-reminder = They appear when they are due, and stay until someone says what was done.
cautions-part-answer = Possible answers
cautions-about-answer = A reminder only goes away with one of these.
cautions-part-note = Always
cautions-about-note = Shown wherever it matters.
cautions-at-cnc = a CNC router
cautions-at-hand-cutter = a hand-guided cutter
cautions-at-sander = a sander
cautions-at-laser = a laser
cautions-at-heater = an oven or heater
cautions-at-other-machine = another machine
cautions-when-watched = any machine that must be watched
cautions-when-loud = any station as loud as the shop's limit
cautions-when-finish = any coat of a finish
cautions-when-self-heats = a finish whose rags can heat by themselves, or one that nobody recorded
cautions-when-solvent = a finish with a solvent
cautions-when-sprayed = a finish that is sprayed on
cautions-when-oiled-before = dusty work on wood that has had a finish
