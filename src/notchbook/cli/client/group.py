"""The verbs of `notchbook client`."""

from collections.abc import Callable

from notchbook.cli.client.code import code
from notchbook.cli.client.erase import erase
from notchbook.cli.client.export import export
from notchbook.cli.verb_group import verb_group

CLIENT_VERBS: dict[str, Callable[..., None]] = {
    "code": code,
    "export": export,
    "erase": erase,
}

client_app = verb_group(
    "Personal data: keep a client under a code, hand her data out, erase her.", CLIENT_VERBS
)
