using SheetGen.Dxf;
using SheetGen.Model.Problems;
using SheetGen.Model.Units;
using SheetGen.ProjectFile.Building;
using SheetGen.ProjectFile.Inputs.LandXml;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.Dxf;

/// <summary>What a project file takes from drawings: layout lines and obstructions.</summary>
internal sealed class DxfSource(ForeignFiles files, LengthUnit unit)
{
    private readonly Dictionary<string, DxfContent?> _read = new(StringComparer.Ordinal);

    private readonly Dictionary<string, string> _names = new(StringComparer.OrdinalIgnoreCase);

    private ProblemList Problems => files.Problems;

    /// <summary>The file's content; null where it cannot be read, which is reported without any of it.</summary>
    public static DxfContent? Content(ForeignFile file, ProblemList problems)
    {
        (DxfContent? content, DxfProblem? error) = DxfContent.Read(file.Bytes);
        if (content is not null)
            return content;
        bool isDwg = file.Bytes.AsSpan().StartsWith("AC10"u8);
        string why = isDwg ? "it is a DWG file" : error!.Message.Split(", found", ':')[0];
        problems.Add(ProblemCodes.NotThisKind, file.At(error!.Line), $"\"{Shown.Short(file.Name)}\" cannot be read as DXF: {why}", isDwg ? "save it as DXF, in any release, text or binary" : "save it as DXF anew", file.Spot);
        return null;
    }

    /// <summary>Start and elements along a polyline; null where it cannot be used, which is reported.</summary>
    public IReadOnlyList<(string Key, Node Value)>? LayoutLine(MapItem source)
    {
        if (Open(source) is not { } opened)
            return null;
        (ForeignFile file, DxfContent content, DrawingPlace place) = opened;
        string? layer = source.Text("layer"), handle = source.Text("handle")?.Trim().ToUpperInvariant();
        DxfRecord[] lines = [.. content.Entities.Where(e => e.Kind is "LWPOLYLINE" or "POLYLINE" or "LINE" && !e.InPaperSpace
            && (layer is null || string.Equals(e.Layer, layer, StringComparison.OrdinalIgnoreCase)) && (handle is null || e.Handle == handle))];
        if (lines.Length != 1)
        {
            string where = (layer is null ? "" : $" on layer \"{Shown.Short(layer)}\"") + (handle is null ? "" : $" with handle {Shown.Short(handle)}");
            string hint = lines.Length == 0 ? "sheetgen inspect shows what the drawing holds" : "give the handle of one: " + string.Join(", ", lines.Take(8).Select(l => l.Handle.Length > 0 ? l.Handle : $"line {l.Line}"));
            Problems.Add(ProblemCodes.NotInFile, source.SpotOf(layer is null ? "file" : "layer"), lines.Length == 0 ? $"the drawing has no polyline{where}" : $"the drawing has {lines.Length} polylines{where}", hint);
            return null;
        }
        int at = 0;
        while (!ReferenceEquals(content.Entities[at], lines[0]))
            at++;
        DxfRecord[] vertices = [.. content.Entities.Skip(at + 1).TakeWhile(e => e.Kind == "VERTEX")];
        IReadOnlyList<TracePiece>? pieces = PolylineTrace.Of(lines[0], vertices, place.Map);
        SourceSpot spot = file.At(lines[0].Line);
        if (pieces is null || pieces.Count == 0)
        {
            Problems.Add(ProblemCodes.CannotUse, spot, "the polyline has no length in plan", "draw it anew", file.Spot);
            return null;
        }
        if (source.Flag("reverse") == true)
            pieces = [.. pieces.Reverse().Select(p => p with { Start = p.End, End = p.Start, Azimuth = p.EndAzimuth + Math.PI, Curvature = -p.Curvature, EndCurvature = -p.EndCurvature })];
        FileUnit own = FileUnit.Of(unit);
        Problems.Add(ProblemCodes.Imported, spot, FormattableString.Invariant($"the layout line is the {new Source("polyline", lines[0].Handle, lines[0].Layer, 0).Text}: {pieces.Count} pieces, {pieces.Sum(p => p.Length):0.###} {own.Symbol}"));
        Node station = source.NumberItem("station") is { } s ? Nodes.Number(s.Value, s.Spot) : Nodes.Number(0, spot);
        return
        [
            ("start", Nodes.Map(spot, ("station", station), ("northing", Nodes.Length(pieces[0].Start.N, own, spot)), ("easting", Nodes.Length(pieces[0].Start.E, own, spot)),
                ("azimuth", AlignmentNodes.Azimuth(pieces[0], spot)))),
            ("elements", AlignmentNodes.Elements(pieces, own, _ => spot, spot)),
        ];
    }

    /// <summary>Obstructions of a layer or block; null where there are none, which is reported.</summary>
    public IReadOnlyList<Node>? Obstructions(MapItem source, LayoutLines lines)
    {
        if (source.Gives("layer") == source.Gives("block"))
        {
            Problems.Add(ProblemCodes.ExactlyOne, source.Spot, "from_dxf takes layer or block", "give one of them");
            return null;
        }
        if (Open(source) is not { } opened)
            return null;
        double error = source.Number("error") ?? (Lengths.IsFoot(unit) ? 0.02 : 0.005);
        (Drawing? drawing, string? why) = Drawing.Of(opened.Content, error / opened.Place.Factor);
        if (drawing is not null)
            return new ObstructionFigures(source, opened.File, drawing, opened.Place, lines, unit, error, _names, Problems).Nodes();
        Problems.Add(ProblemCodes.TooLarge, opened.File.Spot, $"\"{Shown.Short(opened.File.Name)}\" is not taken apart: {why}", "save the layers that are needed as a drawing of their own");
        return null;
    }

    private (ForeignFile File, DxfContent Content, DrawingPlace Place)? Open(MapItem source)
    {
        if (files.Open(source, "file", InputFile.MostDrawing) is not { } file)
            return null;
        if (!_read.TryGetValue(file.Path, out DxfContent? content))
            _read[file.Path] = content = Content(file, Problems);
        return content is not null && DrawingPlace.Read(source, content, file, unit, Problems) is { } place ? (file, content, place) : null;
    }
}
