# The sentences of runboard, English: those about copies of the shop. The server alone says them.

copy-none = No copy yet. The first is made by itself once something is written down.
copy-good = Last copy: { $when }, { $events ->
    [one] 1 event
   *[other] { $events } events
}.
copy-old = Last copy: { $when }. That is more than two days ago: make one now.
copy-unreadable = The last copy, { $when }, cannot be read any more: make one now.
copy-failed = Copy failed: { $when }.
copy-failed-before = Last good copy: { $when }.
copy-failed-none = There is no earlier one.

## Why a copy was not made, or cannot be used. They stand after 'Copy failed: …' and after 'runboard:'.
bad-copy-no-room = Not enough space in { $folder }. Free some, or copy to another disk with runboard backup --to.
bad-copy-cannot-write = { $folder } cannot be written: { $why }.
bad-copy-not-copied = The database could not be copied to { $folder }: { $why }.
bad-copy-nothing-to-copy = There is no shop in { $folder }.
bad-copy-no-folder = There is no folder { $folder }. Is the disk plugged in?
bad-copy-missing = There is no file { $file }.
bad-copy-no-database = { $file } is no copy of a shop: it is no database.
bad-copy-no-shop = { $file } is no copy of a shop: it is a database of something else.
bad-copy-other-tables = { $file } is no copy as runboard makes it: its tables are not those of a shop.
bad-copy-damaged = { $file } is damaged ({ $why }). Take an older copy.
bad-copy-does-not-fold = The log in { $file } cannot be read ({ $why }). Take an older copy.
bad-copy-newer = { $file } was made by a newer runboard. Install that one first.
bad-copy-changing = { $file } changed while it was read. Take a copy that nobody writes to.
bad-copy-not-as-listed = { $file } is not as { $list } beside it says: it was damaged or changed. Take another copy. If you know why, move the list away: then nothing is compared.
bad-copy-bad-list = { $file } is no list of a copy as runboard writes it, or names files that lie elsewhere. Take another copy, or move the list away: then nothing is compared.
bad-copy-same-file = { $file } is the shop itself, not a copy of it.
bad-copy-in-use = { $folder } is in use. Stop runboard there (Ctrl-C) and whatever else has it open, then try again.

## Who could read the data folder. They stand on the console and on the Shop page.
folder-was-open = Other users of this computer could read the shop in { $folder }, with its keys and passwords. Now they no longer can.
folder-shared = Other users of this computer could read the shop in { $folder }, with its keys and passwords. Its files are closed to them now; the folder itself was left as it is, since it holds other things too. Give the shop a folder of its own.
folder-other-owner = The folder { $folder } belongs to { $owner }, and runboard runs as { $me }: who else can read it was left as it is. Start runboard as { $owner }, or give the folder to { $me }.
folder-stays-open = The folder { $folder } could not be closed to other users of this computer: they may read the shop, with its keys and passwords. Keep it on a disk that knows whose a file is.

## What the disk does not take is no refusal: the phone keeps its press.
not-stored-full = Not saved: the disk of the shop's computer is full. Make room there.
not-stored-read-only = Not saved: the disk of the shop's computer is read-only. Look at it there.
not-stored-failing = Not saved: the disk of the shop's computer fails. Look at it there.
not-stored-busy = Not saved: another program holds the shop's database. Close it.
not-stored-only-looked = Much is being stored just now, or another program holds the shop's database. Look again in a moment.
not-stored-phone-keeps = Your phone keeps it and sends it again by itself.
not-stored-press-again = Then press again.
