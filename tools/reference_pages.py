"""Reference pages that follow from tables and registries: measures, blocks, pattern steps, checks."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from measure_page import figure_pictures, measure_page
from notchbook.body import measure_entry
from notchbook.checks import Check, all_checks
from notchbook.errors import as_read, entry
from notchbook.recipe import StepDefinition, all_definitions
from step_pictures import picture_row, step_pictures

STEP_WORDS = {
    "shaping": "shapes the pieces",
    "derived": "makes pieces that follow from finished shapes",
    "whole": "runs on the whole garment",
}


def reference_pages(head: str) -> dict[str, str]:
    """Path under docs/ -> text."""
    steps = all_definitions()
    return {
        "reference/blocks.md": steps_page(head, "Blocks", (step for step in steps if step.kind == "block")),
        "reference/steps.md": steps_page(
            head, "Pattern steps", (step for step in steps if step.kind != "block")
        ),
        "reference/checks.md": checks_page(head, all_checks()),
        "reference/measures.md": measure_page(head),
        **figure_pictures(),
        **step_pictures(),
    }


def steps_page(head: str, title: str, steps: Iterable[StepDefinition[Any]]) -> str:
    """Each step with its meaning, its measures and what can be set."""
    lines = [head, f"# {title}"]
    for step in sorted(steps, key=lambda step: step.operation):
        schema = step.parameters.model_json_schema()
        lines += [
            "",
            f"## {step.operation}",
            "",
            f"{step.title} (version {step.version}): {STEP_WORDS[step.phase]}.",
        ]
        lines += ["", " ".join((step.parameters.__doc__ or "").split()).replace("``", "`")]
        lines += _picture(step.operation)
        lines += _measures(step)
        lines += ["", "| to set | what it is | kind | when not set |", "|---|---|---|---|"]
        lines += [_field(name, field) for name, field in schema["properties"].items()]
        lines += [*_eases(step), *_refusals(step)]
    return "\n".join(lines) + "\n"


def _picture(operation: str) -> list[str]:
    """The step before and after, where the table of pictures has it."""
    row = picture_row(operation)
    return [] if row is None else ["", f"![{row['title']}](steps/{operation}.svg)", "", f"{row['title']}."]


def _measures(step: StepDefinition[Any]) -> list[str]:
    if not step.needs.needed:
        return []
    table = [f"| `{key}` | {measure_entry(key).label} | {word} |" for key, word in step.needs.standings]
    return [*_with(step), "", "| measure | | |", "|---|---|---|", *table]


def _with(step: StepDefinition[Any]) -> list[str]:
    return ["", f"Drafted with: {', '.join(step.drafted_with)}."] if step.drafted_with else []


def _eases(step: StepDefinition[Any]) -> list[str]:
    """The ease table of a block, mm, with where each figure comes from."""
    rows = () if step.eases is None else step.eases()
    if not rows:
        return []
    lines = ["", "| ease | for | drafted, mm | usual, mm | source | grade |", "|---|---|---|---|---|---|"]
    for row in rows:
        sign = "" if row.unit == "mm" else " %"
        usual = "" if row.least is None or row.most is None else f"{row.least:g} to {row.most:g}{sign}"
        whose = " ".join(word.replace("_", " ") for word in (row.silhouette, row.wearer) if word)
        lines.append(
            f"| `{row.parameter}` | {whose} | {row.drafted:g}{sign} | {usual} | {row.source} | {row.grade} |"
        )
    return lines


def _refusals(step: StepDefinition[Any]) -> list[str]:
    """What a block refuses, each with its help page."""
    said = [f"- [{as_read(entry(code).message)}](../messages/{code}.md)" for code in step.refuses]
    return ["", "Refused:", "", *said] if said else []


def _field(name: str, field: Mapping[str, Any]) -> str:
    kind = field.get("kind") or field.get("type") or ""
    if "enum" in field:
        kind = ", ".join(str(choice) for choice in field["enum"])
    if "items" in field:
        kind = f"list of {field['items'].get('kind', 'places')}"
    default = field.get("default")
    said = field.get("description", "")
    return f"| `{name}` | {said} | {kind} | {'' if default in (None, '') else f'`{default}`'} |"


def checks_page(head: str, checks: Iterable[Check]) -> str:
    """Each check with its reason, its findings and what to do."""
    lines = [head, "# Checks", "", "STOP: cloth would be spoiled, papers are refused. look: it may be meant."]
    for check in checks:
        grade = "STOP" if check.severity.value == "stop" else check.severity.value
        lines += ["", f"## {check.id}", "", f"**{check.title}** ({grade})", "", check.rationale, ""]
        lines += [f"- `{code}`: {words}" for code, words in check.messages.items()]
        lines += ["", f"What to do: {check.suggestion}"]
    return "\n".join(lines) + "\n"
