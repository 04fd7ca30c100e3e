# The sentences of runboard, English: those about alerts to phones that are locked. The server alone says them.

refused-push-form = That is not a browser's subscription, so nothing was set. Load the page and try again.
refused-push-address = That is not the address of a push service on the internet, so nothing was set. Load the page and try again.

push-on = Alerts now come to this phone. A test is on its way.
push-off = Alerts no longer come to this phone.
push-welcome = Alerts from the shop reach this phone.

push-failed = { $device }: an alert was not sent { $at }: { $why }
push-silent = { $device }: an alert was not sent { $at }: its push service did not answer.
push-ended = { $device }: its browser turned alerts off { $at }. Turn them on again on that phone.
push-why-answered = the service answered { $status }
push-why-inside = its address is inside the shop's own network
push-why-unreached = the service cannot be reached
