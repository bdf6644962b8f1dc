using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Results;
using SheetGen.Model.Units;

namespace SheetGen.Writers.Csv;

/// <summary>nails.csv: a row a nail, in the layout's order; plan coordinates with the project's origin added back.</summary>
public static class NailCsv
{
    private const string Printed = "station_printed";

    /// <summary>The header, in order; where a layout line has station equations, the station of the sheets follows (station runs on without a jump).</summary>
    public static IReadOnlyList<string> Columns { get; } =
    [
        "wall", "section", "row", "nail", "kind", "station", "elevation", "northing", "easting", "splay_deg", "inclination_deg", "length",
        "bar", "hole_diameter", "status", "tip_northing", "tip_easting", "tip_elevation", "nearest", "least_clear",
        "margin_obstruction_deg", "margin_nail_deg", "reason",
    ];

    /// <summary>Writes header and rows to the stream and leaves it open.</summary>
    public static void Write(WallProject project, NailLayout layout, ClearanceReport report, Stream stream)
    {
        using var rows = new CsvRows(stream);
        bool hasEquations = project.LayoutLines.Any(l => l.Stationing.Equations.Count > 0);
        rows.Write(hasEquations ? [.. Columns, Printed] : Columns);
        foreach (Nail nail in layout.Nails)
        {
            string[] cells = Cells(project, nail, report.Nails.GetValueOrDefault(nail.Mark));
            rows.Write(hasEquations ? [.. cells, nail.Wall.TextOf(nail.Station, project.Unit)] : cells);
        }
    }

    private static string[] Cells(WallProject project, Nail nail, NailClearance? clearance)
    {
        Vector3D head = nail.Hole.Head, tip = nail.Hole.Tip;
        int decimals = Lengths.Decimals(project.Unit);
        return
        [
            nail.Wall.Name,
            nail.Section.Name,
            nail.Row.ToString(),
            nail.Mark,
            ResultWords.Of(nail.Kind),
            PlainNumber.Format(nail.Station, decimals, 6),
            PlainNumber.Format(nail.Elevation, decimals, 6),
            Coordinate(head.N + project.Origin.N),
            Coordinate(head.E + project.Origin.E),
            PlainNumber.Format(nail.Splay, 0, 6),
            PlainNumber.Format(nail.Inclination, 0, 6),
            PlainNumber.Format(nail.Length, decimals, 6),
            nail.Bar.ToString(),
            PlainNumber.Format(nail.HoleDiameter, decimals, 6),
            ResultWords.Of(nail.Status),
            Coordinate(tip.N + project.Origin.N),
            Coordinate(tip.E + project.Origin.E),
            Coordinate(tip.Z),
            clearance?.Nearest ?? "",
            Coordinate(clearance?.LeastClear),
            PlainNumber.Fixed(clearance?.MarginObstruction, 4),
            PlainNumber.Fixed(clearance?.MarginNail, 4),
            nail.Reason?.Text ?? "",
        ];
    }

    private static string Coordinate(double? value) => PlainNumber.Fixed(value, 6);
}
