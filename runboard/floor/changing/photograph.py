"""A photograph from a phone, made into what is kept: upright, small, and without where and by whom it was taken."""

import io
from typing import TYPE_CHECKING

from runboard.run.refusal import Refused

if TYPE_CHECKING:
    from PIL.Image import Image

LONGEST_SIDE = 1600
MOST_BYTES = 20_000_000
MOST_PIXELS = 60_000_000
_QUALITY = 82
_DRAWING_COLOURS = 256


def prepare(content: bytes) -> tuple[bytes, str]:
    """(JPEG or PNG, its ending ``jpg`` or ``png``), at most 1600 pixels long, with no metadata.

    Refused 'picture too large' (in bytes), 'picture too many pixels', 'picture unreadable': what it is goes by its
    content, never by its name.
    """
    if len(content) > MOST_BYTES:
        raise Refused("picture too large", most=MOST_BYTES // 1_000_000)
    image = _decoded(content)
    is_drawing = image.format == "PNG" and image.convert("RGBA").getcolors(_DRAWING_COLOURS) is not None
    small = _upright_and_small(image)
    return (_saved(small, "PNG"), "png") if is_drawing else (_saved(_on_white(small), "JPEG", quality=_QUALITY), "jpg")


def _decoded(content: bytes) -> "Image":
    from PIL import Image, ImageFile  # most of what the server does needs no pictures, and it starts sooner without

    ImageFile.LOAD_TRUNCATED_IMAGES = False  # WeasyPrint allows them to the whole process: half a photograph is none
    try:
        image = Image.open(io.BytesIO(content), formats=("JPEG", "PNG", "WEBP"))
        if image.width * image.height <= MOST_PIXELS:
            image.draft("RGB", (LONGEST_SIDE, LONGEST_SIDE))  # a JPEG is decoded no larger than is needed
            image.load()
            return image
    except (Image.DecompressionBombError, Image.DecompressionBombWarning):
        pass
    except Exception:  # noqa: BLE001 - what came is spoiled, and each decoder fails in a way of its own
        raise Refused("picture unreadable") from None
    raise Refused("picture too many pixels", most=MOST_PIXELS // 1_000_000)


def _upright_and_small(image: "Image") -> "Image":
    from PIL import Image, ImageOps

    try:
        turned = ImageOps.exif_transpose(image)
    except Exception:  # noqa: BLE001 - the same: only what says how it was held is spoiled, and it stays as it is
        turned = image
    small = turned.convert("RGBA")
    small.thumbnail((LONGEST_SIDE, LONGEST_SIDE), Image.Resampling.LANCZOS)
    return small


def _on_white(image: "Image") -> "Image":
    from PIL import Image

    return Image.alpha_composite(Image.new("RGBA", image.size, "white"), image).convert("RGB")


def _saved(image: "Image", kind: str, **how: int) -> bytes:
    from PIL import Image

    bare = Image.frombytes(image.mode, image.size, image.tobytes())  # pixels only: no EXIF, no comment, no profile
    kept = io.BytesIO()
    bare.save(kept, kind, optimize=True, **how)
    return kept.getvalue()
