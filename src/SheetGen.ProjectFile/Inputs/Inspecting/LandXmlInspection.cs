using SheetGen.Model;
using SheetGen.Model.Geometry;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Inputs.LandXml;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Inspecting;

/// <summary>What a LandXML file holds.</summary>
internal static class LandXmlInspection
{
    public static Inspection? Of(ForeignFile foreign, ProblemList problems)
    {
        if (LandXmlFile.Read(foreign, withSurfaces: true, problems) is not { } file)
            return null;
        FileUnit? length = file.Unit;
        LengthUnit unit = length?.Symbol switch { "us-ft" => LengthUnit.SurveyFoot, "m" or "mm" or "cm" => LengthUnit.Metre, _ => LengthUnit.Foot };
        string symbol = length?.Symbol ?? "?";
        var lines = new List<string> { $"LandXML {Shown.Short(file.Version)}, lengths in {(length is null ? "a unit that is not known: give units" : symbol)}" };
        var yaml = new List<YamlBlock>();
        double line = 0;
        string lineName = "";
        (double, double)? designed = null;
        foreach (XmlPart alignment in file.Alignments)
        {
            string name = alignment.Attribute("name") ?? "";
            double start = alignment.Number("staStart") ?? 0;
            string counts = string.Join(", ", (alignment.First("CoordGeom")?.Parts ?? []).Where(p => p.Name is "Line" or "Curve" or "Spiral" or "IrregularLine" or "Chain").GroupBy(p => p.Name).Select(g => $"{g.Count()} {g.Key.ToLowerInvariant()}{(g.Count() == 1 ? "" : "s")}"));
            var own = new ProblemList();
            IReadOnlyList<TracePiece>? pieces = new AlignmentTrace(file, length ?? FileUnit.Foot, own).Read(alignment);
            double whole = pieces?.Sum(p => p.Length) ?? 0;
            if (StationNodes.Read(alignment, file, (length ?? FileUnit.Foot).In(unit), whole, own) is null)
                pieces = null;
            lines.Add(pieces is null
                ? $"alignment \"{Shown.Short(name)}\": cannot be used: {own.Sorted().First(p => p.Severity == Model.Problems.Severity.Error).Message}"
                : $"alignment \"{Shown.Short(name)}\": {new PrintedStation(start).Text(unit)} to {new PrintedStation(start + whole).Text(unit)}, {whole.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)} {symbol}; {counts}");
            if (pieces is not null && length is not null && line == 0)
            {
                (line, lineName) = (whole * length.In(unit), name);
                XmlPart[] profiles = [.. alignment.All("Profile").SelectMany(p => p.All("ProfAlign"))];
                double[] stations = profiles.Length != 1 ? [] : [.. profiles[0].Parts.Select(p => p.Numbers()).OfType<double[]>().Where(n => n.Length >= 2).Select(n => (n[0] - start) * length.In(unit))];
                designed = stations.Length < 2 ? null : (stations.Min(), stations.Max());
            }
            if (pieces is not null && length is not null)
                yaml.Add(new YamlBlock("layout_lines", $"  - name: {Quoted(name.Length == 0 ? "WL-1" : name)}\n    from_landxml: {{file: {Quoted(foreign.Name)}, alignment: {Quoted(name)}}}\n"));
            foreach (XmlPart equation in alignment.All("StaEquation"))
                lines.Add($"  station equation: {Shown.Short(equation.Attribute("staBack") ?? equation.Attribute("staInternal") ?? "?")} back = {Shown.Short(equation.Attribute("staAhead") ?? "?")} ahead");
            foreach (XmlPart profile in alignment.All("Profile").SelectMany(p => p.Parts).Where(p => p.Name is "ProfAlign" or "ProfSurf"))
            {
                int points = profile.Name == "ProfSurf" ? (profile.First("PntList2D")?.Words().Length ?? 0) / 2 : profile.Parts.Count(p => p.Name is "PVI" or "ParaCurve" or "UnsymParaCurve" or "CircCurve");
                int curves = profile.Parts.Count(p => p.Name is "ParaCurve" or "UnsymParaCurve" or "CircCurve");
                lines.Add($"  profile \"{Shown.Short(profile.Attribute("name") ?? "")}\" ({(profile.Name == "ProfSurf" ? "of a surface" : "designed")}): {points} points{(curves == 0 ? "" : $", {curves} vertical curves")}");
            }
            string[] surfaces = [.. alignment.All("CrossSects").SelectMany(c => c.All("CrossSect")).SelectMany(c => c.All("CrossSectSurf")).Select(s => s.Attribute("name") ?? "").Distinct()];
            if (surfaces.Length > 0)
                lines.Add($"  cross sections: {alignment.All("CrossSects").Sum(c => c.All("CrossSect").Count())}, of {string.Join(", ", surfaces.Take(8).Select(s => $"\"{Shown.Short(s)}\""))}");
        }
        foreach (XmlPart surface in file.Surfaces)
        {
            string name = surface.Attribute("name") ?? "";
            TinSurface? tin = TinSurface.Of(surface, 1, new Vector2D(0, 0), out string why);
            lines.Add(tin is null ? $"surface \"{Shown.Short(name)}\": cannot be used: {why}"
                : $"surface \"{Shown.Short(name)}\": {tin.Count} triangles; can be existing_ground, finished_grade, top (along the face) and cross_sections");
            if (tin is not null && length is not null)
                yaml.Add(new YamlBlock("existing_ground", $"  from_landxml: {{file: {Quoted(foreign.Name)}, surface: {Quoted(name)}}}\n"));
        }
        if (file.Alignments.Count == 0)
            lines.Add("no alignment: no layout line can be taken from it");
        return new Inspection(lines, yaml, unit, []) { LineLength = line, LineName = lineName, Profile = designed };
    }

    public static string Quoted(string text) => "\"" + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + "\"";
}
