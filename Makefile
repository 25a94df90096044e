# Thin names for the tasks of tools/tasks.py, which also runs where there is no make.
PYTHON ?= python3

.PHONY: setup demo test lint open bench survey docs lock clean
setup demo test lint open bench survey docs lock clean:
	@$(PYTHON) tools/tasks.py $@ $(ARGS)
