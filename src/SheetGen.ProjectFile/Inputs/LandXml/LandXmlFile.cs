using System.Xml;
using SheetGen.ProjectFile.Tree;

namespace SheetGen.ProjectFile.Inputs.LandXml;

/// <summary>A LandXML file (1.0 to 2.0): its unit, alignments, points and surfaces as they stand.</summary>
internal sealed class LandXmlFile
{
    private readonly Dictionary<string, XmlPart> _points = new(StringComparer.Ordinal);

    private LandXmlFile(ForeignFile file, XmlPart root)
    {
        (File, Root) = (file, root);
        foreach (XmlPart point in root.All("CgPoints").SelectMany(p => Deep(p, "CgPoint")))
        {
            if (point.Attribute("name") is { } name)
                _points.TryAdd(name, point);
        }
        Alignments = [.. root.All("Alignments").SelectMany(a => a.All("Alignment"))];
        XmlPart? units = root.First("Units");
        Unit = units?.First("Metric") is { } metric ? OfMetric(metric.Attribute("linearUnit"))
            : units?.First("Imperial") is { } imperial ? OfImperial(imperial.Attribute("linearUnit")) : null;
    }

    public ForeignFile File { get; }

    public XmlPart Root { get; }

    public string Version => Root.Attribute("version") ?? "?";

    /// <summary>The unit of lengths; null where the file does not tell one that is known.</summary>
    public FileUnit? Unit { get; }

    public IReadOnlyList<XmlPart> Alignments { get; }

    public IEnumerable<XmlPart> Surfaces => Root.All("Surfaces").SelectMany(s => s.All("Surface"));

    /// <summary>Reads the file; null where it is no LandXML, which is reported at the place that names it.</summary>
    /// <param name="withSurfaces">False to pass over the points and faces of surfaces.</param>
    public static LandXmlFile? Read(ForeignFile file, bool withSurfaces, ProblemList problems)
    {
        try
        {
            XmlPart root = XmlPart.Read(file.Bytes, name => name is "Parcels" or "PlanFeatures" or "PipeNetworks" or "Roadways" or "Survey" or "Monuments" or "GradeModel"
                || (!withSurfaces && name is "Pnts" or "Faces" or "SourceData" or "Watersheds"));
            if (root.Name == "LandXML")
                return new LandXmlFile(file, root);
            problems.Add(ProblemCodes.NotThisKind, file.Spot, $"\"{Shown.Short(file.Name)}\" is not a LandXML file: its first element has another name", "export the alignment as LandXML 1.2");
        }
        catch (XmlException e)
        {
            // The parser's own words may quote the file; its place is told, and for a document type the reason.
            bool isDtd = e.Message.Contains("DTD", StringComparison.Ordinal);
            string why = isDtd ? "it has a document type, which is not read: it could name other files" : e.Message.StartsWith("elements stand", StringComparison.Ordinal) || e.Message.StartsWith("there are more", StringComparison.Ordinal) ? e.Message.Split(" Line ")[0]
                : e.Message.Contains("encoding", StringComparison.OrdinalIgnoreCase) ? "it is not in the encoding that its first line names (UTF-8 if none), or that encoding is not known" : "it is not well-formed XML there";
            problems.Add(isDtd || e.LineNumber == 0 ? ProblemCodes.NotThisKind : e.Message.StartsWith("there are more", StringComparison.Ordinal) ? ProblemCodes.TooLarge : ProblemCodes.NotThisKind,
                file.At(e.LineNumber, e.LinePosition), $"\"{Shown.Short(file.Name)}\" cannot be read: {why}", "export it anew", file.Spot);
        }
        return null;
    }

    /// <summary>Northing, easting (and elevation) of a point element: its own text, or that of the point it refers to; null where there is none.</summary>
    public double[]? Point(XmlPart? part)
    {
        if (part is null)
            return null;
        if (part.Attribute("pntRef") is { } name && part.Words().Length == 0)
            part = _points.GetValueOrDefault(name);
        return part?.Numbers() is { Length: 2 or 3 } numbers ? numbers : null;
    }

    /// <summary>As <see cref="Point"/>: northing and easting with the digits of the file.</summary>
    public (string Northing, string Easting)? Digits(XmlPart? part)
    {
        if (Point(part) is null)
            return null;
        if (part!.Attribute("pntRef") is { } name && part.Words().Length == 0)
            part = _points[name];
        string[] words = part.Words();
        return (Plain(words[0]), Plain(words[1]));
    }

    private static string Plain(string number) => number.Contains('E', StringComparison.OrdinalIgnoreCase) ? Nodes.Digits(double.Parse(number, System.Globalization.CultureInfo.InvariantCulture)) : number;

    private static IEnumerable<XmlPart> Deep(XmlPart part, string name) => part.Parts.SelectMany(p => p.Name == name ? [p] : Deep(p, name));

    private static FileUnit? OfMetric(string? linear) => linear switch
    {
        "meter" => FileUnit.Metre,
        "centimeter" => FileUnit.Centimetre,
        "millimeter" => FileUnit.Millimetre,
        _ => null,
    };

    private static FileUnit? OfImperial(string? linear) => linear switch
    {
        "foot" => FileUnit.Foot,
        "USSurveyFoot" => FileUnit.SurveyFoot,
        "inch" => FileUnit.Inch,
        _ => null,
    };
}
