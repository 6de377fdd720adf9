"""The worked programs looked over: what cannot be done in this room, and what a coach should see.

It knows the plan and the files, so that every finding points at the word that is to be changed.
"""
