"""What was written, worked out: loads, plates, volumes, minutes and tables.

Takes the book of `model` and the arithmetic of `calc`; knows nothing of pages. `work_out` goes
through a program and makes a `worked.Worked` of it; read these two first. `scale` and `scales` are
the loads that exist, `loads` picks from them; each other module works out one thing of a slot.
"""
