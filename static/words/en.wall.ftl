# The sentences of runboard, English: those of the wall page alone.

wall-no-server = No answer from the server. This is from { $at }.
wall-quiet = Nothing running, nothing to do.
wall-people = People
wall-waits = Drying, curing, in clamps
wall-away = called away
wall-free = free
wall-watching = watching the { $stations }
wall-until = until { $until }
wall-nobody-watches = Who is watching it?
wall-more = and { $count } more
wall-answers = { $person } is on it
