"""Can each load be put on, and is it as heavy as the rest of the dose asks?"""
