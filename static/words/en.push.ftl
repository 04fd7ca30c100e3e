# The sentences of runboard, English: those about alerts to phones that are locked. The server alone says them.

refused-push-form = That is no subscription of a browser, so nothing was set.
refused-push-address = That address is none of a push service on the internet, so nothing was set.

push-on = Alerts are sent to this phone. One to try is on its way.
push-off = Nothing is sent to this phone any more.
push-welcome = Alerts from the shop reach this phone.

push-failed = { $device }: an alert was not sent { $at }: { $why }
push-silent = { $device }: an alert was not sent { $at }: its push service did not answer.
push-ended = { $device }: its browser ended the sending of alerts { $at }. Turn it on again on that phone.
push-why-answered = the service answered { $status }
push-why-inside = its address lies in the shop's own network
push-why-unreached = the service cannot be reached
