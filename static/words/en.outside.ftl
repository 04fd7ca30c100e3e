# The sentences of runboard, English: those about alerts that climb and leave the building. The server alone says them.

refused-climb-minutes = Minutes must be above 0 and at most { $most }. Leave it blank for never.
refused-climb-order = The stages are out of order. Each must come after the one before it.
refused-channel-unreadable = Nothing can be sent to that address. Look it up in Apprise's list of addresses.
refused-channel-unknown = There is no such channel. Look at the list on the Shop page.
refused-channels-many = At most { $most } channels. Remove one first.

channel-sent = Last sent { $at }.
channel-failed = Not sent { $at }: { $why }
channel-never = Nothing sent there yet.
channel-silent = no answer within { $seconds } s
channel-unsaid = it was not accepted

sound-none = This computer has no program to play a sound ({ $programs }), so it cannot call anyone by itself.
sound-failed = This computer did not play the sound: { $why }
sound-ready = Plays through { $program }.

outside-body = Nobody has answered since { $at }. Answer on any paired phone or computer.
outside-test-title = A test from { $shop }
outside-test-body = If you read this, alerts that nobody answers in the shop reach you here.

channel-unreadable = the address cannot be read
sound-why-late = { $program } did not finish within { $seconds } s
sound-why-code = exit code { $code }
