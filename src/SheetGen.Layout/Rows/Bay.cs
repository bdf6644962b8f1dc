using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>
/// The part of a section that lies on one leg of its wall's face: rows end at both of its ends. Where a mitre cuts the leg, at each
/// elevation at another place, the face of the bay is shorter than its span of the layout line, or there is none.
/// </summary>
internal sealed class Bay
{
    private const int LevelsTried = 9;
    private const int Halvings = 40;
    private readonly double _leastRoom;

    private Bay(Face face, Section section, Leg leg, Rules rules, LengthUnit unit)
    {
        Face = face;
        Section = section;
        Leg = leg;
        Rules = rules;
        Unit = unit;
        Start = new Along(Math.Max(section.Start, leg.Start));
        End = new Along(Math.Min(section.End, leg.End));
        Wall wall = face.Wall;
        LowestBottom = wall.Bottom.Lowest(Start, End);
        HighestTop = wall.Top.Highest(Start, End);
        StartEnd = section.Start > leg.Start ? BayEnd.SectionLimit : leg.StartCorner is null ? BayEnd.WallEnd : BayEnd.Corner;
        EndEnd = section.End < leg.End ? BayEnd.SectionLimit : leg.EndCorner is null ? BayEnd.WallEnd : BayEnd.Corner;
        FaceStart = Along.Min(FaceStartAt(LowestBottom), FaceStartAt(HighestTop));
        FaceEnd = Along.Max(FaceEndAt(LowestBottom), FaceEndAt(HighestTop));
        GreatestMitreRun = Math.Max(Math.Abs(FaceStartAt(LowestBottom) - FaceStartAt(HighestTop)), Math.Abs(FaceEndAt(LowestBottom) - FaceEndAt(HighestTop)));
        _leastRoom = FindLeastRoom();
    }

    public Face Face { get; }

    public Wall Wall => Face.Wall;

    public Section Section { get; }

    public Leg Leg { get; }

    public Rules Rules { get; }

    public LengthUnit Unit { get; }

    public Along Start { get; }

    public Along End { get; }

    public Elevation LowestBottom { get; }

    public Elevation HighestTop { get; }

    public Elevation HalfHeight => Elevation.Middle(LowestBottom, HighestTop);

    public BayEnd StartEnd { get; }

    public BayEnd EndEnd { get; }

    /// <summary>Least distance along the layout line of a head from a section limit at the bay's start: half of min_gap, where both sides have room for it.</summary>
    public double StartLimitClear { get; private set; }

    /// <summary>The same at the bay's end.</summary>
    public double EndLimitClear { get; private set; }

    /// <summary>Half the width of the span that a nail covers along the wall.</summary>
    public double HalfWindow => Math.Max(Section.HorizontalSpacing, Rules.MovedGapMax ?? 0) / 2;

    /// <summary>The first place where the face has any height.</summary>
    public Along FaceStart { get; }

    /// <summary>The last place where the face has any height.</summary>
    public Along FaceEnd { get; }

    /// <summary>How far the mitre runs along the bay from its lowest to its highest elevation, at the end where it runs further; 0 without batter.</summary>
    public double GreatestMitreRun { get; }

    /// <summary>Where the face starts at an elevation: the mitre, or the bay's start.</summary>
    public Along FaceStartAt(Elevation elevation) => Along.Max(Start, Face.StartOf(Leg, elevation));

    /// <summary>Where the face ends at an elevation.</summary>
    public Along FaceEndAt(Elevation elevation) => Along.Min(End, Face.EndOf(Leg, elevation));

    /// <summary>How far the face reaches beyond the bay's start at an elevation, along itself: no station reads there.</summary>
    public double BeyondStart(Elevation elevation) =>
        StartEnd == BayEnd.Corner ? Math.Max(0, -Face.MitreCut(Leg.StartCorner!, elevation)) : 0;

