"""A publication as data, and what differs between two of them.

The worked program goes in. `data` is everything that is published of a program (`digest`,
`method_data` and `room_data` are parts of it), `earlier` reads what was published before, `changes`
and `slot_changes` compare the two, field by field. Out come `change.Change`s. Read `data` first.
"""
