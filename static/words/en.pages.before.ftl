# What the pages of templates/before/ say.

before-title = Before a run
before-intro = Check it before the first cut. Nothing is saved until you press to keep it.
before-back-plan = Back to the plan
before-back = Back
before-all = All questions before a run
before-drop = A program or a drawing
before-drop-hint = Drop a file here, or choose one.
before-look-at-it = Check it
before-look-there = Show me
before-coming = Working it out …
before-end = Cancel
before-cannot = That can’t be worked out
before-same-file = Ask about the same file
before-what-is-asked = Your question
before-ask-otherwise = Change the question
before-another-file = Choose another file
before-file = The file
before-file-now = { $name }
before-file-hint = Drop it here, or choose it: { $endings }.
before-work-it-out = Work it out
before-doubts = { $doubts ->
    [one] Check this too
   *[other] Check these { $doubts } things too
  }
before-keep-which = What to keep, and where
before-keep-chosen = Keep this