    /// <summary>How far the face reaches beyond the bay's end.</summary>
    public double BeyondEnd(Elevation elevation) =>
        EndEnd == BayEnd.Corner ? Math.Max(0, -Face.MitreCut(Leg.EndCorner!, elevation)) : 0;

    /// <summary>The first place where a head may stand at an elevation: clear of the mitre, the wall's end and the section limit.</summary>
    /// <param name="least">Least distance from whatever the bay ends at, where its own rule asks for less.</param>
    public Along FirstPlace(Elevation elevation, double least = 0)
    {
        Along first = StartEnd switch
        {
            BayEnd.WallEnd => Face.PlaceAt(Start, Math.Max(least, Rules.EdgeMin), elevation),
            BayEnd.SectionLimit => Start + Math.Max(least, StartLimitClear),
            _ => Start,
        };
        return Leg.StartCorner is { } corner
            ? Along.Max(first, Face.PlaceAt(new Along(Leg.Start), Math.Max(0, Face.MitreCut(corner, elevation) + Math.Max(least, Rules.CornerClear)), elevation))
            : first;
    }

    /// <summary>The last place where a head may stand at an elevation.</summary>
    public Along LastPlace(Elevation elevation, double least = 0)
    {
        Along last = EndEnd switch
        {
            BayEnd.WallEnd => Face.PlaceAt(End, -Math.Max(least, Rules.EdgeMin), elevation),
            BayEnd.SectionLimit => End - Math.Max(least, EndLimitClear),
            _ => End - Lengths.Quantum(Unit) / 2, // a corner's own place belongs to the leg that starts there
        };
        return Leg.EndCorner is { } corner
            ? Along.Min(last, Face.PlaceAt(new Along(Leg.End), -Math.Max(0, Face.MitreCut(corner, elevation) + Math.Max(least, Rules.CornerClear)), elevation))
            : last;
    }

    /// <summary>The first place where a head may stand at any elevation.</summary>
    public Along FirstPlaceOfAll => Along.Min(FirstPlace(LowestBottom), FirstPlace(HighestTop));

    public Along LastPlaceOfAll => Along.Max(LastPlace(LowestBottom), LastPlace(HighestTop));

    /// <summary>
    /// The elevations at which a head may stand at a place and reaches, with the span that it covers, both ends of a lack; or what the
    /// mitre leaves of the lack at its elevation. High is under low where there are none.
    /// </summary>
    public (Elevation Low, Elevation High) ElevationsAt(Along along, Along from, Along to)
    {
        double slack = Lengths.Quantum(Unit);
        Elevation low = LowestBottom, high = HighestTop;
        Narrow(z => FirstPlace(z) <= along + slack);
        Narrow(z => LastPlace(z) >= along - slack);
        Narrow(z => along - HalfWindow <= Along.Max(from, FaceStartAt(z)) + slack);
        Narrow(z => along + HalfWindow >= Along.Min(to, FaceEndAt(z)) - slack);
        return (low, high);

        // Each condition turns once at most between bottom and top, since the mitre is straight.
        void Narrow(Func<Elevation, bool> holds)
        {
            if (high < low)
                return;
            bool atLow = holds(low), atHigh = Wall.Batter is null ? atLow : holds(high);
            if (atLow && atHigh)
                return;
            if (!atLow && !atHigh)
            {
                (low, high) = (high, low - 1);
                return;
            }
            Elevation good = atLow ? low : high, bad = atLow ? high : low;
            for (int i = 0; i < Halvings; i++)
            {
                Elevation middle = Elevation.Middle(good, bad);
                if (holds(middle))
                    good = middle;
                else
                    bad = middle;
            }
            (low, high) = atLow ? (low, good) : (good, high);
        }
    }

    /// <summary>True where the bay's ends, corners and limits leave a head its place.</summary>
    public bool Holds(Head head, double tolerance) =>
        Leg.Has(head.Along) && head.Along >= FirstPlace(head.Elevation) - tolerance && head.Along <= LastPlace(head.Elevation) + tolerance;

