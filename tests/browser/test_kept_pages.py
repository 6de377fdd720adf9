"""What a phone keeps is the handbook as it was published, whatever the server answers later."""

import shutil
import threading
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial
from http.server import SimpleHTTPRequestHandler
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

import demo
from once import once
from phones import QuietServer, until, until_kept
from strength_handbook.publish.offline import worker_text
from tiny import write_tiny

pytestmark = pytest.mark.browser

KEPT = "Kept on this phone"
PAGE = "spring/week-01/a-squat/"
SIGN_IN = "<!doctype html><title>Who are you?</title><h1>Sign in</h1><form></form>"


@dataclass
class Server:
    """A server whose answers can be spoilt."""

    folder: Path
    port: int = 0
    spoil: Callable[[SimpleHTTPRequestHandler], bool] = field(default=lambda _: False)
    stop: threading.Event = field(default_factory=threading.Event)

    def url(self, path: str = "") -> str:
        return f"http://localhost:{self.port}/{path}"


class _Handler(SimpleHTTPRequestHandler):
    def __init__(self, server: Server, *words: object) -> None:
        self.own = server
        super().__init__(*words, directory=str(server.folder))  # type: ignore[arg-type]

    def do_GET(self) -> None:
        # Files here change twice within a second, which is as fine as this header can tell.
        del self.headers["If-Modified-Since"]
        if not self.own.spoil(self):
            super().do_GET()

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002  # the base's name
        pass


def sign_in(handler: SimpleHTTPRequestHandler) -> bool:
    """A page with status 200 in place of every file."""
    handler.send_response(200)
    handler.send_header("Content-Type", "text/html")
    handler.end_headers()
    handler.wfile.write(SIGN_IN.encode())
    return True


def redirect(handler: SimpleHTTPRequestHandler) -> bool:
    """To a page for signing in, which is there."""
    if handler.path.startswith("/sign-in"):
        return sign_in(handler)
    handler.send_response(302)
    handler.send_header("Location", "/sign-in")
    handler.end_headers()
    return True


def error(status: int, handler: SimpleHTTPRequestHandler) -> bool:
    """The server or what stands before it is broken."""
    handler.send_error(status)
    return True


def silent(server: Server, _handler: SimpleHTTPRequestHandler) -> bool:
    """Takes the question and never answers."""
    server.stop.wait()
    return True


@pytest.fixture(scope="session")
def tiny_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    def make(root: Path) -> None:
        demo.build_site(write_tiny(root), root / "site")

    return once(tmp_path_factory, "tiny", make) / "site"


@pytest.fixture
def server(tiny_site: Path, tmp_path: Path) -> Iterator[Server]:
    own = Server(Path(shutil.copytree(tiny_site, tmp_path / "site")))
    with QuietServer(("127.0.0.1", 0), partial(_Handler, own)) as http:
        http.daemon_threads = True
        own.port = http.server_port
        threading.Thread(target=http.serve_forever, daemon=True).start()
        yield own
        own.stop.set()
        http.shutdown()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    yield context.new_page()
    context.close()


def visit(page: Page, url: str) -> None:
    page.goto(url)
    expect(page.locator("#sh-kept")).to_contain_text(KEPT)
    page.wait_for_function("navigator.serviceWorker.controller !== null")


def heading(page: Page, text: str) -> None:
    expect(page.get_by_role("heading", level=1)).to_contain_text(text)


@pytest.mark.parametrize(
    "spoil",
    [sign_in, redirect, partial(error, 500), partial(error, 502), partial(error, 404)],
    ids=["sign-in with 200", "redirect", "500", "502", "404"],
)
def test_another_answer_shows_the_kept_page_with_its_age_and_is_never_kept(
    server: Server, page: Page, spoil: Callable[[SimpleHTTPRequestHandler], bool]
) -> None:
    visit(page, server.url())
    page.goto(server.url(PAGE))
    expect(page.locator(".sh-kept-copy")).to_have_count(0)
    server.spoil = spoil
    for address, text in {PAGE: "Week 1", "": "The Shed", "room/": "The room"}.items():
        page.goto(server.url(address))
        heading(page, text)
        note = page.locator(".sh-kept-copy")
        expect(note).to_contain_text("Kept copy, the newest as of today.")
        expect(note).to_contain_text("does not give this page now")
    server.spoil = lambda _: False
    page.goto(server.url(PAGE))
    heading(page, "Week 1")
    expect(page.locator(".sh-kept-copy")).to_have_count(0)


