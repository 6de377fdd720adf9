"""Do the weeks add up to the wave that they claim to be?"""
