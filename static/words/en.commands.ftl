# The sentences of runboard, English: those of the commands, at the terminal. The server's computer alone says them.

## What 'runboard --help' says of each command.
command-runboard = A small shop's runs: what to do now, and until when.
command-serve = serve the shop in a data folder to the phones on its network
command-demo = serve a made-up shop to try, with a run in full swing
command-pair = show a code that pairs a lead's phone: the first, or in place of a lost one
command-plan = print when a run will be done, and who does what until then
command-check = check a program, a drawing or a question before a run
command-review = print what a run took, its bottleneck, and what would have helped
command-cards = print the cards of a run's trays into a PDF
command-export = save all shop data, or one run with its events, as JSON; or tables of everything
command-import = import shop data or a run that export saved
command-backup = back up the shop, running or not; dated, and checked whole
command-restore = restore a backup; what it replaces is kept

## What '--help' of a command says of what it takes.
option-folder = the shop's data folder; created if missing
option-demo-folder = keep it in this folder; created if missing, reused if it exists
option-run = the run's key; not needed if only one run is open
option-run-reviewed = the run's key; default: the last one finished
option-review-file = write it as one file, for a screen (FILE.html) or paper (FILE.pdf), without names
option-run-or-book = the run's key; default: write the book
option-tables = write tables of all runs, their times, order lines, losses, changes and estimates: FILE.json, FILE.zip (one CSV each) or FILE.sqlite
option-file-checked = a program, a drawing (SVG, DXF), or a question as JSON that names its kind
option-json-checked = for other programs; in millimetres and seconds
option-rapid-checked = rapid speed, instead of the station's
option-accel-checked = acceleration of each axis, instead of the station's
option-corner-checked = how far the path may round a corner, instead of the station's
option-station-checked = the station it is for, by key or name
option-data-checked = the shop's data folder; without it, nothing about a shop is known
option-run-checked = the run it is for; without a FILE, checks that run, with --data
option-exit-codes-checked = Exit code 0: read, nothing open. 1: read, with doubts that may change the time, or something open on the run sheet. 2: not readable; one sentence says why.
option-out-checked = write the drawing as SVG, or a file that the answer offers, by its ending
option-copy = a backup that 'backup' made
option-to = an existing folder; default: DIR/backups
option-let-in = whether devices, sensors and cards in the backup keep access; without it you are asked
option-trays = for example 1,2,5-8; default: every tray that holds pieces
option-every-slip = print packing slips of unfinished orders too
option-full = full cards: on each traveller all that its steps need, for helpers without a phone
option-address = where phones find the server, for the codes; default: this computer, port { $port }
option-json = for other programs; times are in UTC
option-seconds = how long to look for a better plan; default: { $seconds }; 0: take the first one found
option-port = default: { $port }; 0: any
option-https-port = port of the pages with the certificate; default: P + 1; 0: any
option-local = listen on this computer only, and announce nothing
option-no-open = do not open a browser
option-no-planner = turn planning off (for small computers)

## What cannot be done, and what to do. They stand after 'runboard:', or after the option that was typed wrong.
mistaken-no-data-folder = there is no data folder { $folder }.
mistaken-no-place-for-data = { $folder } cannot be a data folder: { $why }.
mistaken-no-shop = there is no shop in { $folder }.
mistaken-something-else-there = { $folder } holds something else. Name a new folder for the demo.
mistaken-being-put-back = a backup is being restored into { $folder }. Try again once that has ended.
mistaken-database = the shop's database cannot be used: { $why }. Check that the folder can be written to. If the file is ruined, restore a backup with runboard restore.
mistaken-no-run-yet = no run to review yet. Open one on the Plan page.
mistaken-no-review-file = { $file } is neither .html nor .pdf. End its name with one of them.
mistaken-no-run-open = no run is open. Open one on the Plan page, or name a run.
mistaken-several-runs-open = several runs are open: { $runs }. Name one.
mistaken-run-over = { $run } is { $state }: there is nothing left to plan.
mistaken-too-much-open = too much is open to plan at once. Finish or end a run.
mistaken-no-plan-yet = no plan found in { $seconds } seconds, though there may be one. Give it longer with --seconds.
mistaken-no-plan-fits = no plan fits into people's hours beside what has been started.
mistaken-no-place-left = { mistaken-no-plan-fits } No room for: { $steps }.
mistaken-file-unread = { $file } cannot be read: { $why }.
mistaken-file-wrong = { $file }: { $why }
mistaken-file-nothing = { $file } is neither a shop's book nor a run: it has no 'runboard_book' and no 'runboard_run'.
mistaken-nothing-taken = nothing was imported
mistaken-is-a-folder = { $file } is a folder. Name a file.
mistaken-no-tables = { $file } has an unknown ending. End its name with one of these: { $endings }.
mistaken-no-folder = there is no folder { $folder }.
mistaken-cannot-write = { $file } cannot be written: { $why }.
mistaken-no-pango = { cards-no-pango }
mistaken-no-address = { $text } is not a server address. Write it like http://192.168.1.5:8210.
mistaken-no-kinds = { $text } is not a kind of card. Kinds are: { $kinds }
mistaken-no-port = { $text } is not a port: a number from 0 to { $most }
mistaken-no-seconds = { $text } is not a number of seconds, 0 or more
mistaken-port-taken = port { $port } cannot be used ({ $why }). Is runboard already running? Or choose another with --port and --https-port.
mistaken-unasked = Nobody is here to say whether they keep access. Use --let-in all, or --let-in nobody to pair every device again. Nothing was restored.
mistaken-nothing-to-check = Name a file to check, or a shop (--data DIR) with an open run.
mistaken-run-without-shop = Say which shop that run is in: --data DIR.
mistaken-file-not-opened = { $file } cannot be opened: { $why }.
mistaken-no-kind = { $file } does not name its kind of question. Kinds are: { $kinds }.
mistaken-question-wrong = the question cannot be read: { $why }
mistaken-station-without-shop = { $station } cannot be found without a shop. Say where it is with --data.
mistaken-no-such-station = there is no station { $station }. Stations are: { $stations }.
mistaken-option-of-no-use = { $option } does not apply here: { $kind }.
mistaken-no-number = { $option } needs a number, not { $text }.
mistaken-nothing-to-write = the answer has nothing to write into { $file }.
mistaken-given-up = Nothing was changed.

