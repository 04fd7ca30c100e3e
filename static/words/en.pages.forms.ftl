# What the pages of templates/forms/ say.

forms-none-yet = None yet.
forms-picture-off = Remove picture
forms-new = (new)
forms-take-out = Remove
forms-one-more = Add { $row }
forms-marked = { $errors } { $errors ->
    [one] field needs
   *[other] fields need
  } fixing below. Nothing is saved yet, and your entries are still here.

# the forms of a change to try

forms-change-helper = A helper at one operation
forms-change-minutes = Minutes in all
forms-change-load = More or fewer pieces per load
forms-change-on-a-load = Pieces per load, at most
forms-change-grows = Machine takes longer with more
forms-change-instead = A different tool, abrasive or wood
forms-change-means = What is different
forms-change-which = { $means ->
    [abrasive] the abrasive
    [wood] the wood
   *[tool] the tool
  }
forms-change-name = New one
forms-change-per-cent = New time, %
forms-change-good = Good of 100, if new
forms-change-visit = Two operations in one visit
forms-change-after = { $then } right after { $first }
