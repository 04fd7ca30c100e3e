"""The shop on its own network: its names and addresses, the certificates for them, how phones find it.

Law: it imports nothing else of runboard. Moments come in as arguments; what fails is the code of a sentence (``Trouble``)
and stops no server.
"""
