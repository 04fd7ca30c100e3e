"""What must not be forgotten or left: rags and dust, the cautions, machines that must be watched.

Law: nothing here says that a machine may be left.
"""
