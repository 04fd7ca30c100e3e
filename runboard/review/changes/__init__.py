"""Which change would pay: offers from the data, what each saves, what was adopted, and whether it worked. Pure."""
