"""What was written, worked out: loads, plates, volumes, minutes and tables.

Takes the book of `model` and the arithmetic of `calc`; knows nothing of pages.
"""
