"""Every key of a dose in one place: read, written back, printed, said, taught, counted and timed.

A dose is typed in `model` (`dose_part` as written, `dose` put together); here stands what each of
its keys means to everybody else. Begin with `table`, the list of all keys, then `key`, which says
what an entry holds. The entries stand by what they belong to: `amount`, `load`, `effort`, `manner`,
`by_clock` and `deload` for any set; `cluster`, `strip`, `best_of_day`, `carry`, `still` and
`resistance` for one way to do it. `clause` makes readers of patterns. `printing` turns a dose into
a line, into notation and into words by going through the table; `one_set` adds up the seconds and
repetitions that each key gives to a set (`share`), and keeps the terms for whoever shows them.
"""
