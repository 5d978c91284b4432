import pytest

from tests.conftest import browser_of


def stitch(project) -> str:
    return f"/projects/{project}/stitch"


def test_it_works(alice, new_project):
    answer = alice.get(stitch(new_project(alice)))
    assert answer.status_code == 200
    assert "Harbour lanterns" in answer.text


def test_a_sign_in_is_asked_for(app, alice, new_project):
    answer = browser_of(app).get(stitch(new_project(alice)))
    assert answer.status_code == 303
    assert answer.location.startswith("/sign-in?next=")


def test_charlie_sees_nothing_of_it(alice, charlie, new_project):
    answer = charlie.get(stitch(new_project(alice)))
    assert answer.status_code == 404
    assert "Harbour" not in answer.text


NOT_THERE = ("01a211f5-35bd-7260-aba3-2504c6e2ebb4", "1", "%FF", "x" * 3000)


@pytest.mark.parametrize("address", [stitch(project) for project in NOT_THERE])
def test_what_is_not_there_is_answered_with_a_sentence(alice, address):
    answer = alice.get(address)
    assert answer.status_code == 404
    assert "There is nothing here, or it is not yours." in answer.text


def test_markup_in_a_title_stays_text(alice, new_project):
    page = alice.get(stitch(new_project(alice, title="</script><img src=x onerror=alert(1)>")))
    assert "<img" not in page.text
    assert page.text.count("</script>") == page.text.count("<script")


def test_the_shell_is_drawn_for_nobody(alice, new_project):
    project = new_project(alice)
    shell = alice.get("/shell/stitch")
    assert shell.status_code == 200
    for hers in ("Harbour", str(project), "data-account", "data-snapshot", "data-bedtime"):
        assert hers not in shell.text


def test_the_shell_is_the_same_page(client, alice, new_project):
    page, shell = alice.get(stitch(new_project(alice))), client.get("/shell/stitch")
    for handle in ("tap", "back", "undo", "done", "sitting", "frame", "step", "bare", "map", "says", "more"):
        assert f'data-act="{handle}"' in page.text
        assert f'data-act="{handle}"' in shell.text


def test_the_page_is_light(alice, new_project):
    # Of the 30 kB that the first load may weigh, 4.5 are the page's own.
    page = alice.get(stitch(new_project(alice)), headers={"Accept-Encoding": "br"})
    assert len(page.data) < 4500
