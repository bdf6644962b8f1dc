using SheetGen.Layout.Quantities;
using SheetGen.Model;
using SheetGen.Model.Results;
using SheetGen.ProjectFile;

namespace SheetGen.Tests.Drawing;

/// <summary>Layouts made by a plain rule and not by the placer, with nails of every state, for the drawing tests.</summary>
public static class SampleLayout
{
    public static WallProject Read(string yaml)
    {
        ReadResult result = ProjectReader.ReadText(yaml, "sample.yaml");
        return result.Project ?? throw new InvalidOperationException(string.Join("\n", result.Problems.Select(p => p.Spot + " " + p.Message)));
    }

    /// <summary>Nails on a plain grid; the states go round so that each comes up, more often where <paramref name="seed"/> says so.</summary>
    public static NailLayout Make(WallProject project, int seed = 7)
    {
        var nails = new List<Nail>();
        var rows = new List<NailRow>();
        foreach (Wall wall in project.Walls)
        {
            var face = new Face(wall);
            foreach (Section section in wall.Sections)
                AddSection(project, wall, face, section, nails, rows, seed);
        }
        return new NailLayout
        {
            Nails = nails,
            Rows = rows,
            LeftOut = [],
            Score = new(new(0, 0), new(0, 0), new(0, null)),
        };
    }

    private static void AddSection(WallProject project, Wall wall, Face face, Section section, List<Nail> nails, List<NailRow> rows, int seed)
    {
        double quantum = project.Unit == Model.Units.LengthUnit.Metre ? 0.001 : 0.01;
        double edge = project.Rules.EdgeMin;
        double highest = Enumerable.Range(0, 50).Max(i => wall.Top.At(section.Start + (section.End - section.Start) * i / 49.001));
        string prefix = project.Walls.Count > 1 ? wall.Name.Replace(" ", "", StringComparison.Ordinal)[..1] + wall.Name[^1] + "-" : "";
        double field = project.Rules.Redirect.FieldTolerance;
        for (int row = 1; row < 30; row++)
        {
            var stations = new List<double>();
            double shift = section.Pattern == Pattern.Staggered && row % 2 == 0 ? 0.5 : 0;
            int column = 0;
            for (double at = section.Start + section.HorizontalSpacing * (0.5 + shift); at < section.End - edge; at += section.HorizontalSpacing)
            {
                column++;
                double depth = section.TopRowDepth + (row - 1) * section.VerticalSpacing;
                double z = section.Rows == RowKind.Level ? highest - depth : wall.Top.At(at) - depth;
                z = Math.Round(z / quantum) * quantum;
                if (z > wall.Top.At(at) - edge || z < wall.Bottom.At(at) + edge)
                    continue;
                int kind = (row * 31 + column * 17 + seed) % 23;
                double splay = kind switch { 3 => 6, 5 => -8, 9 => field + 4, 12 => -(field + 7), _ => 0 };
                NailStatus status = kind switch
                {
                    1 => NailStatus.Moved,
                    3 or 5 => NailStatus.Redirected,
                    9 or 12 => NailStatus.Noted,
                    15 when column % 3 == 0 => NailStatus.Unresolved,
                    _ => NailStatus.Grid,
                };
                double along = Math.Round((at + (status == NailStatus.Moved ? project.Rules.ShiftStep * 2 : 0)) / quantum) * quantum;
                double inclination = section.Inclination + (kind == 12 ? 4 : 0);
                double length = section.LengthOfRow(row) + (status == NailStatus.Noted ? project.Rules.LengthIncrement : 0);
                stations.Add(at);
                nails.Add(MakeNail(wall, face, section, RowNumber.Grid(row), column, kind == 20 ? NailKind.Proof : NailKind.Production, along, z, splay,
                    inclination, length, status, $"{prefix}{section.Name}-{row}-{column:00}", at));
            }
            if (stations.Count > 0)
            {
                double down = section.TopRowDepth + (row - 1) * section.VerticalSpacing;
                rows.Add(new(wall, section, 0, RowNumber.Grid(row), section.Rows == RowKind.Level,
                    section.Rows == RowKind.Level ? highest - down : down, section.LengthOfRow(row), stations));
            }
        }
        double middle = Math.Round((section.Start + section.HorizontalSpacing) / quantum) * quantum;
        double height = Math.Round((wall.Top.At(middle) - section.TopRowDepth - section.VerticalSpacing / 2) / quantum) * quantum;
        nails.Add(MakeNail(wall, face, section, new(0), 1, NailKind.Verification, middle, height, 0, section.Inclination, section.LengthOfRow(1),
            NailStatus.Grid, $"{prefix}{section.Name}-V-01", middle));
    }

    private static Nail MakeNail(
        Wall wall, Face face, Section section, RowNumber row, int column, NailKind kind, double along, double z, double splay, double inclination,
        double length, NailStatus status, string mark, double grid) => new()
        {
            Mark = mark,
            Wall = wall,
            Section = section,
            Row = row,
            Column = column,
            Kind = kind,
            Along = along,
            Station = wall.StationOf(along),
            Elevation = z,
            Splay = splay,
            Inclination = inclination,
            Length = length,
            Status = status,
            IsMoved = status == NailStatus.Moved,
            GridStation = wall.StationOf(grid),
            Hole = face.HoleAt(along, z, splay, inclination, length, section.HoleDiameter, 0),
            Reason = status == NailStatus.Grid ? null : new("S1", 0.1, 0.7, 0.5, [], "sample"),
        };

    public static ClearanceReport Report(NailLayout layout) => new([], layout.Nails.Select((n, i) => (n, i)).ToDictionary(
        p => p.n.Mark, p => new NailClearance("S1", 0.5 + p.i % 40 * 0.1, 12.3, 7.1)));

    public static QuantityTable Measure(WallProject project, NailLayout layout) => TakeOff.Measure(project, layout);
}
