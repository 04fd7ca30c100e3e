# The sentences of runboard, English: what went wrong between a browser and the server, and what the server prints of itself.
# The server alone says them.

http-400 = That request cannot be read. Load the page again.
http-403 = That came from another site's page, so nothing was done. Open runboard itself and press again.
http-404 = Page not found. Go to Now.
http-405 = That cannot be done here. Go to Now.
http-408 = What was sent did not arrive in time, so nothing was stored. Send it again where the network is better.
http-409 = That does not fit what has happened meanwhile. Load the page again.
http-413 = That is more than can be taken at once. Send less.
http-415 = That has to be sent as JSON.
http-503 = Not taken: more is being sent here than can be taken at once, or runboard ends. Send it again in a moment.
http-500 = Something failed here, and nothing was stored. Press again; if it fails again, look at what the server printed.
http-host = runboard does not answer to that name: open it at the address that it printed.
http-lead = That is for a lead's phone to do. Ask the lead, or pair this one as a lead's on the Shop page.
http-no-json = Taps have to be sent as application/json.
http-unreadable = { $why } So nothing was stored.

serve-at = runboard is at { $address }
serve-ended = Something would not end, so it was ended. What was answered is stored.
