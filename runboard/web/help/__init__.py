"""Help: how runboard works, on one page that a phone keeps for when the server is away.

Law: it says nothing of what the shop does, and holds nothing that lets anybody in.
"""
