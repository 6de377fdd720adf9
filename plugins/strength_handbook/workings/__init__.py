"""How each number was made, step by step, as it is shown under "working".

The worked program goes in, equations come out: of loads, tables, minutes, repetitions and volume.
`working` has the pieces that all of them are made of; read it first.
"""
