"""Does the session fit the room and the clock?"""
