# The sentences of runboard, English: those of the wall page alone.

wall-no-server = The server does not answer. What stands here is from { $at }.
wall-quiet = Nothing runs, and nothing wants you.
wall-people = People
wall-waits = Drying, curing, in clamps
wall-away = called away
wall-free = free
wall-until = until { $until }
wall-nobody-watches = Who watches it?
wall-more = and { $count } more
wall-answers = { $person } answers
