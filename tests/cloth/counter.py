"""What the journeys at the shop counter share."""

SHIFTED = """
  window.shifted = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (%s) window.shifted += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
"""
SHIFTS = SHIFTED % "!entry.hadRecentInput"
EVERY_SHIFT = SHIFTED % "true"  # those that follow a touch too
CODE_DRAWN = "document.querySelector('[data-code] img').naturalWidth > 0"


def first(page, name):
    return page.locator(f'[name="{name}"]').first


def slot(page, name):
    return page.locator(f'[data-slot="{name}"]')
