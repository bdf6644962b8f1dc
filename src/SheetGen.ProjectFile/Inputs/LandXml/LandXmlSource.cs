using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>What a project file takes from LandXML files: layout lines, profiles, cross sections.</summary>
internal sealed class LandXmlSource(ForeignFiles files, LengthUnit unit)
{
    private readonly Dictionary<string, LandXmlFile?> _read = new(StringComparer.Ordinal);
    private readonly Dictionary<string, XmlPart> _alignmentOf = new(StringComparer.Ordinal);

    private ProblemList Problems => files.Problems;

    /// <summary>Start, elements and station equations of an alignment; null where it cannot be used, which is reported.</summary>
    /// <param name="name">Name of the layout line.</param>
    public IReadOnlyList<(string Key, Node Value)>? LayoutLine(MapItem source, string name)
    {
        if (Open(source) is not { } opened || Alignment(source, opened.File) is not { } alignment)
            return null;
        (LandXmlFile file, FileUnit length) = opened;
        var trace = new AlignmentTrace(file, length, Problems);
        if (trace.Read(alignment) is not { } pieces)
            return null;
        SourceSpot spot = file.File.At(alignment.Line, alignment.Column);
        SourceSpot SpotOf(TracePiece piece) => file.File.At(piece.Part.Line, piece.Part.Column);
        double drift = AlignmentNodes.Drift(pieces), whole = pieces.Sum(p => p.Length);
        double limit = 0.02 * FileUnit.Foot.Metres / length.Metres;
        string symbol = length.Symbol;
        if (drift > limit)
            Problems.Add(ProblemCodes.Inexact, spot, FormattableString.Invariant($"laid piece after piece the alignment leaves its own coordinates by up to {drift:0.####} {symbol}"), "the pieces' own directions and lengths are taken");
        if (alignment.Number("length") is { } told && Math.Abs(told - whole) > Math.Max(limit, 1e-6 * whole))
            Problems.Add(ProblemCodes.Inexact, spot, FormattableString.Invariant($"the alignment calls itself {told:0.####} {symbol} long; its pieces are {whole:0.####}"), "the pieces are taken");
        if (StationNodes.Read(alignment, file, length.In(unit), whole, Problems) is not { } stations)
            return null;
        XmlPart first = pieces[0].Part;
        (string northing, string easting) = file.Digits(first.First("Start")) ?? (Nodes.Digits(pieces[0].Start.N), Nodes.Digits(pieces[0].Start.E));
        _alignmentOf[name] = alignment;
        string curved = trace.SpiralError > 0 ? FormattableString.Invariant($"; spirals that are no clothoids in {SpiralLaws.Parts} parts each, within {trace.SpiralError:0.######} {symbol}") : "";
        Problems.Add(ProblemCodes.Imported, spot, FormattableString.Invariant($"layout line \"{Shown.Short(name)}\" is alignment \"{Shown.Short(alignment.Attribute("name") ?? "")}\" of LandXML {file.Version}: {pieces.Count} pieces, {whole:0.####} {symbol}, within {drift:0.######} {symbol} of its coordinates{curved}"));
        var keys = new List<(string, Node)>
        {
            ("start", Nodes.Map(spot, ("station", stations.Start), ("northing", Nodes.Length(northing, length, spot)), ("easting", Nodes.Length(easting, length, spot)),
                ("azimuth", AlignmentNodes.Azimuth(pieces[0], spot)))),
            ("elements", AlignmentNodes.Elements(pieces, length, SpotOf, spot)),
        };
        if (stations.Equations is { } equations)
            keys.Add(("station_equations", equations));
        return keys;
    }

    /// <summary>The points of a profile; null where there is none, which is reported.</summary>
    public IReadOnlyList<Node>? Profile(MapItem source, WallPlace wall, string key)
    {
        if (source.Gives("surface"))
            return Surface(source, wall)?.Profile(key);
        if (Open(source) is not { } opened || Alignment(source, opened.File) is not { } alignment)
            return null;
        XmlPart[] all = [.. alignment.All("Profile").SelectMany(p => p.Parts).Where(p => p.Name is "ProfAlign" or "ProfSurf")];
        string? asked = source.Text("profile");
        XmlPart[] found = [.. all.Where(p => asked is null || p.Attribute("name") == asked)];
        if (asked is null && found.Length > 1 && key == "existing_ground" && found.Count(p => p.Name == "ProfSurf") == 1)
            found = [found.Single(p => p.Name == "ProfSurf")];
        else if (asked is null && found.Length > 1 && key != "existing_ground" && found.Count(p => p.Name == "ProfAlign") == 1)
            found = [found.Single(p => p.Name == "ProfAlign")];
        if (found.Length != 1)
            return Missing(source, "profile", "profile", asked, found.Length, all.Select(p => p.Attribute("name") ?? "(no name)"));
        var nodes = ProfileNodes.Of(found[0], opened.File, opened.Unit, unit, Raise(source), wall, Along(alignment, wall, opened.Unit), Problems);
        if (nodes is not null)
            Problems.Add(ProblemCodes.Imported, opened.File.File.At(found[0].Line, found[0].Column), FormattableString.Invariant($"\"{key}\" is profile \"{Shown.Short(found[0].Attribute("name") ?? "")}\" of alignment \"{Shown.Short(alignment.Attribute("name") ?? "")}\": {nodes.Count} points"));
        return nodes;
    }

