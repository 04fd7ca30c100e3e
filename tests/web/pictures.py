"""Pictures for tests, as phones and drawing programs make them."""

import io

from PIL import Image
from PIL.TiffImagePlugin import IFDRational

SIZE = (2400, 1800)


def photograph(size: tuple[int, int] = SIZE, kind: str = "JPEG", *, turned: bool = False) -> bytes:
    """A picture with a red left half and a blue right one, with where it was taken and the camera's name in it.

    ``turned`` says, as phones do, that it has to be turned a quarter clockwise to be upright.
    """
    image = Image.new("RGB", size, (200, 30, 30))
    image.paste((30, 30, 200), (size[0] // 2, 0, *size))
    for x in range(0, size[0], 7):
        image.putpixel((x, 5), (x % 256, x * 7 % 256, 90))
    exif = Image.Exif()
    exif[0x010F] = "Maker of the camera"
    exif[0x0112] = 6 if turned else 1
    exif.get_ifd(0x8825)[2] = (IFDRational(52), IFDRational(31), IFDRational(12))
    return _saved(image, kind, exif=exif)


def drawing(size: tuple[int, int] = (300, 200)) -> bytes:
    """Ink on nothing, as a drawing program saves it."""
    image = Image.new("RGBA", size, (0, 0, 0, 0))
    image.paste((20, 20, 20, 255), (40, 40, 200, 60))
    return _saved(image, "PNG")


def opened(content: bytes) -> Image.Image:
    """The picture that a file's content is."""
    return Image.open(io.BytesIO(content))


def _saved(image: Image.Image, kind: str, **how: object) -> bytes:
    kept = io.BytesIO()
    image.save(kept, kind, **how)
    return kept.getvalue()
