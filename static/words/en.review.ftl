# The sentences of runboard, English: those of the Review screen that depend on what was measured or published. The server
# alone says them.

## Whose limits for wood dust they are, and of which dust, as they published it.
dust-limit-of-hse = HSE, United Kingdom
dust-limit-of-niosh = NIOSH, recommended
dust-limit-of-acgih = ACGIH (2007)
dust-limit-of-osha = OSHA, United States
dust-limit-hardwood = hardwood, and any mixture with it
dust-limit-softwood = softwood
dust-limit-all = all wood
dust-limit-most = most woods
dust-limit-red-cedar = western red cedar
dust-limit-total = dust not regulated otherwise, total
dust-limit-respirable = dust not regulated otherwise, respirable

## Why an observation of a time study teaches nothing.
review-left-out-interrupted = interrupted
review-left-out-overlapping = hands went to another load before it was done
review-left-out-undone = taken back
review-left-out-amended = corrected afterwards
review-left-out-assumed = nobody pressed it
review-left-out-paper = typed from a card
review-left-out-going-on = still going on
review-left-out-taken-off = the load was taken off
review-left-out-loaded-again = stopped early and loaded again
review-left-out-no-length = its start was not pressed
review-left-out-no-end = nobody pressed when the machine ended
review-left-out-with-setup = first loading after a change: the setup is in it
review-left-out-with-hands = set up by hand, within the first work
review-left-out-all-usual = no longer than without the setup
review-left-out-other-wood = another wood
review-left-out-out-of-range = over five times the guess, or under a fifth of it
