# The sentences of runboard, English: those about copies of the shop. The server alone says them.

copy-none = No backup yet. The first is made by itself once something is written down.
copy-good = Last backup: { $when }, { $events ->
    [one] 1 event
   *[other] { $events } events
}.
copy-old = Last backup: { $when }. That is more than two days ago: make one now.
copy-unreadable = The last backup, { $when }, can no longer be read: make one now.
copy-failed = Backup failed ({ $when }).
copy-failed-before = The last one is from { $when }.
copy-failed-none = There is no earlier one.

## Why a copy was not made, or cannot be used. They stand after 'No copy was made …' and after 'runboard:'.
bad-copy-no-room = Not enough space in { $folder }. Free some, or back up to another disk with runboard backup --to.
bad-copy-cannot-write = { $folder } cannot be written: { $why }.
bad-copy-not-copied = The database could not be copied to { $folder }: { $why }.
bad-copy-nothing-to-copy = There is no shop in { $folder }.
bad-copy-no-folder = There is no folder { $folder }. Is the disk plugged in?
bad-copy-missing = There is no file { $file }.
bad-copy-no-database = { $file } is not a backup of a shop: it is not a database.
bad-copy-no-shop = { $file } is not a backup of a shop: it is a database of something else.
bad-copy-other-tables = { $file } is not a backup as runboard makes it: its tables are not those of a shop.
bad-copy-damaged = { $file } is damaged ({ $why }). Use an older backup.
bad-copy-does-not-fold = The log in { $file } cannot be read ({ $why }). Use an older backup.
bad-copy-newer = { $file } was made by a newer runboard. Install that one first.
bad-copy-changing = { $file } changed while it was being read. Use a backup that nothing writes to.
bad-copy-not-as-listed = { $file } is not as { $list } beside it says: it was damaged or changed. Use another backup. If you know why, move the list away: then nothing is compared.
bad-copy-bad-list = { $file } is not a list that runboard writes, or names files that are elsewhere. Use another backup, or move the list away: then nothing is compared.
bad-copy-same-file = { $file } is the shop itself, not a backup of it.
bad-copy-in-use = { $folder } is in use. Stop runboard there (Ctrl-C) and everything else that has it open, then try again.

## Who could read the data folder. They stand on the console and on the Shop page.
folder-was-open = Other users of this computer could read the shop in { $folder }, with its keys and passwords. Now they no longer can.
folder-shared = Other users of this computer could read the shop in { $folder }, with its keys and passwords. Its files are closed to them now. The folder itself was left as it is, because it holds other things too. Give the shop a folder of its own.
folder-other-owner = The folder { $folder } belongs to { $owner }, and runboard runs as { $me }. Who else can read it was left as it is. Start runboard as { $owner }, or give the folder to { $me }.
folder-stays-open = The folder { $folder } could not be closed to other users of this computer. They may read the shop, with its keys and passwords. Keep it on a disk that knows whose a file is.

## What the disk does not take is no refusal: the phone keeps its press.
not-stored-full = Not saved: the disk of the shop's computer is full. Make room there.
not-stored-read-only = Not saved: the disk of the shop's computer is read-only. Check it there.
not-stored-failing = Not saved: the disk of the shop's computer is failing. Check it there.
not-stored-busy = Not saved: another program has the shop's database open. Close it.
not-stored-only-looked = The shop's database is busy, or another program has it open. Try again in a moment.
not-stored-phone-keeps = Your phone keeps it and sends it again by itself.
not-stored-press-again = Then press again.
