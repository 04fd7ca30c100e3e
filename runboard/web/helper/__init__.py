"""The helper's page: one tray's current step on any phone, and what a lead does with who helps.

Law: a guest sees one tray and no names but those that its card gives.
"""
