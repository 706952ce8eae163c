"""Pictures as they are printed: no finer than the paper shows, and read from the disk when written.

A phone's photo has four times the pixels that its place on the page can show, and hundreds of them
do not fit into memory.
"""

import io
from pathlib import Path

from PIL import Image as Picture
from reportlab.lib.units import inch
from reportlab.pdfbase.pdfdoc import PDFDocument, PDFImageXObject
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable

from inspector.report.theme import ACCENT, LINE, PLAIN

# Pixels an inch as printed: finer is seen on no paper, and only makes the file larger.
FINEST = 220
_QUALITY = 84
# What Pillow raises for a file that is none, is damaged, or is far too large.
_UNREADABLE = (OSError, AttributeError, ValueError, SyntaxError, Picture.DecompressionBombError)


class PictureOnDisk(PDFImageXObject):
    """A JPEG whose bytes are read when the file is written, and then forgotten."""

    def __init__(self, name: str, path: Path):
        super().__init__(name)
        self.path = path
        with path.open("rb") as opened:
            self.loadImageFromJPEG(opened)
        self.streamContent = b""

    def format(self, document: PDFDocument) -> bytes:
        """Return the object with the picture's bytes.

        Parameters
        ----------
        document : PDFDocument

        Returns
        -------
        bytes
        """
        self.streamContent = self.path.read_bytes()
        try:
            return super().format(document)
        finally:
            self.streamContent = b""


class StreamedDocument(PDFDocument):
    """A document that is written object by object, and never held in memory as a whole."""

    def SaveToFile(self, filename: str, canvas: Canvas) -> None:  # noqa: N802 - ReportLab's name
        """Write the file.

        Parameters
        ----------
        filename : str
        canvas : Canvas
        """
        with open(filename, "wb") as self._out:
            self.GetPDFData(canvas)

    # ReportLab sets what collects the objects under this name, just before the first of them.
    @property
    def __accum__(self):
        return self._collector

    @__accum__.setter
    def __accum__(self, collector) -> None:
        self._out.write(b"".join(collector.strings))
        collector.strings.clear()
        collector.write = self._out.write
        self._collector = collector

    @__accum__.deleter
    def __accum__(self) -> None:
        del self._collector


class StreamedCanvas(Canvas):
    """A canvas that prints pictures from the disk into a streamed document."""

    def __init__(self, *given, **named):
        super().__init__(*given, **named)
        # The canvas makes its document itself and offers no other place to choose its kind.
        self._doc.__class__ = StreamedDocument

    def picture(self, path: Path, name: str, width: float, height: float) -> None:
        """Print a JPEG at the origin.

        Parameters
        ----------
        path : Path
        name : str
            The same for the same picture at the same size, in each making of the report.
        width, height : float
            Points.
        """
        registered = self._doc.getXObjectName(name)
        if registered not in self._doc.idToObject:
            made = PictureOnDisk(name, path)
            self._setXObjects(made)
            self._doc.Reference(made, registered)
            self._doc.addForm(name, made)
        self._currentPageHasImages = 1
        self.saveState()
        self.scale(width, height)
        self._code.append(f"/{registered} Do")
        self.restoreState()
        self._formsinuse.append(name)


class PrintedPicture(Flowable):
    """A photo, upright, with its own proportions."""

    def __init__(self, path: Path, name: str, width: float, height: float):
        super().__init__()
        self.path, self.name, self.width, self.height = path, name, width, height
        self.hAlign = "LEFT"

    def draw(self) -> None:
        """Draw at the origin."""
        self.canv.picture(self.path, self.name, self.width, self.height)


class NoPicture(Flowable):
    """An empty frame where a photo is registered but its file is not here."""

    def __init__(self, width: float, height: float):
        super().__init__()
        self.width, self.height = width, height

    def draw(self) -> None:
        """Draw the frame with its sentence."""
        self.canv.setStrokeColor(LINE)
        self.canv.setLineWidth(0.5)
        self.canv.rect(0, 0, self.width, self.height, stroke=1, fill=0)
        self.canv.setFillColor(ACCENT)
        self.canv.setFont(PLAIN, min(7.8, self.width / 23))
        self.canv.drawCentredString(
            self.width / 2, self.height / 2, "The picture itself is not on this computer."
        )


class PrintShop:
    """Makes the printed copies of photos in a folder that lives as long as the making of a report.

    Parameters
    ----------
    photo_file : callable
        Digest -> path of the report's copy (JPEG), None where there is none.
    folder : Path
    """

    def __init__(self, photo_file, folder: Path):
        self.photo_file, self.folder = photo_file, folder

    def picture(self, sha: str, width: float, height: float) -> Flowable:
        """Return a photo that fits into a room; a frame where there is none that can be read.

        Parameters
        ----------
        sha : str
            Its digest.
        width, height : float
            The room, points.

        Returns
        -------
        Flowable
        """
        path = self.photo_file(sha)
        try:
            with Picture.open(path) as opened:
                across, down = opened.size
                scale = min(width / across, height / down)
                size = (across * scale, down * scale)
                name = f"{sha[:24]}-{round(size[0])}"
                return PrintedPicture(self._copy(opened, path, name, size), name, *size)
        # None has no `seek`, a damaged file raises one of the others: the report goes on without.
        except _UNREADABLE:
            return NoPicture(width, height / 2)

    def _copy(self, opened, path: Path, name: str, size: tuple[float, float]) -> Path:
        """The picture with no more pixels than its size on paper shows; as it is if it has none."""
        pixels = tuple(max(1, round(side / inch * FINEST)) for side in size)
        copy = self.folder / f"{name}.jpg"
        if copy.is_file():
            return copy
        if pixels[0] >= opened.size[0] and opened.format == "JPEG" and opened.mode in ("RGB", "L"):
            # Read once to the end, so that a torn file is found now and not by its reader.
            opened.load()
            return path
        # JPEG decodes at half or a quarter of its size in a fraction of the time.
        opened.draft("RGB", pixels)
        smaller = opened.convert("RGB").resize(pixels, Picture.Resampling.BICUBIC)
        made = io.BytesIO()
        smaller.save(made, "JPEG", quality=_QUALITY)
        copy.write_bytes(made.getvalue())
        return copy