def test_who_has_to_sign_in_can_still_ask_the_server(server: Server, page: Page) -> None:
    visit(page, server.url())
    server.spoil = sign_in
    page.goto(server.url(PAGE))
    page.get_by_role("link", name="Ask the server").click()
    heading(page, "Sign in")


def test_a_server_that_never_answers_shows_kept_pages_and_waits_only_once(
    server: Server, page: Page
) -> None:
    visit(page, server.url())
    server.spoil = partial(silent, server)
    page.goto(server.url(PAGE))
    heading(page, "Week 1")
    expect(page.locator(".sh-kept-copy")).to_contain_text("gives no answer")
    # The scripts of the page came too, without a wait of their own.
    page.wait_for_function("document.documentElement.classList.contains('js')")
    page.goto(server.url("room/"))
    heading(page, "The room")


def test_a_first_visit_that_gets_other_pages_keeps_nothing_and_does_not_say_so(
    server: Server, page: Page
) -> None:
    def half(handler: SimpleHTTPRequestHandler) -> bool:
        return handler.path.startswith("/exercises/") and sign_in(handler)

    server.spoil = half
    page.goto(server.url())
    expect(page.locator("#sh-kept")).to_contain_text("Not kept on this phone")
    server.spoil = lambda _: False
    visit(page, server.url())
    server.spoil = sign_in
    page.goto(server.url("exercises/chair-squat/"))
    heading(page, "Chair squat")


def test_a_worker_that_comes_before_its_pages_does_not_keep_old_ones(
    server: Server, page: Page
) -> None:
    visit(page, server.url())
    room = server.folder / "room/index.html"
    old = room.read_text()
    room.write_text(old.replace("The room", "The new room"))
    worker = worker_text(server.folder)
    room.write_text(old)
    (server.folder / "sw.js").write_text(worker)
    page.goto(server.url())
    page.evaluate("navigator.serviceWorker.getRegistration().then(one => one.update())")
    until(
        page,
        "() => navigator.serviceWorker.getRegistration().then(one => !one.installing)",
    )
    room.write_text(old.replace("The room", "The new room"))
    version = worker.split('VERSION = "')[1].split('"')[0]
    # Asked again and again, as by every visit: while a worker installs, another update is none.
    until(
        page,
        """version => navigator.serviceWorker.getRegistration().then(one => one.update())
            .then(() => caches.keys())
            .then(all => all.length === 1 && all[0].endsWith(version))""",
        version,
    )
    server.spoil = partial(error, 500)
    page.goto(server.url("room/"))
    heading(page, "The new room")


def test_a_full_store_never_hinders_the_newest_page(server: Server, page: Page) -> None:
    worker = server.folder / "sw.js"
    full = (
        "const put = Cache.prototype.put; let full = false;\n"
        "self.addEventListener('message', () => { full = true; });\n"
        "Cache.prototype.put = function (...words) { return full\n"
        "  ? Promise.reject(new DOMException('full', 'QuotaExceededError'))\n"
        "  : put.apply(this, words); };\n"
    )
    worker.write_text(full + worker.read_text())
    visit(page, server.url())
    page.evaluate("navigator.serviceWorker.controller.postMessage('full')")
    session = server.folder / PAGE / "index.html"
    session.write_text(session.read_text().replace("Week 1", "Newest week 1"))
    page.goto(server.url(PAGE))
    heading(page, "Newest week 1")
    page.goto(server.url("room/"))
    heading(page, "The room")


def test_nested_handbooks_keep_apart(server: Server, page: Page) -> None:
    inner = Path(shutil.copytree(server.folder, server.folder / "b"))
    for path in inner.rglob("index.html"):
        path.write_text(path.read_text().replace("The Shed", "The Barn"))
    (inner / "sw.js").write_text(worker_text(inner))
    visit(page, server.url())
    page.goto(server.url("b/spring/"))  # seen through the outer one's eyes first
    visit(page, server.url("b/"))
    for path in inner.rglob("index.html"):
        path.write_text(path.read_text().replace("The Barn", "The Mill"))
    (inner / "sw.js").write_text(worker_text(inner))
    visit(page, server.url("b/"))
    version = worker_text(inner).split('VERSION = "')[1].split('"')[0]
    until_kept(page, version, 2)
    server.spoil = partial(error, 500)
    for address, name in {"b/spring/": "The Mill", "spring/": "The Shed"}.items():
        page.goto(server.url(address))
        expect(page).to_have_title(f"Spring - {name}")
        expect(page.locator(".sh-kept-copy")).to_have_count(1)
