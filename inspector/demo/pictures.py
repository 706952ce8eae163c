"""Draws the demo's pictures with Pillow: plain scenes of plates, gauges and rooms.

Each picture carries the words that it is a drawing. The same name always gives the same bytes, so a
second demo has the same photos.
"""

import io
import math
import random
from collections.abc import Callable

from PIL import Image, ImageDraw, ImageFont

SIZE = (1600, 1200)
STAMP = "drawn for the demo, no photograph"
QUALITY = 80
Draw = ImageDraw.ImageDraw


def picture(name: str, title: str) -> bytes:
    """Return a drawing as JPEG bytes.

    Parameters
    ----------
    name : str
        A key of SCENES.
    title : str
        Written into the picture above the stamp.

    Returns
    -------
    bytes

    Raises
    ------
    KeyError
        There is no drawing of that name.
    """
    image = Image.new("RGB", SIZE, "#6b747c")
    draw = ImageDraw.Draw(image)
    # The name starts the random numbers, so that a picture is the same each time.
    SCENES[name](draw, random.Random(name))
    draw.rectangle((0, 1090, 1600, 1200), fill="#14181c")
    draw.text((40, 1102), title, fill="#ffffff", font=_font(40))
    draw.text((40, 1152), STAMP, fill="#ffd24a", font=_font(32))
    kept = io.BytesIO()
    image.save(kept, "JPEG", quality=QUALITY)
    return kept.getvalue()


def _font(size: int):
    return ImageFont.load_default(size=size)


# Scattered at random: rust, growth, frost or salt by colour and place.
def _blotches(
    draw: Draw,
    chance: random.Random,
    count: int,
    colours: tuple[str, ...],
    area: tuple[int, int, int, int],
    largest: int,
) -> None:
    for _ in range(count):
        x = chance.uniform(area[0], area[2])
        y = chance.uniform(area[1], area[3])
        r = chance.uniform(largest / 6, largest)
        draw.ellipse(
            (x - r, y - r * chance.uniform(0.4, 1), x + r, y + r * chance.uniform(0.4, 1)),
            fill=chance.choice(colours),
        )


def _engine_room(draw: Draw, chance: random.Random) -> None:
    draw.rectangle((0, 0, 1600, 760), fill="#d9dcd4")
    draw.polygon(((0, 1090), (1600, 1090), (1150, 760), (450, 760)), fill="#55705a")
    for left, right in ((90, 620), (980, 1510)):
        draw.rectangle((left, 430, right, 900), fill="#4f7f6c", outline="#233", width=6)
        for step in range(6):
            x = left + 35 + step * 80
            draw.rectangle((x, 340, x + 55, 430), fill="#39584c", outline="#122", width=4)
        draw.rectangle((left, 260, right, 310), fill="#c9c9c9", outline="#555", width=4)
    for y in (60, 120, 170):
        draw.line((0, y, 1600, y + chance.randint(-12, 12)), fill="#9a8f6a", width=22)


def _gauge(draw: Draw, share: float, unit: str, largest: int) -> None:
    draw.rectangle((0, 0, 1600, 1200), fill="#3c474f")
    draw.ellipse((330, 80, 1270, 1020), fill="#b6b9bb")
    draw.ellipse((380, 130, 1220, 970), fill="#fbfbf5", outline="#222", width=8)
    for step in range(11):
        angle = math.radians(225 - 27 * step)
        ends = [(800 + r * math.cos(angle), 550 - r * math.sin(angle)) for r in (400, 340)]
        draw.line(ends, fill="#111", width=8)
        draw.text(
            (800 + 285 * math.cos(angle), 550 - 285 * math.sin(angle)),
            f"{largest * step / 10:g}",
            fill="#111",
            font=_font(44),
            anchor="mm",
        )
    # A dial runs from lower left over the top to lower right, 270 degrees in all.
    angle = math.radians(225 - 270 * share)
    draw.line(
        (800, 550, 800 + 330 * math.cos(angle), 550 - 330 * math.sin(angle)),
        fill="#b3201a",
        width=16,
    )
    draw.ellipse((760, 510, 840, 590), fill="#222")
    draw.text((800, 760), unit, fill="#111", font=_font(64), anchor="mm")


def _corroded_plate(draw: Draw, chance: random.Random) -> None:
    draw.rectangle((0, 0, 1600, 1200), fill="#7d8a90")
    _blotches(
        draw, chance, 190, ("#8a4b24", "#6e3518", "#a4622f", "#4f2a17"), (150, 120, 1450, 1000), 95
    )
    _blotches(draw, chance, 60, ("#2a1710",), (300, 250, 1300, 900), 22)
    draw.rectangle((500, 880, 1100, 940), fill="#e8d98a", outline="#222", width=4)
    for step in range(31):
        draw.line(
            (500 + step * 20, 880, 500 + step * 20, 905 if step % 5 else 925), fill="#222", width=3
        )


