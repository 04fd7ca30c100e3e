# The sentences of runboard, English: those of the commands, at the terminal. The server's computer alone says them.

## What 'runboard --help' says of each command.
command-runboard = A small shop's runs: what to do now, and until when.
command-serve = serve the shop in a data folder to the phones on its network
command-demo = serve a shop made up to try, with a run in full swing
command-pair = show a code that pairs a lead's phone: the first, or in place of a lost one
command-plan = print when a run will be done, and who does what until then
command-check = look at a program, a drawing or a question before a run
command-review = print what a run took, what held it, and what would have helped
command-cards = print the cards of a run's trays into a PDF
command-export = write the shop's book, or one run with its events, as JSON; or tables of everything
command-import = read a book or a run that export wrote
command-backup = copy the shop, running or not; the copy is dated and checked whole
command-restore = restore a backup; what it replaces is kept

## What '--help' of a command says of what it takes.
option-folder = the shop's data folder; made if not there
option-demo-folder = keep it in this folder; created if missing, reused if it exists
option-run = the run's key; need not be said where one run is open
option-run-reviewed = the run's key; without it the one that was finished last
option-review-file = write it as one file instead, for a screen (FILE.html) or for paper (FILE.pdf), without anybody's name
option-run-or-book = the run's key; without it the book is written
option-tables = write tables of all runs, their times, order lines, losses, changes and estimates: FILE.json, FILE.zip (a CSV each) or FILE.sqlite
option-file-checked = a program, a drawing (SVG, DXF), or a question as JSON that names its kind
option-json-checked = for other programs; millimetres and seconds
option-rapid-checked = the speed of rapid moves, in place of the station's
option-accel-checked = the acceleration of each axis, in place of the station's
option-corner-checked = by how much the path may round a corner, in place of the station's
option-station-checked = the station that it is for, by its key or name
option-data-checked = the data folder of the shop that is asked for; without it nothing is known of a shop
option-run-checked = the run that it is for; without a FILE that run is looked through, with --data
option-exit-codes-checked = Exit code 0: read, and nothing is open. 1: read, with doubts that may change the time, or with something open on the run sheet. 2: not readable; one sentence says why.
option-out-checked = write the drawing as SVG, or a file that the answer offers, by its ending
option-copy = a copy that backup made
option-to = a folder that is there; default DIR/backups
option-let-in = whether the devices, sensors and cards that the copy lets in stay let in; without it you are asked
option-trays = like 1,2,5-8; default every tray that holds pieces
option-every-slip = packing slips of what is not ready too
option-address = where phones find the server, for the codes; default this computer on port { $port }
option-json = for other programs; moments are UTC
option-seconds = how long to look for a better plan; default { $seconds }, 0 for the first that is found
option-port = default { $port }; 0 for any
option-https-port = for the pages with the certificate; default P + 1; 0 for any
option-local = listen to this computer alone, and announce nothing
option-no-open = do not open a browser
option-no-planner = turn planning off (for small computers)

