"""Padding a dress form of the book for a client."""

from typing import Annotated

from fastapi import APIRouter, Query

from notchbook.app.bodies.padding_forms import form_plans, read_layer
from notchbook.body.charts import LAYER_THICKNESS
from notchbook.workroom.answers.padding import PaddingAnswer, padding_answer
from notchbook.workroom.reader import ReaderOf
from notchbook.workroom.studio_of import StudioOf

router = APIRouter(prefix="/api/bodies/{body}")

LayerText = Annotated[str, Query(max_length=40)]


@router.get("/padding")
def read_padding(body: int, studio: StudioOf, reader: ReaderOf, layer: LayerText = "") -> PaddingAnswer:
    """A plan for every form of the book; ``layer`` is the thickness of one layer of wadding as typed."""
    thickness = read_layer(layer, reader.unit) if layer.strip() else LAYER_THICKNESS
    plans = form_plans(studio, body, thickness)
    return padding_answer(studio.open_body(body).measures.name, thickness, plans, reader)
