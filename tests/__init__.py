"""The tests. The folder says the cost; the name of a test is the rule that it holds."""

from hypothesis import HealthCheck, settings

# Tests run beside others: how long an example takes says nothing.
settings.register_profile(
    "beside others", deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
)
settings.load_profile("beside others")