def _manhole(draw: Draw, chance: random.Random) -> None:
    draw.rectangle((0, 0, 1600, 1200), fill="#586a5e")
    draw.ellipse((350, 200, 1250, 950), fill="#8f9a94", outline="#2c3531", width=14)
    draw.ellipse((520, 340, 1080, 810), fill="#7e8a84", outline="#39433e", width=10)
    draw.arc((720, 500, 880, 640), 180, 360, fill="#2c3531", width=18)
    _blotches(draw, chance, 14, ("#8a4b24", "#6e3518"), (480, 300, 1120, 850), 26)
    for step in range(24):
        angle = math.radians(15 * step)
        x, y = 800 + 370 * math.cos(angle), 575 + 305 * math.sin(angle)
        draw.regular_polygon(
            (x, y, 24), 6, rotation=chance.randint(0, 59), fill="#c7c2a4", outline="#222"
        )


def _tunnel(draw: Draw, chance: random.Random) -> None:
    draw.rectangle((0, 0, 1600, 1200), fill="#27424f")
    for step in range(9):
        draw.ellipse(
            (300 + step * 25, 50 + step * 25, 1300 - step * 25, 1050 - step * 25),
            fill=f"#{38 + 4 * step:02x}{70 + 4 * step:02x}{84 + 4 * step:02x}",
        )
    for step in range(4):
        angle = math.radians(90 * step + 25)
        tip, side = (
            (800 + 290 * math.cos(angle), 550 + 290 * math.sin(angle)),
            math.radians(90 * step + 60),
        )
        draw.polygon(
            ((800, 550), tip, (800 + 250 * math.cos(side), 550 + 250 * math.sin(side))),
            fill="#b08a4a",
            outline="#5e4720",
        )
    draw.ellipse((710, 460, 890, 640), fill="#8d6d38", outline="#4b3a1c", width=8)
    _blotches(draw, chance, 40, ("#d9d2b8", "#8aa07c"), (330, 780, 1270, 1040), 20)


def _switchboard(draw: Draw, chance: random.Random) -> None:
    """Draw a row of cubicles with meters."""
    draw.rectangle((0, 0, 1600, 1200), fill="#c9cdc8")
    draw.rectangle((0, 980, 1600, 1090), fill="#31443a")
    for column in range(6):
        left = 80 + column * 245
        draw.rectangle((left, 90, left + 235, 980), fill="#9fb0a6", outline="#333", width=5)
        for meter in range(2):
            draw.rectangle(
                (left + 20 + meter * 105, 140, left + 110 + meter * 105, 230),
                fill="#f6f6ee",
                outline="#222",
                width=4,
            )
            draw.line(
                (
                    left + 65 + meter * 105,
                    222,
                    left + 40 + meter * 105 + chance.randint(0, 50),
                    160,
                ),
                fill="#a11",
                width=4,
            )
        for lamp in range(3):
            draw.ellipse(
                (left + 30 + lamp * 68, 280, left + 70 + lamp * 68, 320),
                fill=chance.choice(("#2f9e44", "#2f9e44", "#c92a2a", "#ddd")),
            )
        draw.rectangle((left + 40, 430, left + 195, 700), fill="#50605a", outline="#222", width=5)
        draw.rectangle((left + 95, 520, left + 140, 610), fill="#111")


def _coil(draw: Draw, chance: random.Random) -> None:
    """Draw an evaporator coil under frost."""
    draw.rectangle((0, 0, 1600, 1200), fill="#dfe7ea")
    draw.rectangle((180, 180, 1420, 900), fill="#93a5ad", outline="#455", width=8)
    for step in range(62):
        draw.line((190 + step * 20, 185, 190 + step * 20, 895), fill="#6b7f88", width=5)
    _blotches(draw, chance, 150, ("#ffffff", "#f3f9fc", "#e2f0f6"), (200, 560, 1400, 890), 80)
    for x in (430, 800, 1170):
        draw.ellipse((x - 130, 240, x + 130, 500), outline="#223", width=12)


