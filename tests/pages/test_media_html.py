"""Photos and films on an exercise's page, and the files that a site has of them."""

import re
from pathlib import Path

import pytest
from PIL import Image

import camera
import demo
from strength_handbook.checked import check_folder
from strength_handbook.pages.page import Site
from strength_handbook.pages.site import write_pages
from strength_handbook.pictures.photo import MOST, small_photo
from strength_handbook.publish.export import export
from strength_handbook.publish.offline import worker_text
from tiny import write_tiny

MEDIA = """
media:
  - {photo: Step Down.JPG, shows: One heel over the edge & toes up., people: agreed}
  - {photo: end.png, shows: Standing on the floor again., people: agreed, offline: true}
  - {film: step.mp4, shows: Two slow repetitions., people: nobody}
set-up:"""


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """The smallest handbook with two photos and a film."""
    write_tiny(tmp_path)
    demo.change(tmp_path / "programs/exercises/chair-squat.yml", "\nset-up:", MEDIA)
    camera.photo(tmp_path / "programs/media/Step Down.JPG", (1200, 1600), turned=6)
    camera.photo(tmp_path / "programs/media/end.png", (700, 500), form="PNG")
    camera.film(tmp_path / "programs/media/step.mp4")
    return tmp_path


def site_of(root: Path) -> Site:
    worked = check_folder(root / "programs").worked
    assert worked is not None
    return write_pages(worked)


def page_of(site: Site) -> str:
    return next(page.html for page in site.pages if page.uri == "exercises/chair-squat.md")


def test_the_page_has_photos_before_the_film_it_fetches_when_asked(root: Path) -> None:
    site = site_of(root)
    html = page_of(site)
    assert html.index("sh-photo") < html.index("sh-poses")
    first, second = re.findall(r"<img [^>]*>", html)
    assert 'width="960" height="1280"' in first  # upright
    assert 'alt="One heel over the edge &amp; toes up."' in first
    assert re.search(r'srcset="[^"]*-480\.webp 480w, [^"]*-960\.webp 960w"', first)
    assert "loading" not in first
    assert 'width="700" height="500"' in second
    assert "loading=lazy" in second
    (film,) = re.findall(r"<video .*?</video>", html)
    assert 'preload="none"' in film
    assert re.search(r'poster="[^"]*step-down-[0-9a-f]{10}-480\.webp"', film)
    assert "<figcaption>Film, 0.4 MB: Two slow repetitions.</figcaption>" in html
    addresses = {re.sub(r"^(\.\./)+", "", one) for one in re.findall(
        r'(?:src|poster)="([^"]+)"|([^\s",]+\.webp) \d+w', html) for one in one if one}  # fmt: skip
    assert addresses == set(site.files)


def test_a_photo_of_the_site_is_small_upright_and_says_nothing_else(root: Path) -> None:
    for address, make in site_of(root).files.items():
        content = make()
        assert camera.PLACE.encode() not in content
        if address.endswith(".webp"):
            image = camera.opened(content)
            assert image.format == "WEBP"
            assert not image.getexif()
            assert "icc_profile" not in image.info
            assert len(content) <= MOST
            # It is dark at the left where it is held upright.
            dark, light = image.getpixel((5, 5)), image.getpixel((image.width - 5, 5))
            assert isinstance(dark, tuple)
            assert isinstance(light, tuple)
            assert sum(dark) < 200 < 700 < sum(light)


def test_another_photo_has_another_address(root: Path) -> None:
    before = set(site_of(root).files)
    camera.photo(root / "programs/media/end.png", (640, 480), form="PNG")
    after = set(site_of(root).files)
    assert {one.split("/")[-1].split("-")[0] for one in before ^ after} == {"end"}


def test_a_busy_photo_is_made_coarser(tmp_path: Path) -> None:
    noise = Image.effect_noise((2000, 1500), 90).convert("RGB")
    noise.save(tmp_path / "noise.jpg", quality=95)
    assert len(small_photo(tmp_path / "noise.jpg", "a", 960)) < 2 * MOST


@pytest.mark.parametrize("mode", ["P", "LA", "RGBA", "CMYK", "L", "I;16"])
def test_every_kind_of_picture_becomes_one(tmp_path: Path, mode: str) -> None:
    picture = Image.new(mode, (640, 480))
    ending = "jpg" if mode == "CMYK" else "png"
    picture.save(tmp_path / f"a.{ending}")
    assert camera.opened(small_photo(tmp_path / f"a.{ending}", "a", 480)).size == (480, 360)


def test_phones_keep_only_what_is_asked_for(root: Path) -> None:
    site = demo.build_site(root, root / "site")
    there = {path.relative_to(site).as_posix() for path in (site / "media").rglob("*.*")}
    assert there == set(site_of(root).files)
    worker = worker_text(site)
    assert [one for one in sorted(there) if one in worker] == [
        one for one in sorted(there) if one.startswith("media/kept/")
    ]


def test_an_export_has_them_too(root: Path, tmp_path: Path) -> None:
    site = site_of(root)
    export(site, tmp_path / "out")
    assert {address for address in site.files if (tmp_path / "out" / address).is_file()} == set(
        site.files
    )
