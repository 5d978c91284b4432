"""Put the folders beside the code into a wheel; an editable install finds them in the checkout."""

from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class Folders(BuildHookInterface):  # type: ignore[misc]
    """Include templates, static and shared under webapp/_data, in wheels only."""

    PLUGIN_NAME = "custom"

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Name what goes where."""
        if version != "editable":
            for folder in ("templates", "static", "shared"):
                build_data["force_include"][folder] = f"webapp/_data/{folder}"
