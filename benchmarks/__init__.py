"""How fast Recoat is: `python -m benchmarks [names]` (or `make bench`). Ratios within one run, as clocks differ."""
