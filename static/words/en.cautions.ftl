# The page of cautions, English: its parts, and what brings an entry by itself. The cautions themselves are in en.care.ftl.

cautions-part-caution = Beside a step
cautions-about-caution = Before the step on the screen, and beside it on the card.
cautions-part-start = Before a machine starts
cautions-about-start = In full once a session and after any change; after that one press a load.
cautions-part-reminder = Reminders
cautions-about-reminder = They come when their time comes, and stay until somebody says what was done.
cautions-part-answer = What can be answered
cautions-about-answer = A reminder is not put away without one of these.
cautions-part-note = Always
cautions-about-note = Said wherever it matters.
cautions-at-cnc = a CNC router
cautions-at-hand-cutter = a cutter worked by hand
cautions-at-sander = a sander
cautions-at-laser = a laser
cautions-at-heater = an oven or heater
cautions-at-other-machine = another machine
cautions-when-watched = any machine that must be watched
cautions-when-loud = any station as loud as the shop's limit
cautions-when-finish = any coat of a finish
cautions-when-self-heats = a finish whose rags heat by themselves, or one that nobody wrote down
cautions-when-solvent = a finish with a solvent
cautions-when-sprayed = a finish that is sprayed on
cautions-when-oiled-before = dusty work on wood that had a finish
