# The sentences of runboard, English: those about sensors of machines. The server alone says them.

refused-signal-form = That says neither 'on' or 'off' nor a number of watts, so nothing was noted.
refused-signal-token = That token is not known here, or was revoked, or is another station's. Make one on the Shop page.
refused-signal-too-often = Too many unknown tokens from there. Wait { $minutes } min.
refused-sensor-unknown = There is no such sensor. Look at the list on the Shop page.
