"""Attacks on a server of this computer's own: who may ask for what, inputs that nobody means, and senders who mean harm.

Everything here stays on loopback, is bounded in count and time, and runs from a seed.
"""
