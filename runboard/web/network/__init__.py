"""The ways in: pairing a device, and trusting the shop's certificate.

Law: a device that is not paired gets nothing else.
"""
