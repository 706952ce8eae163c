"""A decoded picture of any mode in plain 8-bit colours, no larger than the report needs."""

import contextlib
import io

from PIL import Image, ImageChops, ImageCms

from inspector.record.photos.png_structure import PngStructure

# Rows of the small picture that are made at a time.
_ROWS = 64
_MOST_PROFILE = 4_000_000  # bytes


def plain(picture: Image.Image, factor: int, png: PngStructure | None = None) -> Image.Image:
    """Return a picture in 8-bit RGB; what can be seen through becomes white paper.

    Parameters
    ----------
    picture : Image
        As decoded.
    factor : int
        How many times smaller it becomes.
    png : PngStructure, optional
        What its file states, for a PNG.

    Returns
    -------
    Image
    """
    profile = picture.info.get("icc_profile")
    if png is not None and png.transparent:
        picture.info["transparency"] = _as_decoded(png)
    if factor == 1:
        return _in_srgb(_without_transparency(picture), profile)
    width, height = picture.size
    small = Image.new("RGB", (-(-width // factor), -(-height // factor)))
    # Strip by strip: a second and a third whole picture in other modes would fill the memory.
    for row in range(0, small.height, _ROWS):
        top, bottom = row * factor, min((row + _ROWS) * factor, height)
        strip = _without_transparency(picture.crop((0, top, width, bottom)))
        small.paste(strip.reduce(factor), (0, row))
    return _in_srgb(small, profile)


def saved_as_jpeg(picture: Image.Image, quality: int) -> bytes:
    """Return a picture as a JPEG without comments and EXIF.

    Parameters
    ----------
    picture : Image
        In RGB.
    quality : int
        1 to 95.

    Returns
    -------
    bytes
    """
    out = io.BytesIO()
    # Neither comments nor EXIF go into what is shown: a camera may have written where it was.
    picture.info = {}
    picture.save(out, "JPEG", quality=quality)
    return out.getvalue()


def _as_decoded(png: PngStructure) -> int | tuple[int, ...]:
    """The colour that is seen through, in the numbers of the decoded picture.

    Pillow gives it in those of the file, and compares it with pixels that it has brought to 8 bits.
    """
    if png.depth < 16:
        most = 2**png.depth - 1
        values = tuple(min(value * 255 // most, 255) for value in png.transparent)
    elif png.channels == 1:
        values = png.transparent
    else:
        values = tuple(value >> 8 for value in png.transparent)
    return values[0] if png.channels == 1 else values


def _without_transparency(picture: Image.Image) -> Image.Image:
    if picture.mode.startswith("I"):
        return _from_16_bits(picture)
    if picture.has_transparency_data:
        layer = picture.convert("RGBA")
        picture = Image.new("RGB", layer.size, "white")
        picture.paste(layer, mask=layer.getchannel("A"))
    elif picture.mode not in ("RGB", "CMYK"):
        picture = picture.convert("RGB")
    return picture


def _from_16_bits(picture: Image.Image) -> Image.Image:
    """A picture of 16-bit grey in RGB."""
    # Pillow's own conversion clips everything above 255 to white.
    whole = picture.convert("I")
    grey = whole.point(lambda value: value * (1 / 256)).convert("L")
    clear = picture.info.get("transparency")
    if isinstance(clear, int):
        # |value - clear| is 0 only where a pixel is seen through; more than 255 is cut to 255.
        below = whole.point(lambda value: value * 1 - clear).convert("L")
        above = whole.point(lambda value: value * -1 + clear).convert("L")
        seen = ImageChops.add(below, above)
        grey.paste(255, mask=seen.point([255] + [0] * 255))
    return grey.convert("RGB")


def _in_srgb(picture: Image.Image, profile: bytes | None) -> Image.Image:
    if profile and b"sRGB" not in profile and len(profile) <= _MOST_PROFILE:
        # A profile that cannot be used costs some colour, not the photo.
        with contextlib.suppress(ImageCms.PyCMSError, OSError, ValueError, TypeError):
            srgb = ImageCms.createProfile("sRGB")
            picture = ImageCms.profileToProfile(
                picture, io.BytesIO(profile), srgb, outputMode="RGB"
            )
    return picture if picture.mode == "RGB" else picture.convert("RGB")
