# The sentences of runboard, English: those in a calendar's entry. The server alone says them.

calendar-estimate = An estimate: go and look. Stay with a machine that must be watched until it has finished.
calendar-wait = The wait is over by then.
calendar-latest = By { $latest } at the latest.
refused-nothing-runs = Nothing is running there now, so there is no end to put in a calendar.
refused-no-wait = Tray { $tray } is not waiting there now. Look at Trays.
