"""Where the four folders beside the code are: in the checkout, or inside an installed wheel."""

from pathlib import Path

_INSTALLED = Path(__file__).parent / "_data"
ROOT = _INSTALLED if _INSTALLED.is_dir() else Path(__file__).parent.parent
STATIC = ROOT / "static"
TEMPLATES = ROOT / "templates"
SHARED = ROOT / "shared"
