"""How long an engraving takes, swept or traced, and what another way of sweeping would take.

Law: lengths are millimetres, spans seconds. What is fastest is said; whether it looks the same is not known here, and is said too.
"""
