# The sentences of runboard, English: those about alerts that climb and leave the building. The server alone says them.

refused-climb-minutes = Write minutes above 0, at most { $most }, or nothing for never.
refused-climb-order = Each stage must come after the one before it.
refused-channel-unreadable = That is no address that can be sent to. Look it up at Apprise's list of addresses.
refused-channel-unknown = There is no such channel. Look at the list on the Shop page.
refused-channels-many = At most { $most } channels. Remove one first.

channel-sent = Last sent { $at }.
channel-failed = Not sent { $at }: { $why }
channel-never = Nothing was sent there yet.
channel-silent = no answer within { $seconds } s
channel-unsaid = it was not taken

sound-none = This computer has no program that plays a sound ({ $programs }), so it cannot call by itself.
sound-failed = This computer did not play the sound: { $why }
sound-ready = It plays by { $program }.

outside-body = Since { $at } nobody has answered. Answer on any paired phone or computer.
outside-test-title = A test from { $shop }
outside-test-body = If you read this, alerts that nobody answers in the shop reach you here.

channel-unreadable = the address cannot be read
sound-why-late = { $program } did not end within { $seconds } s
sound-why-code = exit code { $code }
