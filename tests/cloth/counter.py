"""What the journeys at the shop counter share."""

SHIFTS = """
  window.shifted = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (!entry.hadRecentInput) window.shifted += entry.value;
  }).observe({ type: "layout-shift", buffered: true });
"""


def first(page, name):
    return page.locator(f'[name="{name}"]').first


def slot(page, name):
    return page.locator(f'[data-slot="{name}"]')
