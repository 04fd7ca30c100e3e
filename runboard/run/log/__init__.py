"""What happened: the kinds of events, their envelope and form, corrections, how large a run may be.

Law: an event is a record that nothing changes; what it does to the shop is the fold's affair.
"""
