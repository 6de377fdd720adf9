"""What a phone is given so that it shows the build's own loads.

The worked program goes in. `recipes` makes of each slot and table a recipe in whole numbers,
`lists` the one file of loads to pick from (`scales`, `rack`, `on_top` fill it), `train` the steps
of a session. Out comes data for the scripts, which pick and never decide. Read `recipes` first.
"""
