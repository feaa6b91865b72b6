# Set-up and work, each by one command. Everything goes into .venv and build/ of this folder.

VENV := .venv
PYTHON := $(VENV)/bin/python
BUILD_NEEDS := "scikit-build-core>=1.1" "pybind11>=3.1,<4" "cmeel-boost>=1.90" "cmake>=3.25" ninja
export CMAKE_PREFIX_PATH := $(shell ls -d "$(CURDIR)/$(VENV)"/lib/python3*/site-packages 2>/dev/null | head -1)
SAY := @printf '\n== %s\n'

.PHONY: help demo docs test bench bench-rows lint format core-tests asan-tests package clean

help:
	@echo "make demo    the main job, end to end, on the demo's recipe and prices"
	@echo "make test    every check: core under sanitizers, Python, docs, lint, types"
	@echo "make docs    the documentation as a site, in build/docs/site"
	@echo "make bench   speed against peers, as ratios"
	@echo "make format  put the sources into shape"
	@echo "make clean   take away .venv, build and out"

demo: package
	$(SAY) "Running the demo"
	$(PYTHON) -m pip install --quiet "matplotlib>=3.8"
	@mkdir -p out
	$(PYTHON) -m scalepan.demo out/cost_curve.png
	$(SAY) "Your own dish: source $(VENV)/bin/activate, then scalepan new night_kitchen"

test: package
	@tools/system_packages.sh catch2 libgmp-dev
	@tools/system_packages.sh chromium || echo "The tests in a browser are skipped"
	@tools/system_packages.sh zsh fish || echo "Completion is tried in bash alone"
	@tools/fetch_usda_release.sh
	$(PYTHON) -m pip install --quiet --group test --group lint --group plot --group docs
	$(MAKE) --no-print-directory asan-tests
	$(SAY) "Python tests"
	$(PYTHON) -m pytest -q -n auto --dist loadfile
	$(MAKE) --no-print-directory lint

docs: package
	$(PYTHON) -m pip install --quiet --group docs --group plot "anywidget>=0.9"
	$(SAY) "Building the documentation"
	$(PYTHON) tools/build_docs.py
	@echo "build/docs/site/index.html"

bench: package
	@tools/system_packages.sh libbenchmark-dev libflint-dev libglpk-dev libgmp-dev
	@tools/fetch_usda_release.sh
	$(PYTHON) -m pip install --quiet --group bench
	@npm ci --prefix tests/bench --silent --no-audit --no-fund || \
		echo "alien-signals could not be installed by npm: its rows are left out"
	$(MAKE) --no-print-directory bench-rows

bench-rows: $(VENV)/.tools
	$(SAY) "Building the benchmarks"
	$(VENV)/bin/cmake --preset bench
	$(VENV)/bin/cmake --build --preset bench
	$(PYTHON) tests/bench/report.py build/bench/tests/bench/rational_bench \
		build/bench/tests/bench/cover_bench build/bench/tests/bench/column_bench \
		build/bench/tests/bench/sheet_bench

core-tests: $(VENV)/.tools
	$(SAY) "Core: build and tests, without Python"
	$(VENV)/bin/cmake --preset dev
	$(VENV)/bin/cmake --build --preset dev
	$(VENV)/bin/ctest --preset dev --parallel 2

asan-tests: $(VENV)/.tools
	$(SAY) "Core under the address and undefined-behaviour sanitizers"
	$(VENV)/bin/cmake --preset asan
	$(VENV)/bin/cmake --build --preset asan
	$(VENV)/bin/ctest --preset asan --parallel 2

lint: $(VENV)/.tools
	$(SAY) "Lint and types"
	$(VENV)/bin/ruff check .
	$(VENV)/bin/ruff format --check .
	$(VENV)/bin/mypy
	$(VENV)/bin/pyright --pythonpath $(PYTHON)
	$(VENV)/bin/stubtest scalepan._core --mypy-config-file pyproject.toml \
		--allowlist tests/typing/not_in_stub.txt --ignore-unused-allowlist
	git ls-files 'cpp/*.hpp' 'cpp/*.cpp' 'tests/*.hpp' 'tests/*.cpp' | xargs $(VENV)/bin/clang-format --dry-run -Werror

format: $(VENV)/.tools
	$(PYTHON) -m pip install --quiet --group lint
	$(VENV)/bin/ruff check --fix .
	$(VENV)/bin/ruff format .
	git ls-files 'cpp/*.hpp' 'cpp/*.cpp' 'tests/*.hpp' 'tests/*.cpp' | xargs $(VENV)/bin/clang-format -i

package: $(VENV)/.tools
	$(SAY) "Building and installing the package: 8 to 9 minutes of processor time on slow cores"
	@rm -rf dist
	$(PYTHON) tools/lay_out_sdist.py
	$(PYTHON) tools/build_progress.py $(PYTHON) -m pip wheel --verbose --no-build-isolation --no-deps --wheel-dir dist build/sdist
	$(PYTHON) -m pip install --quiet --no-deps --no-index --force-reinstall dist/*.whl

$(VENV)/.tools:
	$(SAY) "Making the virtual environment $(VENV) with the build tools"
	python3 -m venv $(VENV)
	$(PYTHON) -m pip install --quiet --upgrade "pip>=25.1"
	$(PYTHON) -m pip install --quiet $(BUILD_NEEDS)
	@touch $@

clean:
	rm -rf $(VENV) build out dist
