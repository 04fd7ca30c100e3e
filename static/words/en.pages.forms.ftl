# What the pages of templates/forms/ say.

forms-none-yet = There are none yet.
forms-picture-off = Take this picture off
forms-new = (new)
forms-take-out = Take this { $row } out
forms-one-more = One more { $row }
forms-marked = { $errors } { $errors ->
    [one] place is
   *[other] places are
  } marked below. Nothing is saved yet, and nothing you typed is lost.
