"""Any drawing of a chapter as plain marks in a box: SVG on a page, shapes in the report."""

from inspector.conversion.core.drawing import Bars, Drawing, Graph, Polar, Timeline
from inspector.report.drawn.bar_geometry import bars
from inspector.report.drawn.drawing_units import in_system
from inspector.report.drawn.graph_geometry import graph
from inspector.report.drawn.picture import Picture
from inspector.report.drawn.polar_geometry import polar
from inspector.report.drawn.timeline_geometry import timeline
from inspector.values.cell_text import cell_text


def draw(drawing: Drawing, width: float = 460.0, system: str = "si") -> Picture:
    """Return any drawing of a chapter as marks.

    Parameters
    ----------
    drawing : Drawing
    width : float
        Points.
    system : str
        "si" or "us": the units of its values.

    Returns
    -------
    Picture
    """
    makers = {Bars: bars, Graph: graph, Polar: polar, Timeline: timeline}
    height, marks = makers[type(drawing)](in_system(drawing, system), width)
    described = cell_text(drawing.described, system)
    return Picture(width, height, tuple(marks), drawing.title, described)