## What cannot be done, and what to do. They stand after 'runboard:', or after the option that was typed wrong.
mistaken-no-data-folder = there is no data folder { $folder }.
mistaken-no-place-for-data = { $folder } cannot be a data folder: { $why }.
mistaken-no-shop = there is no shop in { $folder }.
mistaken-something-else-there = { $folder } holds something else. Name a folder for the demo that is not there yet.
mistaken-being-put-back = a backup is being restored into { $folder }. Try again once that has ended.
mistaken-database = the shop's database cannot be used: { $why }. Check that the folder can be written to. If the file is ruined, restore a backup with runboard restore.
mistaken-no-run-yet = there is no run to look back at. Open one on the Plan page.
mistaken-no-review-file = { $file } is neither .html nor .pdf: say which of the two it is to be.
mistaken-no-run-open = no run is open. Open one on the Plan page, or name a run.
mistaken-several-runs-open = several runs are open: { $runs }. Say which one.
mistaken-run-over = { $run } is { $state }: nothing of it is planned any more.
mistaken-too-much-open = more is open than can be planned at once. Finish or end a run.
mistaken-no-plan-yet = no plan was found in { $seconds } seconds, though there may be one. Give it longer with --seconds.
mistaken-no-plan-fits = no plan fits into people's hours beside what is begun.
mistaken-no-place-left = { mistaken-no-plan-fits } What has no place left: { $steps }.
mistaken-file-unread = { $file } cannot be read: { $why }.
mistaken-file-wrong = { $file }: { $why }
mistaken-file-nothing = { $file } is neither a shop's book nor a run: it has no 'runboard_book' and no 'runboard_run'.
mistaken-nothing-taken = nothing was taken
mistaken-is-a-folder = { $file } is a folder. Name a file.
mistaken-no-tables = { $file } does not say in which form. End its name with one of these: { $endings }.
mistaken-no-folder = there is no folder { $folder }.
mistaken-cannot-write = { $file } cannot be written: { $why }.
mistaken-no-pango = { cards-no-pango }
mistaken-no-address = { $text } is no address of a server. Write it like http://192.168.1.5:8210.
mistaken-no-kinds = { $text } names no kinds of card: { $kinds }
mistaken-no-port = { $text } is no port: a number from 0 to { $most }
mistaken-no-seconds = { $text } is no number of seconds, 0 or more
mistaken-port-taken = port { $port } cannot be used ({ $why }). Is runboard already running? Or name another with --port and --https-port.
mistaken-unasked = Nobody is here to say whether they may come in. Say --let-in all, or --let-in nobody and everybody pairs anew. Nothing was put back.
mistaken-nothing-to-check = Name a file to look at, or a shop (--data DIR) whose run is to be looked through.
mistaken-run-without-shop = Say in which shop that run is: --data DIR.
mistaken-file-not-opened = { $file } cannot be opened: { $why }.
mistaken-no-kind = { $file } names no kind of question. Kinds are: { $kinds }.
mistaken-question-wrong = the question cannot be read: { $why }
mistaken-station-without-shop = { $station } is no station while no shop is named. Say where it is with --data.
mistaken-no-such-station = there is no station { $station }. Stations are: { $stations }.
mistaken-option-of-no-use = { $option } says nothing of this: { $kind }.
mistaken-no-number = { $option } wants a number, and { $text } is none.
mistaken-nothing-to-write = the answer offers nothing to write into { $file }.
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
}. Their codes lead to { $address }
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
told-planner-made-ready = Making the planner ready, once: about 15 seconds.
told-looking = looking for a better plan; Ctrl-C keeps the best so far
told-book-in = The book of { $book } is in { $folder }, revision { $revision }.
told-run-in = Run { $run } is in { $folder }: { $events } new events.
told-run-coming = { $run }: { $pieces } pieces wanted, { $trays } trays, { $events } new here, { $first } to { $last }.
told-left-out = Left out, since it is about the shop: { $kinds }.
told-take-it = Take it?

## How a phone pairs, once the server listens and by 'runboard pair'.
told-first-code = No lead's phone is paired yet. Pair one with the code { $code }, once, within { $minutes } minutes:
told-later-codes = Later, 'runboard pair' makes another code.
told-no-first-code = No phone is paired yet, and none can be: the disk takes nothing ({ $why }).
told-checking = reading, { $percent } %
told-code = The code is { $code }: it pairs one phone as a lead's, once, within { $minutes } minutes.
told-code-how = Open runboard on the phone, type it there, and revoke the lost one on the Shop page.

## What the command says of a copy before it puts it back, and what it asks.
restore-whole = { $file } is whole: { $shop }, { $events }.
restore-whole-until = { $file } is whole: { $shop }, { $events }, the last of { $until }.
restore-a-shop = a shop
restore-in-place = It is in place in { $folder }.
restore-kept = It is in place in { $folder }. What it replaced is kept in { $kept }.
restore-unlisted = No list of digests lies beside it (older copies have none): { $files ->
    [0] nobody can say whether somebody changed it.
    [one] nobody can say whether somebody changed it, or the one file that is not named by what is in it.
   *[other] nobody can say whether somebody changed it, or the { $files } files that are not named by what is in them.
}
restore-left = These of its files are not taken:
restore-link = a link to somewhere else
restore-hard-link = it has a second name somewhere else; copy the folder to plain files first, if you want it
restore-no-file = no file: a pipe or a device
restore-bad-name = no file of a shop is called that
restore-differs = not as the list or its name says: damaged or changed
restore-missing = on the list, but not there
restore-more = { "  " }and { $count } more
restore-lets-in = It lets in, as soon as it is served:
restore-revoked = revoked here since the copy was made
restore-cards = whoever has a card printed before the copy was made, of a run that is open in it
restore-sends-to = It also sends to, or listens at: { $names }. The Shop page changes that.
restore-keep = Keep them? Say no if you do not know each of them, or if the copy was in other hands: then everybody pairs anew.
restore-nobody = Nobody is let in by it: runboard serve shows a code for the first phone, and every other device is paired anew. Printed cards open nothing: print them again.
access-lead = a lead's
access-crew = a helper's
access-guest = came by a card
access-sensor = speaks for a machine
