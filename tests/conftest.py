"""What all tests share: settings of hypothesis, and the measures of the house at the end of a run."""

import os

import pytest
from hypothesis import HealthCheck, Phase, settings
from hypothesis.internal.conjecture import providers
from hypothesis.internal.constants_ast import Constants

import measure_house

# Shared machines are slow at times: a deadline would fail tests for no fault of theirs. The same examples
# every time, so that a change is judged by itself, and the first that fails is told as it is: to make one
# of a whole draft small takes longer than all other tests. The long profile draws anew and makes it small.
settings.register_profile(
    "house",
    deadline=None,
    max_examples=60,
    derandomize=True,
    phases=[Phase.explicit, Phase.reuse, Phase.generate],
    suppress_health_check=[HealthCheck.too_slow],
)
settings.register_profile(
    "long", parent=settings.get_profile("house"), max_examples=1000, derandomize=False, phases=list(Phase)
)
PROFILE = os.environ.get("NOTCHBOOK_HYPOTHESIS", "house")
settings.load_profile(PROFILE)

if PROFILE == "house":
    # Hypothesis also tries the numbers that stand in whatever modules are loaded so far: a test then draws
    # other examples alone than after others. The long profile keeps that, for it finds more.
    assert callable(providers._get_local_constants)
    setattr(providers, "_get_local_constants", Constants)  # noqa: B010 - private: there is no setting for it


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Print the measures of the house at the end of a whole run, test lines to source lines among them.

    A run of chosen tests is over before all sources could be parsed.
    """
    if config.args_source is pytest.Config.ArgsSource.TESTPATHS:
        terminalreporter.write_line(measure_house.summary())
