"""Photos: taken in, kept as they came, verified, and rendered for screens and report.

The bytes that came are kept unchanged, named by their SHA-256 and written once; what a screen or
the report shows is always a JPEG of our own making. No other code touches photo files.

Start: `record/photos/intake.py`.
"""

from inspector.record.photos.intake import MOST_BYTES as MOST_BYTES
from inspector.record.photos.intake import KeptPhoto as KeptPhoto
from inspector.record.photos.intake import take_in as take_in
from inspector.record.photos.intake import take_in_copy as take_in_copy
from inspector.record.photos.originals import kept as kept
from inspector.record.photos.originals import missing as missing
from inspector.record.photos.originals import original as original
from inspector.record.photos.originals import verify as verify
from inspector.record.photos.photo_refusals import Busy as Busy
from inspector.record.photos.photo_refusals import PhotoRefused as PhotoRefused
from inspector.record.photos.renditions import report_copy as report_copy
from inspector.record.photos.renditions import thumbnail as thumbnail
from inspector.record.photos.turns import place_for_request as place_for_request
