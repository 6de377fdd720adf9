"""Is there time to recover, within a session and from day to day?"""
