import json

from webapp.places import SHARED
from webapp.statics import digest

VECTORS = json.loads((SHARED / "vectors" / "place.json").read_text())
SCENES = """async ([module, cases]) => {
  const { scene } = await import(module);
  return cases.map(({ plan, place, stitches, bare, start }) => scene(plan, place, stitches, bare, start));
}"""


def test_the_phone_finds_the_same_places_as_the_house(page, server):
    page.goto(server.url + "/health")
    module = f"{server.url}/static/{digest()}/js/stitching/place.js"
    shown = page.evaluate(SCENES, [module, [case["given"] for case in VECTORS]])
    assert shown == [case["expect"] for case in VECTORS]