    /// <summary>The ground in front of the face at the cross sections that lie on the wall, or cut through a surface; null where there is none, which is reported.</summary>
    public IReadOnlyList<Node>? CrossSections(MapItem source, WallPlace wall)
    {
        bool isFoot = Lengths.IsFoot(unit);
        if (source.Text("surface") is { } name && Open(source) is { } any && any.File.Surfaces.Any(s => s.Attribute("name") == name) && !CrossSectionNodes.Has(any.File, source.Text("alignment"), name))
            return Surface(source, wall)?.CrossSections(source.Number("every") ?? (isFoot ? 25 : 10), source.Number("reach") ?? (isFoot ? 50 : 15));
        if (Open(source) is not { } opened || Alignment(source, opened.File) is not { } alignment)
            return null;
        return CrossSectionNodes.Of(source, alignment, opened.File, opened.Unit, unit, Raise(source), wall, Along(alignment, wall, opened.Unit), Problems);
    }

    /// <summary>The surface that is named, its triangles in project units; null where there is none, which is reported.</summary>
    private SurfaceNodes? Surface(MapItem source, WallPlace wall)
    {
        if (Open(source, withSurfaces: true) is not { } opened)
            return null;
        string name = source.Text("surface")!;
        XmlPart[] found = [.. opened.File.Surfaces.Where(s => s.Attribute("name") == name)];
        if (found.Length != 1)
        {
            Missing(source, "surface", "surface", name, found.Length, opened.File.Surfaces.Select(s => s.Attribute("name") ?? "(no name)"));
            return null;
        }
        if (TinSurface.Of(found[0], opened.Unit.In(unit), wall.Origin, out string why) is { } tin)
            return new SurfaceNodes(opened.File.File, found[0], tin, wall, Raise(source), unit, Problems);
        Problems.Add(ProblemCodes.CannotUse, opened.File.File.At(found[0].Line, found[0].Column), $"surface \"{Shown.Short(name)}\" cannot be used: {why}", "export it as a TIN", opened.File.File.Spot);
        return null;
    }

    /// <summary>The file and its unit; null where it cannot be read, which is reported.</summary>
    private (LandXmlFile File, FileUnit Unit)? Open(MapItem source, bool withSurfaces = false)
    {
        if (files.Open(source, "file", InputFile.MostDrawing) is not { } foreign)
            return null;
        string key = withSurfaces ? foreign.Path + "\0surfaces" : foreign.Path;
        if (!_read.TryGetValue(key, out LandXmlFile? file))
            _read[key] = file = LandXmlFile.Read(foreign, withSurfaces, Problems);
        if (file is null)
            return null;
        FileUnit? given = source.Text("units") is { } named ? FileUnit.All.First(u => u.Symbol == named) : null;
        if ((given ?? file.Unit) is { } length)
            return (file, length);
        Problems.Add(ProblemCodes.CannotUse, foreign.Spot, $"\"{Shown.Short(foreign.Name)}\" does not tell a unit of length that is known", "say it: units: us-ft");
        return null;
    }

    private XmlPart? Alignment(MapItem source, LandXmlFile file)
    {
        string? asked = source.Text("alignment");
        XmlPart[] found = [.. file.Alignments.Where(a => asked is null || a.Attribute("name") == asked)];
        if (found.Length == 1)
            return found[0];
        Missing(source, "alignment", "alignment", asked, found.Length, file.Alignments.Select(a => a.Attribute("name") ?? "(no name)"));
        return null;
    }

    private IReadOnlyList<Node>? Missing(MapItem source, string key, string what, string? asked, int count, IEnumerable<string> names)
    {
        string[] all = [.. names.Select(Shown.Short)];
        string has = all.Length == 0 ? $"it has no {what}" : $"it has {string.Join(", ", all.Take(12))}{(all.Length > 12 ? ", ..." : "")}";
        string message = asked is null ? all.Length == 0 ? $"the file has no {what}" : $"the file has {all.Length} of this kind: say which {what}"
            : count == 0 ? $"the file has no {what} \"{Shown.Short(asked)}\"" : $"the file has {count} of the name \"{Shown.Short(asked)}\"";
        Problems.Add(ProblemCodes.NotInFile, source.SpotOf(source.Gives(key) ? key : "file"), message, has);
        return null;
    }

    private double Raise(MapItem source) => source.Number("raise") ?? 0;

    /// <summary>
    /// Distance along the wall's layout line, in project units, of a station of the alignment: from the alignment's start where the line
    /// was taken from it; else that of the same internal station.
    /// </summary>
    private Func<double, double> Along(XmlPart alignment, WallPlace wall, FileUnit length)
    {
        double factor = length.In(unit), start = alignment.Number("staStart") ?? 0;
        bool same = _alignmentOf.TryGetValue(wall.Line.Name, out XmlPart? own) && ReferenceEquals(own, alignment);
        return same ? station => (station - start) * factor : station => wall.Line.AlongOf(station * factor);
    }
}
