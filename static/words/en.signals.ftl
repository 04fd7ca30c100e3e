# The sentences of runboard, English: those about sensors of machines. The server alone says them.

refused-signal-form = A signal must be 'on', 'off' or a number of watts. Nothing was recorded.
refused-signal-token = That token is unknown, revoked, or another station's. Make one on the Shop page.
refused-signal-too-often = Too many unknown tokens from there. Wait { $minutes } min.
refused-sensor-unknown = There is no such sensor. Look at the list on the Shop page.
refused-signal-limits = Write watts above 0, at most { $watts }, and seconds from 0 to { $seconds }.
refused-broker-host = Write the broker's name or address only, without a scheme or path.
refused-broker-port = A port is a whole number from 1 to 65535.
refused-broker-password = This is not the broker or user that the password was kept for. Type its password again.
refused-broker-topic = The topic '{ $topic }' must name one place, without # or +.

shop-title = The shop
shop-limits = Banned materials, noise
shop-money = Money
