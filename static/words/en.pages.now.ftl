# What the pages of templates/now/ say.

now-care-what-it-is-not = What runboard is not
now-care-no-interlock = It is { $b }no interlock.{ $end_b } It stops no machine and keeps no guard shut. The machine's own switches do that.
now-care-no-fire-alarm = It is { $b }no fire alarm and no fire watch.{ $end_b } It sees no flame and smells no smoke. A watch check shows that somebody answered, and nothing more.
now-care-no-substitute = It is { $b }no substitute for training, local codes and licensed people.{ $end_b } Ask an electrician, the fire service, a doctor.
now-care-manual-first = { $b }The machine's manual comes first{ $end_b }, then the label and the safety data sheet of what you use. Where they ask for more than this page, do that.
now-care-last-seen = 'Last seen' only means a press on a phone. It does not show that anyone is there.
now-care-figures = Figures of noise and dust are for information. None of them means that something is safe.
now-care-below = Below is every caution that runboard can show, and where each comes from. The signs are those of ISO 7010, by their numbers. { $span }M001{ $end_span }, the general one, is used where the standard has none of its own. The shop's own cautions beside its steps come on top.
now-care-with = With { $with }.
now-care-shown = Shown: { $shown }.
now-care-signs = Sign: { $signs }.
now-care-from-memory = (cited from memory)
now-title = Now
now-opening = Opening the shop …
now-wall-title = Wall
now-wall-no-script = This page needs JavaScript.
