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
