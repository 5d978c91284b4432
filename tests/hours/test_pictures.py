"""Photographs: decoded, upright, small, and nothing left in them but the picture."""

import io
import struct
import zlib

import pytest
from PIL import Image

from webapp.hours.pictures import LONGEST, BadPicture, fit

ORIENTATION, GPS = 0x0112, 0x8825


def picture(size=(60, 40), kind="JPEG", mode="RGB", orientation=None, colour="red", **more):
    """Paint a picture whose left half has a colour; as a camera writes it, with where it was taken."""
    made = Image.new(mode, size, "white" if mode == "RGB" else (255, 255, 255, 0))
    made.paste(colour, (0, 0, size[0] // 2, size[1]))
    exif = Image.Exif()
    exif.get_ifd(GPS).update({1: "N", 2: (51.0, 28.0, 40.12)})
    exif[0x010F] = "A maker of cameras"
    if orientation:
        exif[ORIENTATION] = orientation
    written = io.BytesIO()
    made.save(written, kind, exif=exif, **more)
    return written.getvalue()


def read(found):
    data, width, height = found
    image = Image.open(io.BytesIO(data))
    assert (image.format, image.size, image.mode) == ("JPEG", (width, height), "RGB")
    return image


def is_red(image, x, y):
    red, green, _ = image.getpixel((x, y))
    return red > 200 and green < 60


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_where_it_was_taken_is_not_kept(kind):
    given = picture(kind=kind)
    assert Image.open(io.BytesIO(given)).getexif().get_ifd(GPS)
    found = fit(given)
    assert len(read(found).getexif()) == 0
    for trace in (b"Exif", b"A maker of cameras", b"http://ns.adobe.com"):
        assert trace not in found[0]


# EXIF 2.32, tag 0x0112: 3 is upside down, 6 wants a quarter turn to the right, 8 one to the left.
@pytest.mark.parametrize(
    ("orientation", "size", "red"),
    [(None, (60, 40), (10, 20)), (3, (60, 40), (50, 20)), (6, (40, 60), (20, 10)), (8, (40, 60), (20, 50))],
)
def test_it_stands_upright(orientation, size, red):
    image = read(fit(picture(orientation=orientation)))
    assert image.size == size
    assert is_red(image, *red)
    assert not is_red(image, size[0] - 1 - red[0], size[1] - 1 - red[1])


def test_a_large_one_is_scaled_and_a_small_one_is_not():
    assert read(fit(picture((4000, 3000)))).size == (LONGEST, LONGEST * 3 // 4)
    assert read(fit(picture((60, 40)))).size == (60, 40)


def test_what_can_be_seen_through_lies_on_linen():
    image = read(fit(picture(kind="PNG", mode="RGBA", colour=(255, 0, 0, 255))))
    assert is_red(image, 10, 20)
    assert all(abs(a - b) < 6 for a, b in zip(image.getpixel((50, 20)), (243, 238, 227), strict=True))


# PNG, third edition, 11.2.1: a greyscale picture may have 16 bits a pixel, as scanners write it.
@pytest.mark.parametrize("size", [(60, 40), (2000, 1000)])
@pytest.mark.parametrize(("value", "grey"), [(0, 0), (300, 1), (20_000, 78), (40_000, 156), (65_535, 255)])
def test_grey_of_sixteen_bits_is_kept_as_bright_as_it_was(size, value, grey):
    written = io.BytesIO()
    Image.new("I;16", size, value).save(written, "PNG")
    assert struct.unpack(">2I2B", written.getvalue()[16:26]) == (*size, 16, 0)
    assert all(abs(one - grey) <= 2 for one in read(fit(written.getvalue())).getpixel((10, 10)))


def test_sixteen_megapixels_are_taken_and_more_are_not():
    assert fit(picture((4000, 4000), quality=1))[1:] == (LONGEST, LONGEST)
    with pytest.raises(BadPicture, match="17 megapixels, and 16"):
        fit(picture((4250, 4000), quality=1))


def test_one_pixel_row_too_many_is_not_said_to_be_what_can_be_taken():
    with pytest.raises(BadPicture, match=r"has 16\.1 megapixels, and 16 can be taken at most"):
        fit(picture((4000, 4001), quality=1))


def blank_png(width, height):
    """Write the head of a picture as large as that, which nobody need paint to know its size."""

    def chunk(kind, data):
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    head = chunk(b"IHDR", struct.pack(">2I5B", width, height, 8, 2, 0, 0, 0))
    return b"\x89PNG\r\n\x1a\n" + head + chunk(b"IDAT", zlib.compress(b"\0")) + chunk(b"IEND", b"")


@pytest.mark.filterwarnings("ignore::PIL.Image.DecompressionBombWarning")
@pytest.mark.parametrize("size", [(10_000, 10_000), (20_000, 10_000), (65_000, 65_000)])
def test_however_large_it_is_the_megapixels_are_named(size):
    with pytest.raises(BadPicture, match=r"megapixels.+can be taken.+Choose a smaller size in the camera"):
        fit(blank_png(*size))


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"\xff\xd8\xff",
        b"<svg xmlns='http://www.w3.org/2000/svg'/>",
        picture(kind="GIF"),
        picture()[:300],
        b"%PDF-1.7",
    ],
)
def test_what_is_no_picture_is_answered_by_a_sentence(data):
    with pytest.raises(BadPicture, match=r"[A-Z].+\."):
        fit(data)