    /// <summary>False where no head could stand anywhere in the bay, at any elevation: too short between its ends and mitres.</summary>
    public bool HasRoom => !double.IsPositiveInfinity(_leastRoom);

    /// <summary>How far along the wall a nail can matter for cover: what it covers, and where its mitre ends that.</summary>
    public double Reach => HalfWindow + GreatestMitreRun;

    /// <summary>The level that rows are told apart by: elevation, or minus the depth below the top where rows are parallel.</summary>
    public double LevelOf(Head head) =>
        Section.Rows == RowKind.Parallel ? head.Elevation - Wall.Top.At(head.Along) : head.Elevation.Number;

    /// <summary>The place whose printed station is rounded to the quantum, on the bay's own side of a corner.</summary>
    public Along Rounded(Along along)
    {
        LayoutLine line = Wall.LayoutLine;
        double quantum = Lengths.Quantum(Unit);
        Along rounded = line.Rounded(along, Unit);
        while (rounded.Number < Leg.Start)
            rounded = line.Rounded(rounded + quantum, Unit);
        while (Leg.EndCorner is not null && rounded.Number >= Leg.End)
            rounded = line.Rounded(rounded - quantum, Unit);
        return rounded;
    }

    /// <summary>All bays of a wall, section by section, up-station.</summary>
    public static IReadOnlyList<Bay> Of(Face face, Rules rules, LengthUnit unit)
    {
        var bays = new List<Bay>();
        foreach (Section section in face.Wall.Sections)
        {
            foreach (Leg leg in face.Legs)
            {
                if (Math.Min(section.End, leg.End) - Math.Max(section.Start, leg.Start) > Lengths.Quantum(unit))
                    bays.Add(new Bay(face, section, leg, rules, unit));
            }
        }
        ShareLimits(bays, rules.MinGap);
        return bays;
    }

    /// <summary>
    /// Least room for heads along the wall at the elevations that have any; none: infinite. Looked at before section limits ask for their
    /// share: they can be shared otherwise.
    /// </summary>
    private double FindLeastRoom()
    {
        Elevation low = LowestBottom + Rules.EdgeMin, high = HighestTop - Rules.EdgeMin;
        double least = double.PositiveInfinity;
        for (int i = 0; i < LevelsTried; i++)
        {
            Elevation elevation = low + (high - low) * i / (LevelsTried - 1);
            double room = LastPlace(elevation) - FirstPlace(elevation);
            if (room >= -Tolerance.Rounding)
                least = Math.Min(least, Math.Max(0, room));
        }
        return least;
    }

    /// <summary>
    /// Heads on two sides of a section limit keep min_gap: half of it on each side. A bay too short for its half keeps what it can, and
    /// its neighbours the rest.
    /// </summary>
    private static void ShareLimits(List<Bay> bays, double minGap)
    {
        foreach (Bay bay in bays)
        {
            bay.StartLimitClear = bay.StartEnd == BayEnd.SectionLimit ? minGap / 2 : 0;
            bay.EndLimitClear = bay.EndEnd == BayEnd.SectionLimit ? minGap / 2 : 0;
        }
        foreach (Bay bay in bays)
        {
            int limits = (bay.StartEnd == BayEnd.SectionLimit ? 1 : 0) + (bay.EndEnd == BayEnd.SectionLimit ? 1 : 0);
            if (!bay.HasRoom || bay._leastRoom >= limits * minGap / 2)
                continue;
            foreach (Bay other in bays.Where(b => b.Leg == bay.Leg && b != bay))
            {
                if (other.End == bay.Start)
                {
                    bay.StartLimitClear = bay._leastRoom / limits;
                    other.EndLimitClear = minGap - bay.StartLimitClear;
                }
                else if (other.Start == bay.End)
                {
                    bay.EndLimitClear = bay._leastRoom / limits;
                    other.StartLimitClear = minGap - bay.EndLimitClear;
                }
            }
        }
    }
}

/// <summary>What a bay ends at.</summary>
internal enum BayEnd
{
    WallEnd,
    Corner,
    SectionLimit,
}
