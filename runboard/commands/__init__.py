"""What is typed in a terminal, one module a command: ``add_to`` says what it takes, ``do`` does it.

Law: what a person typed wrong is a ``Mistaken`` with a sentence, and nothing is half-written. ``cli`` loads only the one that
was asked for.
"""
