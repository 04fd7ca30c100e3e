# The sentences of runboard, English: those in a calendar's entry. The server alone says them.

calendar-estimate = By its estimate. Go and look; a machine that must be watched is watched until it has ended.
calendar-wait = The wait is over by then.
calendar-latest = Its latest end is { $latest }.
refused-nothing-runs = Nothing runs there now, so there is no end to put in a calendar.
refused-no-wait = Tray { $tray } does not wait there now.
