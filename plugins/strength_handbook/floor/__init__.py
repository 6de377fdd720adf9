"""The hall while a group trains: what goes in is the worked program and its room.

`needs` says what a slot takes from the room, `floor` puts the pairs of all groups on a time line,
`queue` and `use` count who waits for what, `advice` and `group` look for the smallest change that
ends a shortage. Out comes the floor of a session, minute by minute. Read `floor` first.
"""
