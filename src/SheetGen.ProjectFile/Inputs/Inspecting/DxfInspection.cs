using System.Globalization;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Inputs.Dxf;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Inspecting;

/// <summary>What a drawing holds.</summary>
internal static class DxfInspection
{
    private const int MostBlocks = 40;

    public static Inspection? Of(ForeignFile foreign, ProblemList problems)
    {
        if (DxfSource.Content(foreign, problems) is not { } content)
            return null;
        FileUnit? told = DrawingPlace.UnitOf(content);
        LengthUnit unit = told?.Symbol switch { "us-ft" => LengthUnit.SurveyFoot, "m" or "mm" or "cm" => LengthUnit.Metre, _ => LengthUnit.Foot };
        (Drawing? drawing, string? why) = Drawing.Of(content, 0.02 * FileUnit.Foot.Metres / (told?.Metres ?? FileUnit.Foot.Metres));
        if (drawing is null)
        {
            problems.Add(ProblemCodes.TooLarge, foreign.Spot, $"the drawing is not taken apart: {why}", "save the layers that are needed as a drawing of their own");
            return null;
        }
        var lines = new List<string> { $"DXF {Release(content.Version)}, drawn in {(told is null ? "a unit that it does not tell: give units" : told.Symbol)}" };
        Point3[] all = [.. drawing.Figures.SelectMany(f => f.Points)];
        if (all.Length > 0)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"extents: x {all.Min(p => p.X):0.###} to {all.Max(p => p.X):0.###}, y {all.Min(p => p.Y):0.###} to {all.Max(p => p.Y):0.###}, z {all.Min(p => p.Z):0.###} to {all.Max(p => p.Z):0.###}"));
        var yaml = new List<YamlBlock>();
        foreach (IGrouping<string, Figure> layer in drawing.Figures.GroupBy(f => f.Source.Layer, StringComparer.OrdinalIgnoreCase).OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase))
        {
            lines.Add($"layer {Shown.Short(layer.Key)}: {Counts(layer)}");
            if (Block(foreign.Name, layer.Key, [.. layer], told) is { } block)
                yaml.Add(new YamlBlock("obstructions", block));
        }
        foreach (var ignored in drawing.Ignored.GroupBy(i => (i.Source.Layer, i.Source.Kind, i.Why)).OrderBy(g => g.Key.Layer, StringComparer.Ordinal).ThenBy(g => g.Key.Kind, StringComparer.Ordinal).Take(60))
            lines.Add($"  not used on layer {Shown.Short(ignored.Key.Layer)}: {ignored.Count()} {Shown.Short(ignored.Key.Kind)}: {ignored.Key.Why}");
        var inserts = drawing.Figures.Where(f => f.Insert is not null).Select(f => f.Insert!).Distinct().GroupBy(i => i.Block, StringComparer.OrdinalIgnoreCase).OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase).ToArray();
        foreach (var block in inserts.Take(MostBlocks))
        {
            string[] tags = [.. block.SelectMany(b => b.Attributes.Keys).Distinct(StringComparer.OrdinalIgnoreCase).Take(8)];
            lines.Add($"block {Shown.Short(block.Key)}: {block.Count()} inserted{(tags.Length == 0 ? "" : ", attributes " + string.Join(", ", tags.Select(Shown.Short)))}");
        }
        if (inserts.Length > MostBlocks)
            lines.Add($"and {inserts.Length - MostBlocks} more blocks");
        if (drawing.InPaperSpace > 0)
            lines.Add($"{drawing.InPaperSpace} things in paper space: not used");
        lines.Add(yaml.Count == 0 ? "nothing of it can be an obstruction" : $"can be obstructions: {yaml.Count} layers (sheetgen inspect {Shown.Short(foreign.Name)} --as yaml)");
        return new Inspection(lines, yaml, unit, []);
    }

    private static string Counts(IEnumerable<Figure> figures) => string.Join(", ", figures.GroupBy(f => f.Kind).OrderBy(g => g.Key).Select(g => g.Key switch
    {
        FigureKind.Circle => Many(g.Count(), "circle"),
        FigureKind.Closed => Many(g.Count(), "closed shape"),
        FigureKind.Open => Many(g.Count(), "open line") + (g.Any(f => f.Points.Any(p => p.Z != 0)) ? " with elevations" : ""),
        FigureKind.Point => Many(g.Count(), "point"),
        FigureKind.Body => Many(g.Count(), "3D face or mesh").Replace("meshs", "meshes", StringComparison.Ordinal),
        _ => Many(g.Count(), "text"),
    }));

    private static string Many(int count, string what) => count == 1 ? "1 " + what : $"{count} {what}s";

    /// <summary>The block that takes a layer; what only the engineer knows is left to be filled in.</summary>
    private static string? Block(string file, string layer, IReadOnlyList<Figure> figures, FileUnit? told)
    {
        Figure[] bodies = [.. figures.Where(f => f.Kind is FigureKind.Circle or FigureKind.Closed or FigureKind.Body)];
        Figure[] open = [.. figures.Where(f => f.Kind == FigureKind.Open)];
        string units = told is null ? ", units: ft" : "";
        string head = $"  - from_dxf: {{file: {LandXmlInspection.Quoted(file)}, layer: {LandXmlInspection.Quoted(layer)}{units}, kind: ";
        if (bodies.Length > 0)
        {
            string kind = bodies.Count(b => b.Kind == FigureKind.Circle) * 2 > bodies.Length ? "shaft" : "solid";
            return head + kind + (bodies.All(b => b.Kind == FigureKind.Body) ? "}\n" : ", bottom: 0, top: 100}     # bottom and top: give the elevations\n");
        }
        if (open.Length == 0)
            return null;
        return open.Any(f => f.Points.Any(p => p.Z != 0)) ? head + "pipe, diameter: 24 in}     # give the outside diameter\n" : head + "boundary}\n";
    }

    private static string Release(string version) => version switch
    {
        "AC1006" => "R10",
        "AC1009" or "" => "R12",
        "AC1012" => "R13",
        "AC1014" => "R14",
        "AC1015" => "R2000",
        "AC1018" => "R2004",
        "AC1021" => "R2007",
        "AC1024" => "R2010",
        "AC1027" => "R2013",
        "AC1032" => "R2018",
        _ => "of a release that is not known",
    };
}
