# `make run` opens Recoat on the example; `make test` runs every check. Both set up all they need by themselves.

EXAMPLE := examples/harbour-row.recoat
RESULTS := out

BIN := .venv/bin
NO_WINDOW := QT_QPA_PLATFORM=offscreen

# The first Python on the path that is new enough; the others are older than the code or not tried with it.
FIND_PYTHON := for python in python3 python3.13 python3.12 python3.11; do \
	  "$$python" -c 'import sys; sys.exit(not (3, 11) <= sys.version_info[:2] <= (3, 13))' 2>/dev/null && break; python=; \
	done; \
	test -n "$$python" || { echo "prepare: no Python 3.11, 3.12 or 3.13 here; on Debian run: apt-get install python3 python3-venv" >&2; exit 2; }
PREPARE = @$(FIND_PYTHON); "$$python" .ci/prepare.py

.PHONY: run results test bench pictures schemas example lock clean

run:
	$(PREPARE) run
	@if [ "$$(uname)" != Linux ] || [ -n "$$DISPLAY$$WAYLAND_DISPLAY" ]; then \
	  exec $(BIN)/recoat open $(EXAMPLE); \
	fi; \
	echo "There is no display, so the example is worked without a window."; \
	$(MAKE) --no-print-directory results

# The example's job without a window: takeoff and basket on screen, as spreadsheet, CSV and shopping list, the faces as
# DXF and PDF.
results:
	$(PREPARE) run
	@mkdir -p $(RESULTS)
	@$(BIN)/recoat takeoff $(EXAMPLE)
	@$(BIN)/recoat takeoff $(EXAMPLE) --format xlsx -o $(RESULTS)/takeoff.xlsx
	@$(BIN)/recoat takeoff $(EXAMPLE) --format csv -o $(RESULTS)/takeoff.csv
	@$(BIN)/recoat buy $(EXAMPLE)
	@$(BIN)/recoat buy $(EXAMPLE) --format html -o $(RESULTS)/shopping-list.html
	@$(BIN)/recoat draw $(EXAMPLE) -o $(RESULTS)/faces.dxf
	@$(NO_WINDOW) $(BIN)/recoat draw $(EXAMPLE) -o $(RESULTS)/faces.pdf
	@echo "The results are in $(CURDIR)/$(RESULTS):"; ls $(RESULTS)

test:
	$(PREPARE) test
	$(BIN)/ruff check
	$(BIN)/ruff format --check
	$(BIN)/mypy
	$(BIN)/lint-imports
	$(NO_WINDOW) $(BIN)/pytest --numprocesses 2

# Speed, as ratios within one run; figures mean something only on a machine that does nothing else meanwhile.
bench:
	$(PREPARE) test
	$(NO_WINDOW) $(BIN)/python -m benchmarks

# The pictures in README.md, taken from the real window.
pictures:
	$(PREPARE) test
	$(NO_WINDOW) $(BIN)/python examples/pictures.py

# The published JSON Schemas, written again after a change to the types that they describe.
SCHEMA := import json; from shared.files.job import schema; from takeoff.tables.takeoff_json import takeoff_schema
schemas:
	$(PREPARE) test
	$(BIN)/python -c "$(SCHEMA); print(json.dumps(schema(), indent=2, ensure_ascii=False))" > shared/data/job.schema.json
	$(BIN)/python -c "$(SCHEMA); print(json.dumps(takeoff_schema(), indent=2, ensure_ascii=False))" > takeoff/data/takeoff.schema.json

# The copies of the example, written again after a change to what it is made of.
example:
	$(PREPARE) test
	$(BIN)/python -m examples.make_harbour_row

# Choose the newest versions that fit pyproject.toml again, the same for every Python, with their hashes.
COMPILE := $(BIN)/uv --quiet pip compile pyproject.toml --universal --fork-strategy fewest --generate-hashes --no-header --upgrade
lock:
	$(PREPARE) test
	$(COMPILE) --group build --output-file locked/run.txt
	$(COMPILE) --group test --constraints locked/run.txt --output-file locked/test.txt

clean:
	rm -rf .venv $(RESULTS) build *.egg-info .hypothesis .import_linter_cache .mypy_cache .pytest_cache .ruff_cache
