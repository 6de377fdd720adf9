"""Does one exercise spoil the next?"""
