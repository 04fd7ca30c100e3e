# The sentences of runboard, English: what went wrong between a browser and the server, and what the server prints of itself.
# The server alone says them.

http-400 = That request is unreadable. Load the page again.
http-403 = That came from another site's page, so nothing was done. Open runboard itself and press again.
http-404 = Page not found. Go to Now.
http-405 = You can't do that here. Go to Now.
http-408 = The connection was too slow, so nothing was saved. Send it again where the network is better.
http-409 = That no longer fits what has happened. Load the page again.
http-413 = That is too much at once. Send less.
http-415 = Send that as JSON.
http-503 = Not saved: runboard is too busy, or shutting down. Send it again in a moment.
http-500 = Something failed here, and nothing was saved. Press again. If it fails again, look at what the server printed.
http-host = runboard does not answer to that name. Open it at the address it printed.
http-lead = Only a lead's phone can do that. Ask the lead, or pair this one as a lead's phone on the Shop page.
http-no-json = Send taps as application/json.
http-unreadable = { $why } Nothing was saved.

serve-at = runboard is at { $address }
serve-ended = Something would not stop, so it was ended. Everything answered is saved.
