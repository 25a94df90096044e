"""The real server: a free port, the demonstration, an end in good order."""

import socket
import threading
import time
from pathlib import Path

import httpx
import pytest

from notchbook.errors import OutputError
from notchbook.recipe import definition, operation_sources
from notchbook.workroom.serve import HOST, workroom_server


def test_it_serves_on_this_computer_alone_and_ends(tmp_path: Path) -> None:
    book = tmp_path / "studio.notchbook"
    with workroom_server(book) as (server, address, listening):
        assert listening.getsockname()[0] == "127.0.0.1"
        thread = threading.Thread(target=lambda: server.run(sockets=[listening]))
        thread.start()
        deadline = time.monotonic() + 20
        while not server.started and time.monotonic() < deadline:
            time.sleep(0.01)
        with httpx.Client(base_url=address.split("?")[0], trust_env=False) as client:
            assert client.get("/api/shelf").status_code == 401
            client.get(f"/?{address.split('?')[1]}")
            assert client.get("/api/shelf").json()["styles"][0]["number"] == "S-101"
        server.should_exit = True
        thread.join(20)
        assert not thread.is_alive()
    assert book.is_file()


def test_the_steps_are_loaded_before_the_page_asks_for_them(tmp_path: Path) -> None:
    definition.cache_clear()
    with workroom_server(tmp_path / "studio.notchbook"):
        deadline = time.monotonic() + 60
        while definition.cache_info().currsize < len(operation_sources()) and time.monotonic() < deadline:
            time.sleep(0.01)
        assert definition.cache_info().currsize == len(operation_sources())


def test_every_start_has_a_key_of_its_own(tmp_path: Path) -> None:
    keys = set()
    for _ in range(2):
        with workroom_server(tmp_path / "studio.notchbook") as (_, address, _listening):
            keys.add(address.rsplit("=", 1)[1])
    assert len(keys) == 2
    assert all(len(key) >= 32 for key in keys)


def test_a_taken_port_is_refused_in_words(tmp_path: Path) -> None:
    with socket.socket() as other:
        other.bind((HOST, 0))
        other.listen()
        port = other.getsockname()[1]
        with pytest.raises(OutputError) as refused, workroom_server(tmp_path / "b.notchbook", port):
            pass
    assert refused.value.code == "workroom-port"
    assert str(port) in str(refused.value)
