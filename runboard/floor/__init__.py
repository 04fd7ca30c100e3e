"""What a person does, one plain function each: load, decide, append, tell.

Law: it imports the pure packages only, and meets the store, the alerts and the clock as Protocols on one ``Workshop``.
"""
