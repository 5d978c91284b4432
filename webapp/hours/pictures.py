"""A photograph made fit to keep: decoded, turned upright, scaled, and nothing left in it but the picture."""

import io
from math import ceil

from PIL import Image, ImageOps, UnidentifiedImageError

MEGAPIXEL = 1_000_000
MOST = 16  # megapixels
LONGEST = 1600  # px, of the longer side as it is kept
KINDS = ("JPEG", "PNG", "WEBP")
QUALITY = 82
SMALLER = "Choose a smaller size in the camera, or crop it."
Picture = tuple[bytes, int, int]  # a JPEG, its width and its height
LINEN = (243, 238, 227)  # beneath what can be seen through


class BadPicture(ValueError):
    """No picture that can be taken; the message is a sentence."""


def in_tenths(amount: int, of: int) -> str:
    """Write an amount in so many, rounded up: what is over a limit must not read as the limit itself."""
    return f"{ceil(10 * amount / of) / 10:g}"


def fit(data: bytes) -> Picture:
    """Give a JPEG with its width and height; raise BadPicture.

    Where it was taken, when and with what are not carried over: only the picture itself is written anew.
    """
    try:
        with Image.open(io.BytesIO(data), formats=KINDS) as found:
            pixels = found.width * found.height
            if pixels > MOST * MEGAPIXEL:
                has = in_tenths(pixels, MEGAPIXEL)
                raise BadPicture(
                    f"That picture has {has} megapixels, and {MOST} can be taken at most. {SMALLER}"
                )
            found.draft("RGB", (LONGEST, LONGEST))
            upright = ImageOps.exif_transpose(found)
            upright.thumbnail((LONGEST, LONGEST), Image.Resampling.LANCZOS)
            return _written(upright)
    except BadPicture:
        raise
    except Image.DecompressionBombError as error:  # so large that it is not even opened
        raise BadPicture(
            f"That picture has far more megapixels than the {MOST} that can be taken. {SMALLER}"
        ) from error
    except (UnidentifiedImageError, OSError, ValueError, SyntaxError) as error:
        raise BadPicture("That is no picture that can be read. Choose a JPEG, PNG or WebP.") from error


def _written(image: Image.Image) -> Picture:
    if image.mode.startswith("I"):  # grey of 16 bits, which would be cut off at 255
        image = image.point(lambda grey: grey * (1 / 257) + 0.5).convert("L")
    plain = Image.new("RGB", image.size, LINEN)
    seen_through = image.convert("RGBA")
    plain.paste(seen_through, mask=seen_through.getchannel("A"))
    written = io.BytesIO()
    plain.save(written, "JPEG", quality=QUALITY, optimize=True)
    return written.getvalue(), plain.width, plain.height
