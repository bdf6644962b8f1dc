using SheetGen.Model;
using SheetGen.Model.Units;

namespace SheetGen.Layout.Rows;

/// <summary>The part of a section that lies on one leg of its wall's face: rows end at both of its ends.</summary>
public sealed class Bay
{
    public Bay(Face face, Section section, Leg leg, Rules rules, LengthUnit unit)
    {
        Face = face;
        Section = section;
        Leg = leg;
        Rules = rules;
        Unit = unit;
        Start = Math.Max(section.Start, leg.Start);
        End = Math.Min(section.End, leg.End);
        Wall wall = face.Wall;
        LowestBottom = wall.Bottom.Lowest(Start, End);
        HighestTop = wall.Top.Highest(Start, End);
        StartEnd = MakeEnd(Start == leg.Start ? leg.StartCorner : null, Start == wall.Start);
        EndEnd = MakeEnd(End == leg.End ? leg.EndCorner : null, End == wall.End);
    }

    public Face Face { get; }

    public Wall Wall => Face.Wall;

    public Section Section { get; }

    public Leg Leg { get; }

    public Rules Rules { get; }

    public LengthUnit Unit { get; }

    public double Start { get; }

    public double End { get; }

    public double LowestBottom { get; }

    public double HighestTop { get; }

    public BayEnd StartEnd { get; }

    public BayEnd EndEnd { get; }

    /// <summary>Half the width of the stretch that a nail covers along the wall.</summary>
    public double HalfWindow => Math.Max(Section.HorizontalSpacing, Rules.MovedGapMax ?? 0) / 2;

    /// <summary>Where the face itself starts: the layout line's place less what the mitre takes at every elevation.</summary>
    public double FaceStart => Start + Math.Max(0, StartEnd.LeastCut);

    public double FaceEnd => End - Math.Max(0, EndEnd.LeastCut);

    /// <summary>The level that rows are told apart by: elevation, or minus the depth below the top where rows are parallel.</summary>
    public double LevelOf(double along, double elevation) =>
        Section.Rows == RowKind.Parallel ? elevation - Wall.Top.At(along) : elevation;

    /// <summary>All bays of a wall, section by section, up-station.</summary>
    public static IEnumerable<Bay> Of(Face face, Rules rules, LengthUnit unit)
    {
        foreach (Section section in face.Wall.Sections)
        {
            foreach (Leg leg in face.Legs)
            {
                if (Math.Min(section.End, leg.End) - Math.Max(section.Start, leg.Start) > Lengths.Quantum(unit))
                    yield return new Bay(face, section, leg, rules, unit);
            }
        }
    }

    private BayEnd MakeEnd(Corner? corner, bool isWallEnd)
    {
        if (corner is null)
            return isWallEnd
                ? new BayEnd(BayEndKind.WallEnd, Rules.EdgeMin, 0, 0)
                : new BayEnd(BayEndKind.SectionLimit, Rules.MinGap / 2, 0, 0);
        double low = Face.MitreCut(corner, LowestBottom), high = Face.MitreCut(corner, HighestTop);
        return new BayEnd(BayEndKind.Corner, Rules.CornerClear, Math.Min(low, high), Math.Max(low, high));
    }
}
