using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>LandXML cross sections as the ground in front of a wall's face.</summary>
internal static class CrossSectionNodes
{
    /// <summary>The cross sections on the wall in order of station; null where none can be used, which is reported.</summary>
    public static IReadOnlyList<Node>? Of(
        MapItem source, XmlPart alignment, LandXmlFile file, FileUnit length, LengthUnit unit, double raise, WallPlace wall, Func<double, double> along, ProblemList problems)
    {
        double factor = length.In(unit);
        string? asked = source.Text("surface");
        XmlPart[] all = [.. alignment.All("CrossSects").SelectMany(c => c.All("CrossSect"))];
        string[] names = [.. all.SelectMany(c => c.All("CrossSectSurf")).Select(s => s.Attribute("name") ?? "").Distinct(StringComparer.Ordinal)];
        if (all.Length == 0 || (asked is null ? names.Length != 1 : !names.Contains(asked)))
        {
            string has = names.Length == 0 ? "it has no cross sections of a surface" : "it has " + string.Join(", ", names.Take(12).Select(Shown.Short));
            problems.Add(ProblemCodes.NotInFile, source.SpotOf(asked is null ? "file" : "surface"), asked is null ? names.Length == 0 ? "the alignment has no cross sections of a surface" : "say which surface" : $"no cross section has a surface \"{Shown.Short(asked)}\"", has);
            return null;
        }
        var nodes = new List<(double Along, Node Node)>();
        FileUnit own = FileUnit.Of(unit);
        foreach (XmlPart section in all)
        {
            Model.Problems.SourceSpot spot = file.File.At(section.Line, section.Column);
            XmlPart? surface = section.All("CrossSectSurf").FirstOrDefault(s => (s.Attribute("name") ?? "") == (asked ?? names[0]));
            // Where the surface has gaps it stands in several lists.
            double[]?[] lists = [.. surface?.All("PntList2D").Select(l => l.Numbers()) ?? []];
            if (section.Number("sta") is not { } station || lists.Length == 0 || Array.Exists(lists, l => l is not { Length: >= 4 } || l.Length % 2 != 0))
            {
                problems.Add(ProblemCodes.LeftOut, spot, "the cross section is left out: it has no station, or no list of offsets and elevations of the surface", "", file.File.Spot);
                continue;
            }
            double place = along(station);
            if (place < (wall.Start ?? double.NegativeInfinity) || place > (wall.End ?? double.PositiveInfinity))
                continue;
            List<(double InFront, double Z)> ground = lists.Select(l => InFront([.. Enumerable.Range(0, l!.Length / 2).Select(i => (l[2 * i] * factor * -wall.Side + wall.FaceOffset, l[2 * i + 1] * factor + raise))])).FirstOrDefault(g => g.Count >= 2) ?? [];
            if (ground.Count < 2)
            {
                problems.Add(ProblemCodes.LeftOut, spot, FormattableString.Invariant($"the cross section at {station} is left out: none of it lies in front of the face"), "", file.File.Spot);
                continue;
            }
            nodes.Add((place, Nodes.Map(spot, ("station", Nodes.Along(place, spot)),
                ("ground", Nodes.List(spot, ground.Select(g => Nodes.Map(spot, ("in_front", Nodes.Length(g.InFront, own, spot)), ("elevation", Nodes.Length(g.Z, own, spot)))))))));
        }
        if (nodes.Count > 0)
        {
            problems.Add(ProblemCodes.Imported, file.File.At(alignment.Line, alignment.Column), FormattableString.Invariant($"\"cross_sections\" are {nodes.Count} of the file's {all.Length}, those on the wall, surface \"{Shown.Short(asked ?? names[0])}\""));
            return [.. nodes.OrderBy(n => n.Along).Select(n => n.Node)];
        }
        problems.Add(ProblemCodes.NotInFile, source.SpotOf("file"), "no cross section of the file lies on the wall", "compare the wall's stations with those of the alignment");
        return null;
    }

    /// <summary>True where the file has cross sections of a surface.</summary>
    /// <param name="alignment">Name of their alignment; null for any.</param>
    public static bool Has(LandXmlFile file, string? alignment, string surface) =>
        file.Alignments.Where(a => alignment is null || a.Attribute("name") == alignment).SelectMany(a => a.All("CrossSects")).SelectMany(c => c.All("CrossSect")).SelectMany(c => c.All("CrossSectSurf")).Any(s => s.Attribute("name") == surface);

    /// <summary>What lies in front of the face, beginning at the face itself.</summary>
    private static List<(double InFront, double Z)> InFront(List<(double InFront, double Z)> points)
    {
        if (points[0].InFront > points[^1].InFront)
            points.Reverse();
        var kept = new List<(double InFront, double Z)>();
        for (int i = 0; i < points.Count; i++)
        {
            if (points[i].InFront >= 0)
            {
                if (kept.Count == 0 && points[i].InFront > 0 && i > 0)
                    kept.Add((0, points[i - 1].Z + (points[i].Z - points[i - 1].Z) * -points[i - 1].InFront / (points[i].InFront - points[i - 1].InFront)));
                kept.Add(points[i]);
            }
        }
        return kept.Count > 0 && kept[0].InFront == 0 ? kept : [];
    }
}
