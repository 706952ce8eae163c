"""What a conversion would ask and give: speed, fuel, range, stores. Pure functions on plain numbers.

Every result is a first check, to be verified before anyone relies on it.
"""
