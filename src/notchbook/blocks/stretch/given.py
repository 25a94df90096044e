"""What the stretch blocks are drafted from: one side of the body, reductions and eases already taken, mm.

Every girth is the length that the finished pattern has round the whole body at that place, every length
what the pattern has there: the measure times (1 - reduction), or with its ease where the garment is loose.
"""

from dataclasses import dataclass

from notchbook.blocks.stretch.figures import figure


@dataclass(frozen=True, slots=True)
class StrapGiven:
    """A shoulder cut down to a strap: its ``width`` on the pattern and how far its middle lies from the
    side-neck point of the neck base along the shoulder seam, mm (``place`` None: the middle of the seam).
    ``may_move`` says whether it may be drafted farther out where the armhole of a wide bust asks for it."""

    width: float
    place: float | None = None
    may_move: bool = False


@dataclass(frozen=True, slots=True)
class StretchSleeveGiven:
    """A sleeve without cap ease. ``biceps`` and ``hem`` are girths, ``length`` runs from the end of the
    shoulder as given to the hem along the middle; a shoulder that is drafted longer or shorter takes it from
    the sleeve or adds it."""

    biceps: float
    hem: float
    length: float


@dataclass(frozen=True, slots=True)
class TorsoGiven:
    """One side of a stretch torso without darts; front and back have the same side seam.

    ``bust`` may be drafted otherwise within ``bust_limits``, where the across back leaves the arm too little
    room under it or a pouch (None: as given).
    ``is_close``: it lies on the body, its shoulder on the shoulder.
    ``waist`` None: the side runs from bust to hip as it falls; up to ``loosest_waist`` it may be drafted
    wider where the side seam would lean too much (None: as given). ``neck`` is the length of the whole neck
    seam at the neck base; ``neck_wider`` opens it along the shoulder seam, ``front_neck_lower`` and
    ``back_neck_lower`` lower it at the center. ``front_neck_depth`` is the depth of the base neck in front
    below the side-neck point (None: its width and a little). ``shoulder`` is the shoulder seam from the
    neck base to the shoulder point; it is drafted shorter where the narrowed bust asks for it.
    ``shoulder_slope`` in degrees below the horizontal is that of the body, of which the front has a little
    more and the back a little less. ``across_back`` and
    ``across_chest`` (None: a little narrower) are whole widths. ``armhole_depth`` and ``back_length`` run
    from the nape to the underarm level and to the waist, ``hip_depth`` from waist to hip, ``length`` from
    the waist to the hem (0: to the waist). ``strap`` or ``shoulder_in`` (how far the armhole is cut in at
    the shoulder) are for a garment without sleeves.

    ``front_length`` runs from the side-neck point over the bust to the waist (None: not measured), of which
    the cloth may give ``front_gives``; ``front_longer`` is by how much the front is to be longer than the
    back (None: by what is missing, as far as the side seam eases it in, and its center lower by the rest);
    with it ``front_lower`` says by how much its center ends lower still.
    """

    bust: float
    waist: float | None
    hip: float
    neck: float
    shoulder: float
    shoulder_slope: float
    across_back: float
    armhole_depth: float
    back_length: float
    hip_depth: float
    length: float
    across_chest: float | None = None
    is_close: bool = False
    bust_limits: tuple[float, float] | None = None
    loosest_waist: float | None = None
    front_neck_depth: float | None = None
    neck_wider: float = 0.0
    front_neck_lower: float = 0.0
    back_neck_lower: float = 0.0
    shoulder_in: float = 0.0
    strap: StrapGiven | None = None
    sleeve: StretchSleeveGiven | None = None
    front_length: float | None = None
    front_gives: float = 0.0
    front_longer: float | None = None
    front_lower: float = 0.0

    @property
    def front_slope(self) -> float:
        """The slope of the front shoulder, degrees: the seam lies a little before the top of the shoulder, so
        that the front armhole, scooped deeper, is no longer than the back's."""
        return self.shoulder_slope + figure("shoulder.seam_forward")

    @property
    def back_slope(self) -> float:
        """The same behind."""
        return self.shoulder_slope - figure("shoulder.seam_forward")

    @property
    def is_cut_in(self) -> bool:
        """Whether the armhole is cut in at the shoulder."""
        return self.strap is not None or self.shoulder_in > 0.0

    @property
    def strap_edges(self) -> tuple[float, float] | None:
        """Where the strap's edges lie on the shoulder seam, from the side-neck point of the base, mm."""
        if self.strap is None:
            return None
        middle = self.strap.place if self.strap.place is not None else self.shoulder / 2.0
        return middle - self.strap.width / 2.0, middle + self.strap.width / 2.0

    @property
    def neck_opened(self) -> float:
        """How far the neck is opened along the shoulder seam, mm: at a strap up to its inner edge."""
        edges = self.strap_edges
        return self.neck_wider if edges is None else edges[0]


@dataclass(frozen=True, slots=True)
class BodysuitGiven:
    """One side of a bodysuit: a torso (its ``length`` is not read) with a crotch.

    ``crotch_front`` and ``crotch_back`` run along the centers from the waist line to the crotch join;
    ``crotch_width`` is the whole width of the join, the same in front and behind. One of the two is given:
    ``leg_opening``, the length of the whole opening (front and back), or ``leg_height``, how far the
    opening's highest point at the side seam lies below the waist line. ``has_front_room``: the front keeps
    its width between the legs, as a man needs it; ``crotch_front`` holds the length that goes with it.
    """

    torso: TorsoGiven
    crotch_front: float
    crotch_back: float
    crotch_width: float = 70.0
    leg_opening: float | None = None
    leg_height: float | None = None
    has_front_room: bool = False


@dataclass(frozen=True, slots=True)
class LeggingsGiven:
    """One leg. ``waist`` and ``hip`` are whole girths, ``thigh`` (at the crotch), ``knee``, ``calf`` and
    ``ankle`` (the hem, wherever it lies) those of one leg.

    ``crotch_front`` and ``crotch_back`` run along the seams from the waist edge to the inseam. ``rise`` is
    the height of the waist edge at the side over the crotch level, ``hip_depth`` that of the waist over
    the hip line there. The depths of knee, calf and hem lie below the crotch level. With ``side_seam`` the
    side takes in its share of what the waist is smaller than the hip; without, it is one straight line and
    front and back are one piece. ``has_front_room``: the front has a wider extension, as a man needs it.

    For an inseam without humps thigh and calf may be drafted narrower, down to ``thigh_least`` and
    ``calf_least`` (None: as given), and the knee a little wider where ``knee_may_widen``.
    """

    waist: float
    hip: float
    thigh: float
    knee: float
    calf: float | None
    ankle: float
    crotch_front: float
    crotch_back: float
    rise: float
    hip_depth: float
    knee_down: float
    calf_down: float | None
    hem_down: float
    side_seam: bool = False
    has_front_room: bool = False
    thigh_least: float | None = None
    calf_least: float | None = None
    knee_may_widen: bool = False
