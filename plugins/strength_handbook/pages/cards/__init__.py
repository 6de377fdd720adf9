"""Printed cards: what stands on one, how much fits, and the pages that hold them.

A slot's weeks go in, an A5 card comes out. `card` says what it holds and is the one to read first;
`fit` and `text_size` measure it, `code` names its content.
"""
