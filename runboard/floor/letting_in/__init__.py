"""Who may come: devices that pair, guests with a tray's card, and what each may do.

Law: of secrets only hashes are compared or kept.
"""
