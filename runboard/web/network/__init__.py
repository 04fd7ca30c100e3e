"""The ways in: pairing a device, trusting the shop's certificate, the addresses under which the shop is found.

Law: a device that is not paired gets nothing else.
"""
