# What the pages of templates/forms/ say.

forms-none-yet = There are none yet.
forms-picture-off = Take this picture off
forms-new = (new)
forms-take-out = Remove
forms-one-more = One more { $row }
forms-marked = { $errors } { $errors ->
    [one] place is
   *[other] places are
  } marked below. Nothing is saved yet, and nothing you typed is lost.

# the forms of a change to try

forms-change-helper = A helper at one operation
forms-change-minutes = For how many minutes in all
forms-change-load = More or fewer on a load
forms-change-on-a-load = Pieces on a load, at most
forms-change-grows = The machine takes longer with more on it
forms-change-instead = Another tool, abrasive or wood
forms-change-means = What is another
forms-change-which = { $means ->
    [abrasive] the abrasive
    [wood] the wood
   *[tool] the tool
  }
forms-change-name = Which instead
forms-change-per-cent = Of its time, in per cent
forms-change-good = Good of 100, if it changes
forms-change-visit = Two operations in one visit
forms-change-after = { $then } right after { $first }
