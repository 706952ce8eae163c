"""What all tests share: generated cases are never judged by the clock, since this suite also runs on two slow cores."""

from hypothesis import settings

settings.register_profile("ours", deadline=None)
settings.load_profile("ours")