## What is printed.
told-events = { $events ->
    [one] 1 event
   *[other] { $events } events
}
told-copy = { $file }: { $events }.
told-cards = { $file }: { NUMBER($cards, useGrouping: 0) } { $cards ->
    [one] card
   *[other] cards
}. Their codes open { $address }
told-tables = { $file }: { $runs ->
    [one] 1 run
   *[other] { $runs } runs
}, { $elements ->
    [one] 1 time
   *[other] { $elements } times
}.
told-review = { $file }: the review of { $run }
told-review-weighing = replaying the run
told-cards-done = { $done } of { $total } cards
told-planner-made-ready = Getting the planner ready, once: about 15 seconds.
told-looking = looking for a better plan; Ctrl-C keeps the best so far
told-book-in = { $book }'s book is now in { $folder }, revision { $revision }.
told-run-in = Run { $run } is now in { $folder }: { $events } { $events ->
    [one] new event
   *[other] new events
}.
told-run-coming = { $run }: { $pieces } pieces wanted, { $trays } trays, { $events } new here, { $first } to { $last }.
told-left-out = Left out, because it is about the shop: { $kinds }.
told-take-it = Import it?

## How a phone pairs, once the server listens and by 'runboard pair'.
told-first-code = No lead's phone is paired yet. Pair one with the code { $code }, once, within { $minutes } minutes:
told-later-codes = Later, 'runboard pair' makes another code.
told-no-first-code = No phone is paired yet, and none can be: the disk cannot be written to ({ $why }).
told-checking = reading, { $percent } %
told-code = The code is { $code }. It pairs one lead's phone, once, within { $minutes } minutes.
told-code-how = Open runboard on the phone and type it there. In place of a lost phone? Shut that one out on the Shop page.

## What the command says of a copy before it puts it back, and what it asks.
restore-whole = { $file } is whole: { $shop }, { $events }.
restore-whole-until = { $file } is whole: { $shop }, { $events }, the last of { $until }.
restore-a-shop = a shop
restore-in-place = It is in place in { $folder }.
restore-kept = It is in place in { $folder }. What it replaced is in { $kept }.
restore-unlisted = It has no list of digests beside it (older backups have none): { $files ->
    [0] nobody can tell whether it was changed.
    [one] nobody can tell whether it was changed, or the one file not named by its content.
   *[other] nobody can tell whether it was changed, or the { $files } files not named by their content.
}
restore-left = These of its files are left out:
restore-link = a link to somewhere else
restore-hard-link = it has a second name somewhere else; if you want it, copy the folder to plain files first
restore-no-file = not a file, but a pipe or a device
restore-bad-name = no file of a shop has such a name
restore-differs = does not match the list or its name: damaged or changed
restore-missing = on the list, but missing
restore-more = { "  " }and { $count } more
restore-lets-in = These get access as soon as it is served:
restore-revoked = shut out here after the backup was made
restore-cards = anyone with a card printed before the backup, of a run still open in it
restore-sends-to = It also sends to, or listens at: { $names }. Change that on the Shop page.
restore-keep = Keep their access? Say no if you do not know them all, or if others had the backup: then every device pairs again.
restore-nobody = Nobody has access: runboard serve shows a code for the first phone, and every other device pairs again. Old printed cards no longer work: print them again.
access-lead = a lead's
access-crew = a helper's
access-guest = came with a card
access-sensor = reports for a machine
