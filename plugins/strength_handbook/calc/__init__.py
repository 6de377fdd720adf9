"""Pure arithmetic: SI units in, SI units out, no files, no state.

One module per subject, one function per published formula, named after author and year where a
formula has one. `registry` lists them all for the page that shows how the numbers are made.
"""