def _deck(draw: Draw, chance: random.Random) -> None:
    """Draw an open deck with its lashing points."""
    draw.rectangle((0, 0, 1600, 420), fill="#b8cad6")
    draw.polygon(((0, 1090), (1600, 1090), (1180, 420), (420, 420)), fill="#7c6a4c")
    for step in range(13):
        draw.line((420 + step * 63, 420, step * 133, 1090), fill="#54472f", width=4)
    for row in range(5):
        y, scale = 480 + row * 125, 0.5 + 0.12 * row
        for column in range(4):
            x = 800 + (column - 1.5) * 330 * scale
            draw.ellipse(
                (x - 30 * scale, y - 16 * scale, x + 30 * scale, y + 16 * scale),
                fill="#c8b23c",
                outline="#222",
                width=4,
            )
    draw.line((420, 420, 420, 300, 1180, 300, 1180, 420), fill="#46525a", width=14)
    _blotches(draw, chance, 18, ("#8a4b24",), (300, 600, 1300, 1060), 18)


def _hull_side(draw: Draw, chance: random.Random) -> None:
    """Draw a ship's side with rust at the waterline."""
    draw.rectangle((0, 0, 1600, 1200), fill="#b9c8d0")
    draw.polygon(((120, 330), (1500, 250), (1380, 900), (240, 900)), fill="#2c4a63")
    draw.polygon(((225, 820), (1395, 820), (1380, 900), (240, 900)), fill="#7d2f28")
    draw.rectangle((900, 90, 1320, 300), fill="#eceae0", outline="#444", width=5)
    draw.rectangle((0, 890, 1600, 1200), fill="#3f6470")
    _blotches(draw, chance, 45, ("#8a4b24", "#6e3518"), (260, 640, 1370, 820), 34)


def _stern_seal(draw: Draw, chance: random.Random) -> None:
    """Draw a stern tube seal that drips."""
    draw.rectangle((0, 0, 1600, 1200), fill="#4f4a44")
    draw.rectangle((0, 450, 1600, 690), fill="#aeb3b5")
    draw.rectangle((560, 330, 900, 810), fill="#6d7f74", outline="#222", width=8)
    for y in range(380, 800, 70):
        draw.ellipse((600, y, 640, y + 40), fill="#c9c4ae", outline="#222")
    for step in range(9):
        y = 810 + step * 30
        x = 700 + chance.randint(-30, 30)
        draw.ellipse((x, y, x + chance.randint(12, 24), y + 26), fill="#2a2110")


def _battery_box(draw: Draw, chance: random.Random) -> None:
    """Draw two rows of batteries with salt on their poles."""
    draw.rectangle((0, 0, 1600, 1200), fill="#8b9196")
    for row in range(2):
        for column in range(6):
            x, y = 150 + column * 220, 240 + row * 370
            draw.rectangle((x, y, x + 200, y + 290), fill="#22272b", outline="#000", width=5)
            for pole, colour in ((40, "#c92a2a"), (130, "#4472c4")):
                draw.rectangle((x + pole, y - 26, x + pole + 34, y), fill=colour)
    _blotches(draw, chance, 26, ("#dfe9df", "#bcd4c4"), (150, 200, 1450, 260), 22)


def _thermal(draw: Draw, chance: random.Random) -> None:
    """Draw three terminals as an infrared camera shows them, the middle one hot."""
    for y in range(0, 1100, 20):
        draw.rectangle((0, y, 1600, y + 20), fill=f"#{20 + y // 20:02x}10{70 + y // 14:02x}")
    for x in (350, 750, 1150):
        hot = x == 750
        step = (20, 25) if hot else (8, 8)
        for ring in range(8):
            r = 190 - ring * 22
            red, green, blue = 90 + ring * step[0], 20 + ring * step[1], 80 - ring * 9
            draw.ellipse((x - r, 520 - r, x + r, 520 + r), fill=f"#{red:02x}{green:02x}{blue:02x}")
        draw.text(
            (x, 780),
            f"{55 if hot else 43 + chance.randint(0, 2)} °C",
            fill="#fff",
            font=_font(56),
            anchor="mm",
        )


SCENES: dict[str, Callable[[Draw, random.Random], None]] = {
    "engine-room": _engine_room,
    "oil-pressure": lambda draw, _: _gauge(draw, 0.46, "bar", 10),
    "corroded-plate": _corroded_plate,
    "manhole": _manhole,
    "tunnel": _tunnel,
    "switchboard": _switchboard,
    "coil": _coil,
    "deck": _deck,
    "hull-side": _hull_side,
    "stern-seal": _stern_seal,
    "batteries": _battery_box,
    "thermal": _thermal,
    "start-air": lambda draw, _: _gauge(draw, 0.275, "bar", 40),
    "tired-deck": _corroded_plate,
    "hull-side-far": _hull_side,
    "closed-manhole": _manhole,
}
