# What the pages of templates/before/ say.

before-title = Before a run
before-intro = Look at it before the first cut: nothing is written down until you press to keep it.
before-back-plan = Back to the plan
before-back = Back
before-all = All questions before a run
before-drop = A program or a drawing
before-drop-hint = Drop the file here, or choose it.
before-look-at-it = Look at it
before-look-there = Look there
before-coming = Working it out
before-end = Never mind
before-cannot = That could not be worked out
before-same-file = Ask this of the same file
before-what-is-asked = What is asked
before-ask-otherwise = Ask otherwise
before-another-file = Another file
before-file = The file
before-file-now = { $name }
before-file-hint = Drop it here, or choose it: { $endings }.
before-work-it-out = Work it out
before-doubts = { $doubts ->
    [one] Look at this too
   *[other] Look at these { $doubts } things too
  }
before-keep-which = What to keep, and where
before-keep-chosen = Keep this

